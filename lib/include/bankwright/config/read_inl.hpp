// Reads a whole bank file: sections, names, models, parts, terminals, accepted findings.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/config/read_names_inl.hpp"
#include "bankwright/config/read_part_inl.hpp"
#include "bankwright/config/text_check.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace reading {

class FileReader {
public:
    FileReader(ReadLimits const& limits, ReadResult& result) : limits_(limits), result_(result), report_(limits) {}

    void read(DocumentValue const& root, std::vector<DocumentProblem> const& duplicates) {
        if (!is_readable_version(root) || !is_small_enough(root)) return;
        read_root(root);
        read_models(root);
        collect(root);
        report_duplicate_keys(root, duplicates);
        read_devices();
        read_runs();
        read_accepted(root);
    }

    Report& report() { return report_; }

private:
    // False where the file says that it is of another version: its words could mean anything.
    bool is_readable_version(DocumentValue const& root) {
        auto const* entry = find_entry(root, "bankwright");
        if (!entry || entry->value.kind != DocumentValue::Kind::integer || entry->value.integer == format_version)
            return true;
        report_.add(
            file_bad_value, {}, "bankwright", entry->region,
            fmt::format("format version {}; this bankwright reads version {}", entry->value.integer, format_version),
            fmt::format("write `bankwright = {}` if the file is of that version, or use a newer bankwright",
                        format_version));
        result_.readable = false;
        return false;
    }

    bool is_small_enough(DocumentValue const& root) {
        std::size_t parts = 0;
        for (auto const& section : root.entries) {
            parts += section.value.entries.size() + section.value.items.size();
            if (parts <= limits_.parts) continue;
            report_.add(file_too_large, {}, {}, section.region,
                        fmt::format("more than {} parts up to the end of this section", limits_.parts),
                        "describe one bank in one file");
            result_.readable = false;
            return false;
        }
        return true;
    }

    void read_root(DocumentValue const& root) {
        DocumentValue own; // the root without its sections
        for (auto const& entry : root.entries) {
            bool const is_section = entry.key == system_section.name || entry.key == models_section ||
                                    entry.key == accept_section.name || find_section(entry.key);
            if (is_section) continue;
            if (find_key(root_section, entry.key)) {
                own.entries.push_back(entry);
                continue;
            }
            auto const near = report_.nearest(entry.key, root_names());
            report_.add(file_unknown_key, {}, entry.key, entry.region,
                        fmt::format("{} is no section and no key of a bank file", in_backquotes(entry.key)),
                        help_with(near, fmt::format("they are {}", listed(root_names(), " and "))));
            for (auto const& part : entry.value.entries)
                excused_.insert(part.key);
        }
        KeyReader keys(root_section, Subject{{}, {}, Region{{1, 1}, {1, 1}}}, own, models_, report_);
        std::optional<int> version;
        keys("bankwright", version);
        keys("name", result_.bank.name);
        keys.meets_requirements();
        for (auto const& entry : own.entries)
            result_.map.add({}, entry.key, entry.region);

        if (auto const* system = table_section(root, system_section.name)) {
            Subject const subject{"[system]", "the system", system->region};
            KeyReader reader(system_section, subject, system->value, models_, report_);
            for_each_field(result_.bank.system, reader);
            add_to_map(subject.part, *system);
        }
    }

    void read_models(DocumentValue const& root) {
        auto const* section = table_section(root, models_section);
        if (!section) return;
        for (auto const& model : section->value.entries) {
            Subject const subject{"[models] " + clipped(model.key), "model " + in_backquotes(model.key), model.region};
            if (model.value.kind != DocumentValue::Kind::table) {
                report_.add(file_bad_value, subject.part, {}, model.region,
                            fmt::format("{} is {}; expected a table of keys", subject.words, shown(model.value)),
                            fmt::format("write `{} = {{ ... }}`", clipped(model.key)));
            }
            models_.all.push_back(&model);
            add_to_map(subject.part, model);
            for (auto const& entry : model.value.entries)
                check_model_key(subject, entry);
        }
    }

