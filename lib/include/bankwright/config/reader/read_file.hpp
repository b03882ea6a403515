// Reads a document as a bank: sections, names, parts, each conductor's ends.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/read_result.hpp"
#include "bankwright/config/reader/read_accept.hpp"
#include "bankwright/config/reader/read_models.hpp"
#include "bankwright/config/reader/read_names.hpp"
#include "bankwright/config/reader/read_part.hpp"
#include "bankwright/config/reader/read_part_lists.hpp"
#include "bankwright/config/reader/read_terminals.hpp"
#include "bankwright/config/reading_keys.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

class FileReader {
public:
    FileReader(ReadLimits const& limits, PartListSource const& part_lists, ReadResult& result, Report& report)
        : limits_(limits), result_(result), report_(report), part_lists_(part_lists, limits, models_, report) {}

    void read(DocumentValue const& root, std::vector<DocumentProblem> const& duplicates) {
        if (!is_bank_file(root) || !is_readable_version(root) || !is_small_enough(root)) return;
        read_root(root);
        if (auto const* section = table_section(root, models_section))
            read_models(*section, models_, report_, result_.map);
        if (auto const* parts = find_entry(root, "parts")) part_lists_.read(*parts);
        result_.part_lists = part_lists_.take_texts();
        collect(root);
        report_duplicate_keys(root, duplicates);
        read_devices();
        seat_devices();
        read_runs();
        drop_hanging_runs();
        if (auto const* section = find_entry(root, accept_section.name))
            read_accepted(*section, ids_, report_, result_);
        keep_tolerances();
    }

private:
    // Those of parts that could be read, part by part.
    void keep_tolerances() {
        auto const all = report_.take_tolerances();
        if (all.empty()) return;
        auto const keep = [&](std::string_view as_read, std::string const& part) {
            for (auto const& tolerance : all)
                if (tolerance.part == as_read)
                    result_.bank.tolerances.push_back({part, tolerance.key, tolerance.spread});
        };
        keep("[system]", {});
        for_each_part(result_.bank, [&](PartKind, auto const& part) { keep(id_of(part), id_of(part)); });
    }

    // False for a part list, readings and settings: they are TOML too, and nothing in them would be checked.
    bool is_bank_file(DocumentValue const& root) {
        for (auto const& entry : root.entries)
            if (entry.key == "bankwright" || find_section(entry.key)) return true;
        for (auto const& entry : root.entries) {
            bool const is_part_list = entry.key == keys::part_list_version;
            bool const is_log = entry.key == keys::log_version;
            bool const is_readings = entry.key == keys::readings_version || is_reading_section(entry.key);
            if (!is_part_list && !is_log && !is_readings && !find_key(settings_section, entry.key)) continue;
            report_.add(file_not_a_bank, {}, entry.key, entry.region,
                        is_part_list  ? "a part list, not a bank file"
                        : is_log      ? "the log of a hook-up, not a bank file"
                        : is_readings ? "a file of readings, not a bank file"
                                      : fmt::format("{} is a key of {}, not of a bank file", in_backquotes(entry.key),
                                                    settings_section.meaning),
                        "name the bank files instead, or the folder that they are in");
            result_.readable = false;
            return false;
        }
        return true;
    }

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

    // Batteries are enough to know a bank by; without them it may be anything.
    void report_no_version(DocumentValue const& root) {
        if (!find_entry(root, part_sections.front().name))
            return report_.add(file_missing_key, {}, {}, Region{{1, 1}, {1, 1}}, "the file lacks `bankwright`",
                               fmt::format("state it, for example `bankwright = {}`", format_version));
        auto const first = std::min_element(root.entries.begin(), root.entries.end(), [](auto const& a, auto const& b) {
            auto const x = a.region.begin;
            auto const y = b.region.begin;
            return x.line != y.line ? x.line < y.line : x.column < y.column;
        });
        report_.add(
            file_no_version, {}, "bankwright", first->region, "the file lacks `bankwright`",
            fmt::format("it was read as version {0}; write `bankwright = {0}` as its first line", format_version));
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
            for (auto const& part : entry.value.entries) {
                terminals_.excuse(part.key);
                if (part.value.kind == DocumentValue::Kind::table) result_.left_out.push_back(part.key);
            }
            if (report_.is_full()) continue;
            auto const near = report_.nearest(entry.key, root_names());
            report_.add(file_unknown_key, {}, entry.key, entry.region,
                        fmt::format("{} is neither a section nor a key of a bank file", in_backquotes(entry.key)),
                        key_elsewhere(entry.key, root_section)
                            .value_or(help_with(near, fmt::format("they are {}", listed(root_names(), " and ")))));
        }
        KeyReader keys(root_section, Subject{{}, {}, Region{{1, 1}, {1, 1}}}, own, models_, report_);
        std::optional<int> version;
        keys("bankwright", version);
        keys("name", result_.bank.name);
        std::optional<std::vector<std::string>> parts;
        keys("parts", parts);
        if (!keys.is_stated("bankwright")) report_no_version(root);
        for (auto const& entry : own.entries)
            result_.map.add({}, entry.key, entry.region);

