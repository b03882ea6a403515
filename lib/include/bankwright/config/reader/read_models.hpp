// Reads [models], of a bank file or of a part list: named sets of keys that a part may borrow.
#pragma once

#include "bankwright/bank/source_map.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/reader/read_report.hpp"
#include "bankwright/config/reader/read_value.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

// The models of a file and of its part lists, and which of their entries are known to be wrong: those are reported
// once, in the model.
class Models {
public:
    // False where the name is taken; the first keeps it.
    bool add(DocumentEntry const& model) { return by_name_.insert({model.key, &model}).second; }
    // A part list that could not be read: a model that is not found may well be in it.
    void note_missing_list() { lacks_list_ = true; }
    bool lacks_list() const { return lacks_list_; }
    void note_wrong(DocumentEntry const& entry) { wrong_.insert(&entry); }

    bool is_wrong(DocumentEntry const& entry) const { return wrong_.count(&entry) > 0; }
    bool empty() const { return by_name_.empty(); }
    DocumentEntry const* find(std::string_view name) const {
        auto const found = by_name_.find(name);
        return found == by_name_.end() ? nullptr : found->second;
    }
    std::vector<std::string_view> names() const {
        std::vector<std::string_view> names;
        for (auto const& [name, model] : by_name_)
            names.push_back(name);
        return names;
    }

private:
    std::map<std::string_view, DocumentEntry const*> by_name_;
    std::set<DocumentEntry const*> wrong_;
    bool lacks_list_ = false;
};

// A model may serve any kind of part: its key must exist somewhere, with a value that is good there.
inline void check_model_key(Subject const& subject, DocumentEntry const& entry, Models& models, Report& report) {
    if (entry.key == "model") {
        models.note_wrong(entry);
        report.add(file_unknown_key, subject.part, entry.key, entry.region,
                   fmt::format("{} is built on another model; a model holds keys of its own only", subject.words),
                   "copy the keys of the other model");
        return;
    }
    KeySpec const* first = nullptr;
    for (auto const& section : part_sections) {
        auto const* key = find_key(section, entry.key);
        if (!key) continue;
        if (!trouble_with(*key, entry.value)) return;
        if (!first) first = key;
    }
    models.note_wrong(entry);
    if (first) return report.add(subject, *first, entry.region, *trouble_with(*first, entry.value));
    if (report.is_full()) return;
    std::vector<std::string_view> names;
    for (auto const& section : part_sections)
        for (auto const& key : section.keys)
            if (std::find(names.begin(), names.end(), key.name) == names.end()) names.push_back(key.name);
    report.add(file_unknown_key, subject.part, entry.key, entry.region,
               fmt::format("{} of {} is not a key of any part", in_backquotes(entry.key), subject.words),
               help_with(report.nearest(entry.key, names), "`bankwright schema` prints every key"));
}

// Each model by itself; whether its name is its own is for the caller to say.
inline void check_models(DocumentEntry const& section, Models& models, Report& report, SourceMap& map) {
    for (auto const& model : section.value.entries) {
        Subject const subject{"[models] " + clipped(model.key), "model " + in_backquotes(model.key), model.region};
        if (model.value.kind != DocumentValue::Kind::table) {
            report.add(file_bad_value, subject.part, {}, model.region,
                       fmt::format("{} is {}; expected a table of keys", subject.words, shown(model.value)),
                       fmt::format("write `{} = {{ ... }}`", clipped(model.key)));
        }
        add_to_map(map, subject.part, model);
        for (auto const& entry : model.value.entries)
            check_model_key(subject, entry, models, report);
    }
}

inline void read_models(DocumentEntry const& section, Models& models, Report& report, SourceMap& map) {
    for (auto const& model : section.value.entries)
        models.add(model);
    check_models(section, models, report, map);
}

} // namespace bankwright::internal::reader
