// Reads the part lists that a bank file names: files whose models it uses as its own.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/part_list.hpp"
#include "bankwright/config/read_result.hpp"
#include "bankwright/config/reader/read_document.hpp"
#include "bankwright/config/reader/read_part.hpp"

#include <list>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

class PartListReader {
public:
    PartListReader(PartListSource const& source, ReadLimits const& limits, Models& models, Report& report)
        : source_(source), limits_(limits), models_(models), report_(report) {}

    // `parts` of a bank file, whose own models are in `models` already.
    void read(DocumentEntry const& parts) {
        if (parts.value.kind != DocumentValue::Kind::array) return; // reported already
        if (parts.value.items.size() > limits_.part_lists) {
            models_.note_missing_list();
            return report_.add(
                file_too_large, {}, parts.key, parts.region,
                fmt::format("{} part lists; allowed are {}", parts.value.items.size(), limits_.part_lists),
                "put the models into fewer lists");
        }
        for (auto const& item : parts.value.items)
            if (item.kind == DocumentValue::Kind::text) read_list(item);
    }

    // The texts that findings point into.
    std::vector<SourceText> take_texts() { return std::move(texts_); }

private:
    void read_list(DocumentValue const& item) {
        if (auto const problem = problem_with(item.text); !problem.empty()) return refuse(item, problem);
        for (auto const& [name, document] : documents_)
            if (name == item.text)
                return report_.add(file_duplicate_id, {}, "parts", item.region,
                                   fmt::format("the part list {} is named twice", in_backquotes(item.text)),
                                   "remove one of the two");
        auto list = source_
                        ? source_(item.text)
                        : PartListText{{}, {}, "cannot be had: nobody has said where part lists are to be read from"};
        if (!list.trouble.empty()) return refuse(item, list.trouble);

        auto& document = documents_.emplace_back(item.text, Document()).second;
        auto const before = report_.size();
        report_.set_file(list.file);
        if (!parse(list.text, limits_, document, report_)) {
            models_.note_missing_list();
        } else if (find_entry(document.root, "bankwright") && !find_entry(document.root, keys::part_list_version)) {
            report_.set_file({});
            return refuse(item, "is a bank file, not a part list");
        } else {
            for (auto const& duplicate : document.duplicates)
                report_problem(duplicate, report_);
            read_keys(document.root);
            read_list_models(document.root);
        }
        report_.set_file({});
        if (report_.size() > before) texts_.push_back({list.file, std::move(list.text)});
        note_clashes(item, document.root);
    }

    void read_keys(DocumentValue const& root) {
        DocumentValue own; // the root without [models]
        for (auto const& entry : root.entries)
            if (entry.key != models_section) own.entries.push_back(entry);
        Models none;
        KeyReader keys(part_list_section, Subject{{}, "the part list", Region{{1, 1}, {1, 1}}}, own, none, report_);
        std::optional<int> version;
        std::string name;
        keys(keys::part_list_version, version);
        keys("name", name);
        keys.meets_requirements();
    }

    void read_list_models(DocumentValue const& root) {
        auto const* section = find_entry(root, models_section);
        if (!section) return;
        if (section->value.kind != DocumentValue::Kind::table)
            return report_.add(file_bad_value, {}, section->key, section->region,
                               fmt::format("`{}` is {}; expected a section", section->key, shown(section->value)),
                               "write [models] on a line of its own, then one line a model");
        SourceMap elsewhere; // the bank's own map is of the bank file alone
        check_models(*section, models_, report_, elsewhere);
    }

    // A name stands for one model: which of two was meant nobody can tell.
    void note_clashes(DocumentValue const& item, DocumentValue const& root) {
        auto const* section = find_entry(root, models_section);
        if (!section) return;
        auto const here = fmt::format("the part list {}", in_backquotes(item.text));
        for (auto const& model : section->value.entries) {
            if (models_.add(model)) {
                origins_[model.key] = here;
                continue;
            }
            auto const origin = origins_.find(model.key);
            report_.add(file_duplicate_id, {}, "parts", item.region,
                        fmt::format("{} is a model of {} on line {}, and of {} on line {}; a name stands for one model",
                                    in_backquotes(model.key), here, model.region.begin.line,
                                    origin == origins_.end() ? "this file" : origin->second,
                                    models_.find(model.key)->region.begin.line),
                        "give one of them another name");
        }
    }

    void refuse(DocumentValue const& item, std::string_view trouble) {
        models_.note_missing_list();
        report_.add(file_no_part_list, {}, "parts", item.region,
                    fmt::format("part list {} {}", in_backquotes(item.text), terminal_safe(trouble)),
                    "name a part list inside the folder that is checked, by its path from this file, such as "
                    "\"parts.toml\"");
    }

    // What is no path to look for at all; empty if it may be one.
    static std::string problem_with(std::string_view path) {
        bool const has_drive = path.size() > 1 && path[1] == ':';
        if (path.empty()) return "has no name";
        if (path.front() == '/' || has_drive) return "is an absolute path; allowed is one from this file's folder";
        if (path.find('\\') != std::string_view::npos) return "holds `\\`; folders are separated by `/`";
        if (path.find('\0') != std::string_view::npos) return "holds a NUL character";
        return {};
    }

    PartListSource const& source_;
    ReadLimits const& limits_;
    Models& models_;
    Report& report_;
    std::list<std::pair<std::string, Document>> documents_; // models point into them
    std::map<std::string, std::string> origins_;            // of the models of part lists
    std::vector<SourceText> texts_;
};

} // namespace bankwright::internal::reader