    // A model may serve any kind of part: its key must exist somewhere, with a value that is good there.
    void check_model_key(Subject const& subject, DocumentEntry const& entry) {
        if (entry.key == "model") {
            models_.wrong.insert(&entry);
            report_.add(file_unknown_key, subject.part, entry.key, entry.region,
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
        models_.wrong.insert(&entry);
        if (first) return report_.add(subject, *first, entry.region, *trouble_with(*first, entry.value));
        std::vector<std::string_view> names;
        for (auto const& section : part_sections)
            for (auto const& key : section.keys)
                if (std::find(names.begin(), names.end(), key.name) == names.end()) names.push_back(key.name);
        report_.add(file_unknown_key, subject.part, entry.key, entry.region,
                    fmt::format("{} of {} is not a key of any part", in_backquotes(entry.key), subject.words),
                    help_with(report_.nearest(entry.key, names), "`bankwright schema` prints every key"));
    }

    // Finds every part, with its name checked, in the author's order.
    void collect(DocumentValue const& root) {
        for (auto const& section : part_sections) {
            auto const* entry = table_section(root, section.name);
            if (!entry) continue;
            for (auto const& part : entry->value.entries)
                candidates_.push_back({*section.kind, &part});
        }
        std::stable_sort(candidates_.begin(), candidates_.end(), [](Candidate const& a, Candidate const& b) {
            auto const x = a.entry->region.begin;
            auto const y = b.entry->region.begin;
            return x.line != y.line ? x.line < y.line : x.column < y.column;
        });
        for (auto& candidate : candidates_) {
            check_name(candidate);
            if (candidate.is_usable) add_to_map(candidate.entry->key, *candidate.entry);
            if (candidate.is_usable && candidate.entry->value.kind != DocumentValue::Kind::table) {
                candidate.is_usable = false;
                auto const subject = candidate.subject();
                report_.add(
                    file_bad_value, subject.part, {}, subject.region,
                    fmt::format("{} is {}; expected a table of keys", subject.words, shown(candidate.entry->value)),
                    fmt::format("write `{} = {{ ... }}`", subject.part));
            }
            if (!candidate.is_usable) result_.left_out.push_back(candidate.entry->key);
        }
    }

    void check_name(Candidate& candidate) {
        auto const& id = candidate.entry->key;
        auto const region = candidate.entry->region;
        if (id.size() > limits_.id_length) {
            candidate.is_usable = false;
            report_.add(file_too_large, clipped(id), {}, region,
                        fmt::format("a name of {} bytes; allowed are {}", id.size(), limits_.id_length),
                        "give it a short name");
        } else if (!is_id(id)) {
            candidate.is_usable = false;
            report_.add(
                file_bad_value, clipped(id), {}, region,
                fmt::format("{} is no name for a {}; allowed are the letters a-z and A-Z, digits, `_`, and `-` inside",
                            in_backquotes(id), name(candidate.kind)),
                "terminals are named after it, so it must not hold `.`, `+`, blanks or other signs");
        } else if (auto const [first, is_new] = ids_.insert({id, &candidate}); !is_new) {
            candidate.is_usable = false;
            report_duplicate(*first->second, candidate.kind, region);
        }
    }

    void report_duplicate(Candidate const& first, PartKind kind, Region region) {
        report_.add(file_duplicate_id, first.entry->key, {}, region,
                    fmt::format("{} is the name of a {} here and of a {} on line {}; a name stands for one part",
                                in_backquotes(first.entry->key), name(kind), name(first.kind),
                                first.entry->region.begin.line),
                    "give one of them another name");
    }

    // Keys that TOML itself refuses because they stand twice: a part's name in one section, as a rule.
    void report_duplicate_keys(DocumentValue const& root, std::vector<DocumentProblem> const& duplicates) {
        for (auto const& duplicate : duplicates) {
            auto const part = ids_.find(duplicate.repeats);
            auto const line = duplicate.region.begin.line;
            if (part != ids_.end() && section_at(root, line) == section(part->second->kind)) {
                report_duplicate(*part->second, part->second->kind, duplicate.region);
                continue;
            }
            report_.add(
                file_duplicate_id, {}, duplicate.repeats, duplicate.region,
                fmt::format("{} stands twice in one table; a key stands once", in_backquotes(duplicate.repeats)),
                "take one of the two out");
        }
    }

    // The section whose header is the last above a line, if the header names the section alone.
    static std::string_view section_at(DocumentValue const& root, int line) {
        std::string_view last;
        int last_line = 0;
        for (auto const& entry : root.entries) {
            auto const visit = [&](DocumentEntry const& table, std::string_view section) {
                int const at = table.value.region.begin.line;
                if (table.value.kind != DocumentValue::Kind::table || at > line || at < last_line) return;
                last = section;
                last_line = at;
            };
            visit(entry, entry.key);
            for (auto const& inner : entry.value.entries)
                if (inner.region == inner.value.region) visit(inner, {});
        }
        return last;
    }

    // Fills one part. False: it lacks something that it cannot do without.
    template <class Part>
    bool fill(Candidate const& candidate, Part& part) {
        KeyReader keys(section_spec(candidate.kind), candidate.subject(), candidate.entry->value, models_, report_);
        for_each_field(part, keys);
        reconcile(part, keys);
        if (keys.has_wrong_model()) return false;
        return keys.meets_requirements();
    }

    template <class Part>
    void read_device(Candidate const& candidate, std::vector<Part>& parts) {
        Part part;
        part.id = candidate.entry->key;
        if (fill(candidate, part))
            parts.push_back(std::move(part));
        else
            result_.left_out.push_back(candidate.entry->key);
    }

    void read_devices() {
        auto& bank = result_.bank;
        for (auto const& candidate : candidates_) {
            int outputs = most_outputs;
            if (candidate.is_usable) {
                switch (candidate.kind) {
                case PartKind::battery:
                    read_device(candidate, bank.batteries);
                    break;
                case PartKind::jumper:
                case PartKind::cable:
                    break;
                case PartKind::breaker:
                    read_device(candidate, bank.breakers);
                    break;
                case PartKind::fuse:
                    read_device(candidate, bank.fuses);
                    break;
                case PartKind::switch_:
                    read_device(candidate, bank.switches);
                    break;
                case PartKind::busbar:
                    read_device(candidate, bank.busbars);
                    break;
                case PartKind::connector:
                    read_device(candidate, bank.connectors);
                    break;
                case PartKind::motor:
                    read_device(candidate, bank.motors);
                    break;
                case PartKind::load:
                    read_device(candidate, bank.loads);
                    break;
                case PartKind::charger:
                    outputs = read_charger(candidate);
                    break;
                }
            }
            for (auto& terminal : terminals_of(candidate.kind, candidate.entry->key, outputs))
                if (known_.insert(terminal).second) terminals_.push_back(std::move(terminal));
        }
    }

    // Its number of outputs; as many as any charger has where that cannot be read.
    int read_charger(Candidate const& candidate) {
        auto& chargers = result_.bank.chargers;
        auto const before = chargers.size();
        read_device(candidate, chargers);
        if (chargers.size() == before) return most_outputs;
        bool const says = find_entry(candidate.entry->value, "outputs") || find_entry(candidate.entry->value, "model");
        return chargers.back().outputs.value_or(says ? most_outputs : 1);
    }

    void read_runs() {
        for (auto const& candidate : candidates_) {
            if (!candidate.is_usable) continue;
            if (candidate.kind == PartKind::jumper) read_run(candidate, result_.bank.jumpers);
            if (candidate.kind == PartKind::cable) read_run(candidate, result_.bank.cables);
        }
    }

    void read_run(Candidate const& candidate, std::vector<Run>& runs) {
        Run run;
        run.conductor.id = candidate.entry->key;
        bool complete = fill(candidate, run);
        complete &= is_landed(candidate, "from", run.from);
        if (!run.from.empty() && run.from == run.to) {
            complete = false;
            auto const* to = find_entry(candidate.entry->value, "to");
            report_.add(file_bad_value, candidate.entry->key, "to", to ? to->region : candidate.entry->region,
                        fmt::format("both ends of {} are on {}; a conductor joins two terminals",
                                    candidate.subject().words, in_backquotes(run.to)),
                        "land one end on another terminal");
        } else {
            complete &= is_landed(candidate, "to", run.to);
        }
        if (complete)
            runs.push_back(std::move(run));
        else
            result_.left_out.push_back(candidate.entry->key);
    }

    bool is_landed(Candidate const& candidate, std::string_view key, std::string const& terminal) {
        auto const* entry = find_entry(candidate.entry->value, key);
        bool const is_stated = entry && entry->value.kind == DocumentValue::Kind::text;
        if (terminal.empty() && !is_stated) return true; // missing or of the wrong kind: reported already
        if (known_.count(terminal) || excused_.count(std::string(stem(terminal)))) return true;
        report_.add(file_unknown_terminal, candidate.entry->key, key, entry ? entry->region : candidate.entry->region,
                    fmt::format("`{}` of {} is {}, which is no terminal in this bank", key, candidate.subject().words,
                                in_backquotes(terminal)),
                    terminal_hint(terminal));
        return false;
    }

    std::string terminal_hint(std::string const& terminal) {
        if (auto const part = ids_.find(std::string(stem(terminal))); part != ids_.end()) {
            std::vector<std::string_view> names;
            for (auto const& name : terminals_)
                if (stem(name) == part->first) names.push_back(name);
            if (names.empty())
                return fmt::format("{} is a {}: it has no terminals of its own; name what it is landed on",
                                   in_backquotes(part->first), name(part->second->kind));
            return fmt::format("the terminals of {} are {}", part->first, listed(names, " and "));
        }
        return help_with(report_.nearest(terminal, terminals_),
                         "name a terminal of a part in this file: `A+` of a battery, `CB.line` of a breaker");
    }

    void read_accepted(DocumentValue const& root) {
        auto const* section = find_entry(root, accept_section.name);
        if (!section) return;
        if (section->value.kind != DocumentValue::Kind::array)
            return report_.add(
                file_bad_value, {}, section->key, section->region,
                fmt::format("`accept` is {}; expected tables, each under [[accept]]", shown(section->value)),
                "write [[accept]], in double brackets, above each");
        int number = 0;
        for (auto const& item : section->value.items) {
            auto const title = fmt::format("[[accept]] {}", ++number);
            Subject const subject{title, title, item.region};
            if (item.kind != DocumentValue::Kind::table) {
                report_.add(file_bad_value, title, {}, item.region,
                            fmt::format("{} is {}; expected a table", title, shown(item)),
                            "write [[accept]] above each");
                continue;
            }
            result_.map.add(title, {}, item.region);
            for (auto const& entry : item.entries)
                result_.map.add(title, entry.key, entry.region);
            read_acceptance(subject, item);
        }
    }

    void read_acceptance(Subject const& subject, DocumentValue const& item) {
        Acceptance acceptance;
        KeyReader keys(accept_section, subject, item, models_, report_);
        keys("rule", acceptance.rule);
        keys("part", acceptance.part);
        keys("reason", acceptance.reason);
        bool complete = keys.meets_requirements();
        if (keys.is_stated("part") && !keys.is_valid("part")) complete = false;
        if (keys.is_valid("part") && !ids_.count(acceptance.part)) {
            complete = false;
            std::vector<std::string_view> names;
            for (auto const& candidate : candidates_)
                names.push_back(candidate.entry->key);
            keys.fail(
                file_bad_value, "part",
                fmt::format("names the part {}, which this bank does not have", in_backquotes(acceptance.part)),
                help_with(report_.nearest(acceptance.part, names), "name a part of this file, or leave `part` out"));
        }
        bool const has_reason = acceptance.reason.find_first_not_of(" \t\r\n") != std::string::npos;
        if (!has_reason && (keys.is_valid("reason") || !keys.is_stated("reason")))
            keys.fail(file_accept_without_reason, keys.is_stated("reason") ? "reason" : "",
                      "accepts a finding and does not say why",
                      "add `reason = \"...\"`: what makes it safe here, and who looked");
        if (complete) result_.bank.accepted.push_back(std::move(acceptance));
    }

    // The entry of a section that must be a table; null where it is absent or something else, which is reported.
    DocumentEntry const* table_section(DocumentValue const& root, std::string_view section) {
        auto const* entry = find_entry(root, section);
        if (!entry || entry->value.kind == DocumentValue::Kind::table) return entry;
        report_.add(file_bad_value, {}, section, entry->region,
                    fmt::format("`{}` is {}; expected a section", section, shown(entry->value)),
                    fmt::format("write [{}] on a line of its own, then one line a part", section));
        return nullptr;
    }

    void add_to_map(std::string const& part, DocumentEntry const& entry) {
        result_.map.add(part, {}, entry.region);
        for (auto const& key : entry.value.entries)
            result_.map.add(part, key.key, key.region);
    }

    static bool find_section(std::string_view key) {
        return std::any_of(part_sections.begin(), part_sections.end(),
                           [&](auto const& spec) { return spec.name == key; });
    }
    static std::vector<std::string_view> root_names() {
        auto names = names_of(root_section);
        names.push_back(system_section.name);
        names.push_back(models_section);
        for (auto const& section : part_sections)
            names.push_back(section.name);
        names.push_back(accept_section.name);
        return names;
    }

    ReadLimits limits_;
    ReadResult& result_;
    Report report_;
    Models models_;
    std::vector<Candidate> candidates_;           // in the author's order
    std::map<std::string, Candidate const*> ids_; // the first of each name
    std::vector<std::string> terminals_;          // for the nearest name
    std::unordered_set<std::string> known_;       // the same, for looking up
    std::unordered_set<std::string> excused_;     // names in unknown sections: their terminals are let pass
};

} // namespace reading

BANKWRIGHT_INLINE ReadResult read(std::string_view text, ReadLimits const& limits) {
    ReadResult result;
    reading::Report refusals(limits);
    if (auto refusal = reason_to_refuse(text, limits)) {
        result.findings.push_back(std::move(*refusal));
        result.readable = false;
        return result;
    }
    auto const document = parse_document(without_mark(text));
    reading::FileReader reader(limits, result);
    if (document.error) {
        auto const& error = *document.error;
        result.readable = false;
        for (auto const& duplicate : document.duplicates)
            reader.report().add(file_duplicate_id, {}, duplicate.repeats, duplicate.region,
                                fmt::format("`{}` stands twice; a key stands once", duplicate.repeats),
                                "take one of the two out");
        if (error.repeats.empty())
            reader.report().add(file_syntax, {}, {}, error.region, "not TOML: " + terminal_safe(error.message),
                                "mend the text there; the rest of the file was not read");
        else
            reader.report().add(
                file_duplicate_id, {}, error.repeats, error.region,
                fmt::format("{} stands twice; a key stands once", reading::in_backquotes(error.repeats)),
                "take one of the two out; the rest of the file was not read");
    } else {
        reader.read(document.root, document.duplicates);
    }
    result.findings = reader.report().take();
    if (!result.readable) result.bank = {};
    return result;
}

} // namespace bankwright
