// Body of read_log.hpp.
#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/config/document.hpp"
#include "bankwright/config/log_keys.hpp"
#include "bankwright/config/read_log.hpp"
#include "bankwright/config/reader/read_document.hpp"
#include "bankwright/config/reader/read_part.hpp"
#include "bankwright/text/stated_accuracy.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::reader {

template <>
inline Outcome<LogWhen> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<LogWhen>(*word.value), {}};
}

class LogReader {
public:
    LogReader(Bank const& bank, ReadLimits const& limits, LogResult& result, Report& report)
        : limits_(limits), result_(result), report_(report), terminals_(terminals_of(bank)) {
        for_each_part(bank, [&](PartKind, auto const& part) { parts_.push_back(id_of(part)); });
    }

    void read(DocumentValue const& root) {
        if (!is_log(root)) return;
        read_root(root);
        read_meter(root);
        read_marks(root);
        read_entries(root);
    }

private:
    bool is_log(DocumentValue const& root) {
        for (auto const& entry : root.entries) {
            bool const is_bank = entry.key == "bankwright" || entry.key == "batteries";
            if (!is_bank && entry.key != keys::readings_version) continue;
            report_.add(file_bad_value, {}, entry.key, entry.region,
                        is_bank ? "a bank file, not the log of a hook-up"
                                : "a file of readings, not the log of a hook-up",
                        "name a log after --log, or a file that is not there yet");
            return result_.readable = false;
        }
        auto const* entries = find_entry(root, log_entry_section.name);
        if (!entries || entries->value.items.size() <= limits_.log_entries) return true;
        report_.add(file_too_large, {}, log_entry_section.name, entries->region,
                    fmt::format("{} answers; allowed are {}", entries->value.items.size(), limits_.log_entries),
                    "begin a new log for another hook-up");
        return result_.readable = false;
    }

    void read_root(DocumentValue const& root) {
        DocumentValue own; // the root without its sections
        for (auto const& entry : root.entries) {
            if (std::find(log_sections.begin(), log_sections.end(), entry.key) != log_sections.end()) continue;
            if (find_key(log_root_section, entry.key)) {
                own.entries.push_back(entry);
                continue;
            }
            if (report_.is_full()) continue;
            auto names = names_of(log_root_section);
            names.insert(names.end(), log_sections.begin(), log_sections.end());
            report_.add(
                file_unknown_key, {}, entry.key, entry.region,
                fmt::format("{} is neither a section nor a key of the log of a hook-up", in_backquotes(entry.key)),
                help_with(report_.nearest(entry.key, names), fmt::format("they are {}", listed(names, " and "))));
        }
        KeyReader keys(log_root_section, Subject{{}, {}, Region{{1, 1}, {1, 1}}}, own, models_, report_);
        std::optional<int> version;
        keys(keys::log_version, version);
        keys("name", result_.log.name);
    }

    DocumentEntry const* table(DocumentValue const& root, std::string_view name) {
        auto const* entry = find_entry(root, name);
        if (!entry || entry->value.kind == DocumentValue::Kind::table) return entry;
        report_.add(file_bad_value, {}, name, entry->region,
                    fmt::format("`{}` is {}; expected a table", name, shown(entry->value)),
                    fmt::format("write [{}]", name));
        return nullptr;
    }

    void read_meter(DocumentValue const& root) {
        auto const* entry = table(root, meter_section.name);
        if (!entry) return;
        KeyReader reader(meter_section, Subject{"[meter]", std::string(meter_section.meaning), entry->region},
                         entry->value, models_, report_);
        std::string accuracy;
        reader("accuracy", accuracy);
        reader("resolution", result_.log.resolution);
        if (!reader.is_valid("accuracy")) return;
        if (auto const parsed = parse_stated_accuracy(accuracy)) {
            result_.log.of_reading = parsed->of_reading;
            result_.log.digits = parsed->digits;
        } else {
            reader.fail(file_bad_value, "accuracy",
                        fmt::format("has the accuracy \"{}\"; expected such as {}", clipped(accuracy),
                                    find_key(meter_section, "accuracy")->example),
                        "write per cent of the reading, then counts of the last digit");
        }
    }