        if (auto const* system = table_section(root, system_section.name)) {
            Subject const subject{"[system]", "the system", system->region};
            KeyReader reader(system_section, subject, system->value, models_, report_);
            for_each_field(result_.bank.system, reader);
            add_to_map(result_.map, subject.part, *system);
        }
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
            if (candidate.is_usable) add_to_map(result_.map, candidate.entry->key, *candidate.entry);
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
                fmt::format(
                    "{} is not a name for a {}; allowed are the letters a-z and A-Z, digits, `_`, and `-` inside",
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
                fmt::format("{} is there twice in one table; allowed is once", in_backquotes(duplicate.repeats)),
                "remove one of the two");
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
                case PartKind::shunt:
                    read_device(candidate, bank.shunts);
                    break;
                case PartKind::relay:
                    read_device(candidate, bank.relays);
                    break;
                case PartKind::selector:
                    read_device(candidate, bank.selectors);
                    break;
                case PartKind::converter:
                    read_device(candidate, bank.converters);
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
                terminals_.add(std::move(terminal));
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

    // A device sits on a post of a battery, or on a busbar.
    void seat_devices() {
        for (auto const& candidate : candidates_) {
            bool const is_breaker = candidate.kind == PartKind::breaker;
            if (!candidate.is_usable || !(is_breaker || candidate.kind == PartKind::fuse)) continue;
            for (auto& device : is_breaker ? result_.bank.breakers : result_.bank.fuses) {
                if (device.id != candidate.entry->key || !device.on) continue;
                if (is_landed(candidate, "on", *device.on) && is_post(*device.on)) continue;
                if (terminals_.allows(*device.on)) {
                    auto const* entry = find_entry(candidate.entry->value, "on");
                    report_.add(file_bad_value, device.id, "on", entry ? entry->region : candidate.entry->region,
                                fmt::format("`on` of {} is {}; allowed is a post of a battery, or a busbar",
                                            candidate.subject().words, in_backquotes(*device.on)),
                                "from any other terminal a conductor leads to it: give that one");
                }
                device.on.reset();
            }
        }
    }

    bool is_post(std::string const& terminal) const {
        auto const& bank = result_.bank;
        return std::any_of(bank.batteries.begin(), bank.batteries.end(),
                           [&](auto const& b) { return terminal == b.id + "+" || terminal == b.id + "-"; }) ||
               std::any_of(bank.busbars.begin(), bank.busbars.end(), [&](auto const& b) { return terminal == b.id; });
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

    // What is landed on a part that was left out is missing with it.
    void drop_hanging_runs() {
        if (result_.left_out.empty()) return;
        auto const names = bankwright::terminals_of(result_.bank);
        std::unordered_set<std::string> const there(names.begin(), names.end());
        auto const hangs = [&](Run const& run) { return !there.count(run.from) || !there.count(run.to); };
        for (auto* runs : {&result_.bank.jumpers, &result_.bank.cables})
            runs->erase(std::remove_if(runs->begin(), runs->end(), hangs), runs->end());
    }

    bool is_landed(Candidate const& candidate, std::string_view key, std::string const& terminal) {
        auto const* entry = find_entry(candidate.entry->value, key);
        bool const is_stated = entry && entry->value.kind == DocumentValue::Kind::text;
        if (terminal.empty() && !is_stated) return true; // missing or of the wrong kind: reported already
        if (terminals_.allows(terminal)) return true;
        if (report_.is_full()) return false;
        report_.add(file_unknown_terminal, candidate.entry->key, key, entry ? entry->region : candidate.entry->region,
                    fmt::format("`{}` of {} is {}, which is not a terminal in this bank", key,
                                candidate.subject().words, in_backquotes(terminal)),
                    terminals_.hint(terminal, ids_, report_));
        return false;
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

    ReadLimits const& limits_;
    ReadResult& result_;
    Report& report_;
    Models models_;
    PartListReader part_lists_;
    std::vector<Candidate> candidates_; // in the author's order
    Names ids_;
    Terminals terminals_;
};

} // namespace bankwright::internal::reader