    void read_marks(DocumentValue const& root) {
        auto const* entry = table(root, log_marks_section);
        if (!entry) return;
        for (auto const& mark : entry->value.entries) {
            if (mark.value.kind == DocumentValue::Kind::text) {
                result_.log.marks.emplace_back(mark.key, mark.value.text);
                continue;
            }
            report_.add(
                file_bad_value, "[marks]", mark.key, mark.region,
                fmt::format("the mark of {} is {}; expected a text", in_backquotes(mark.key), shown(mark.value)),
                "leave [marks] as it was written, or remove it");
        }
    }

    void read_entries(DocumentValue const& root) {
        auto const* entry = find_entry(root, log_entry_section.name);
        if (!entry) return;
        if (entry->value.kind != DocumentValue::Kind::array)
            return report_.add(file_bad_value, {}, log_entry_section.name, entry->region,
                               fmt::format("`read` is {}; expected tables, each under [[read]]", shown(entry->value)),
                               "write [[read]], in double brackets, above each");
        int number = 0;
        for (auto const& item : entry->value.items) {
            auto const title = fmt::format("[[read]] {}", ++number);
            if (item.kind != DocumentValue::Kind::table) {
                report_.add(file_bad_value, title, {}, item.region,
                            fmt::format("{} is {}; expected a table", title, shown(item)), "write [[read]] above each");
                continue;
            }
            KeyReader reader(log_entry_section, Subject{title, title, item.region}, item, models_, report_);
            read_entry(reader, item.region);
        }
    }

    void read_entry(KeyReader& reader, Region const& region) {
        LogEntry entry;
        std::string reads;
        reader("when", entry.when);
        reader("part", entry.part);
        reader("red", entry.red);
        reader("black", entry.black);
        reader("reads", reads);
        reader("time", entry.time);
        bool sound = reader.meets_requirements() && reader.is_valid("when");
        if (!sound) return;
        if (entry.when == LogWhen::also) {
            for (auto const& [key, terminal] : {std::pair{"red", &entry.red}, std::pair{"black", &entry.black}})
                sound = has(reader, key, *terminal, terminals_, "terminal") && sound;
            if (sound && entry.red == entry.black) {
                reader.fail(file_bad_value, "black", "has both leads on one terminal", "name two terminals");
                sound = false;
            }
        } else {
            sound = has(reader, "part", entry.part, parts_, "part");
        }
        auto const shown = reads_of(reader, reads);
        if (!sound || !shown) return;
        entry.reads = *shown;
        result_.log.entries.push_back(std::move(entry));
        result_.regions.push_back(region);
    }

    bool has(KeyReader& reader, std::string_view key, std::string const& name, std::vector<std::string> const& names,
             std::string_view what) {
        if (!reader.is_valid(key)) {
            reader.fail(file_missing_key, {}, fmt::format("lacks `{}`", key),
                        fmt::format("name a {} of the bank", what));
            return false;
        }
        if (std::find(names.begin(), names.end(), name) != names.end()) return true;
        reader.fail(what == "terminal" ? file_unknown_terminal : file_bad_value, key,
                    fmt::format("names the {} {}, which the bank does not have", what, in_backquotes(name)),
                    help_with(report_.nearest(name, names), fmt::format("name a {} of the bank", what)));
        return false;
    }

    std::optional<Shown> reads_of(KeyReader& reader, std::string const& text) {
        if (text == "ok") return AsExpected{};
        if (text == "OL") return NoPath{};
        auto const volts = bankwright::parse<Voltage>(text);
        if (volts.value && keys::shown_volts.holds(volts.value->value())) return *volts.value;
        auto const ohms = bankwright::parse<Resistance>(text);
        if (!volts.value && ohms.value && std::isfinite(ohms.value->value()) && ohms.value->value() >= 0.0)
            return *ohms.value;
        reader.fail(volts.value ? file_bad_value : file_bad_unit, "reads",
                    fmt::format("reads \"{}\"; expected volts, ohms, `OL` or `ok`", clipped(text)),
                    "write it with its unit, such as \"12.7 V\" or \"0.3 ohm\"");
        return std::nullopt;
    }

    ReadLimits const& limits_;
    LogResult& result_;
    Report& report_;
    std::vector<std::string> terminals_, parts_;
    Models models_; // a log has none
};

} // namespace internal::reader

BANKWRIGHT_INLINE LogResult read_log(std::string_view text, Bank const& bank, ReadLimits const& limits) {
    LogResult result;
    result.findings = internal::reader::read_alone(
        text, limits, result.readable, [&](DocumentValue const& root, internal::reader::Report& report) {
            internal::reader::LogReader(bank, limits, result, report).read(root);
        });
    return result;
}

} // namespace bankwright
