// Body of read_readings.hpp.
#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/config/document.hpp"
#include "bankwright/config/read_readings.hpp"
#include "bankwright/config/reader/read_document.hpp"
#include "bankwright/config/reader/read_part.hpp"
#include "bankwright/config/reading_keys.hpp"
#include "bankwright/text/stated_accuracy.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::reader {

class ReadingsReader {
public:
    ReadingsReader(Bank const& bank, ReadLimits const& limits, ReadingsResult& result, Report& report)
        : limits_(limits), sheet_(result.sheet), readable_(result.readable), report_(report),
          terminals_(terminals_of(bank)) {
        for_each_part(bank, [&](PartKind kind, auto const& part) {
            if (kind != PartKind::busbar) parts_.push_back(id_of(part)); // a node has no current of its own
        });
    }

    void read(DocumentValue const& root) {
        if (!is_file_of_readings(root) || !is_small_enough(root)) return;
        read_root(root);
        instrument(root, meter_section, sheet_.meter);
        instrument(root, clamp_section, sheet_.clamp);
        sheet_.has_clamp = find_entry(root, clamp_section.name) != nullptr || find_entry(root, amps_section.name);
        if (auto const* entry = table(root, state_section.name)) {
            KeyReader reader(state_section, Subject{"[state]", "the state", entry->region}, entry->value, models_,
                             report_);
            read_state(reader, common_);
            reader("since", sheet_.since);
        }
        each(root, volts_section, [&](KeyReader& reader) {
            VoltageEntry taken{{}, {}, {}, common_};
            reader("red", taken.red);
            reader("black", taken.black);
            reader("reads", taken.reads);
            read_state(reader, taken.state);
            bool sound = reader.meets_requirements();
            for (auto const* key : {"red", "black"})
                sound = known(reader, key, *key == 'r' ? taken.red : taken.black, terminals_, "terminal") && sound;
            if (sound && taken.red == taken.black) {
                reader.fail(file_bad_value, "black", "has both leads on one terminal", "name two terminals");
                sound = false;
            }
            if (sound) sheet_.volts.push_back(std::move(taken));
        });
        each(root, amps_section, [&](KeyReader& reader) {
            CurrentEntry taken{{}, {}, common_};
            reader("part", taken.part);
            reader("reads", taken.reads);
            read_state(reader, taken.state);
            bool const sound = reader.meets_requirements();
            if (known(reader, "part", taken.part, parts_, "part") && sound) sheet_.amps.push_back(std::move(taken));
        });
    }

private:
    // False for a bank file: the two are easily given in the wrong order.
    bool is_file_of_readings(DocumentValue const& root) {
        for (auto const& entry : root.entries) {
            if (entry.key != "bankwright" && entry.key != "batteries") continue;
            report_.add(file_bad_value, {}, entry.key, entry.region, "a bank file, not a file of readings",
                        "name the bank file first, then the file of readings");
            return readable_ = false;
        }
        return true;
    }

    bool is_small_enough(DocumentValue const& root) {
        std::size_t readings = 0;
        for (auto const* section : {&volts_section, &amps_section}) {
            auto const* entry = find_entry(root, section->name);
            if (entry) readings += entry->value.items.size();
            if (readings <= limits_.readings) continue;
            report_.add(file_too_large, {}, section->name, entry->region,
                        fmt::format("{} readings; allowed are {}", readings, limits_.readings),
                        "keep those of one visit to the boat");
            return readable_ = false;
        }
        return true;
    }

    void read_root(DocumentValue const& root) {
        DocumentValue own; // the root without its sections
        for (auto const& entry : root.entries) {
            if (is_reading_section(entry.key)) continue;
            if (find_key(readings_root_section, entry.key)) {
                own.entries.push_back(entry);
                continue;
            }
            if (report_.is_full()) continue;
            std::vector<std::string_view> names = names_of(readings_root_section);
            names.insert(names.end(), reading_sections.begin(), reading_sections.end());
            report_.add(
                file_unknown_key, {}, entry.key, entry.region,
                fmt::format("{} is neither a section nor a key of a file of readings", in_backquotes(entry.key)),
                help_with(report_.nearest(entry.key, names), fmt::format("they are {}", listed(names, " and "))));
        }
        KeyReader keys(readings_root_section, Subject{{}, {}, Region{{1, 1}, {1, 1}}}, own, models_, report_);
        std::optional<int> version;
        keys(keys::readings_version, version);
        std::string name;
        keys("name", name);
    }

    DocumentEntry const* table(DocumentValue const& root, std::string_view name) {
        auto const* entry = find_entry(root, name);
        if (!entry || entry->value.kind == DocumentValue::Kind::table) return entry;
        report_.add(file_bad_value, {}, name, entry->region,
                    fmt::format("`{}` is {}; expected a table", name, shown(entry->value)),
                    fmt::format("write [{}]", name));
        return nullptr;
    }

    // MeterAccuracy or ClampAccuracy.
    template <class Instrument>
    void instrument(DocumentValue const& root, SectionSpec const& section, Instrument& instrument) {
        auto const* entry = table(root, section.name);
        if (!entry) return;
        Subject const subject{fmt::format("[{}]", section.name), std::string(section.meaning), entry->region};
        KeyReader reader(section, subject, entry->value, models_, report_);
        std::string accuracy;
        reader("accuracy", accuracy);
        reader("resolution", instrument.digit);
        if (!reader.is_valid("accuracy")) return;
        if (auto const parsed = parse_stated_accuracy(accuracy)) {
            instrument.of_reading = parsed->of_reading;
            instrument.counts = parsed->digits;
        } else {
            reader.fail(file_bad_value, "accuracy",
                        fmt::format("has the accuracy \"{}\"; expected such as {}", clipped(accuracy),
                                    find_key(section, "accuracy")->example),
                        "write per cent of the reading, then counts of the last digit");
        }
    }

    void read_state(KeyReader& reader, ReadingState& state) {
        ReadingState own;
        reader("rest", own.rest);
        reader("throttle", own.throttle);
        reader("current", own.current);
        int const said = (own.rest && *own.rest) + own.throttle.has_value() + own.current.has_value();
        if (said > 1)
            reader.fail(file_bad_value, {}, "says more than one of `rest`, `throttle` and `current`",
                        "keep the one that held");
        if (own.rest || own.throttle || own.current) state = own;
    }

    template <class Read>
    void each(DocumentValue const& root, SectionSpec const& section, Read&& read_one) {
        auto const* entry = find_entry(root, section.name);
        if (!entry) return;
        if (entry->value.kind != DocumentValue::Kind::array)
            return report_.add(file_bad_value, {}, section.name, entry->region,
                               fmt::format("`{}` is {}; expected tables, each under [[{}]]", section.name,
                                           shown(entry->value), section.name),
                               fmt::format("write [[{}]], in double brackets, above each", section.name));
        int number = 0;
        for (auto const& item : entry->value.items) {
            auto const title = fmt::format("[[{}]] {}", section.name, ++number);
            if (item.kind != DocumentValue::Kind::table) {
                report_.add(file_bad_value, title, {}, item.region,
                            fmt::format("{} is {}; expected a table", title, shown(item)),
                            fmt::format("write [[{}]] above each", section.name));
                continue;
            }
            KeyReader reader(section, Subject{title, title, item.region}, item, models_, report_);
            read_one(reader);
        }
    }

    // Does the bank have what the reading names?
    bool known(KeyReader& reader, std::string_view key, std::string const& name, std::vector<std::string> const& names,
               std::string_view what) {
        if (!reader.is_valid(key)) return false;
        if (std::find(names.begin(), names.end(), name) != names.end()) return true;
        reader.fail(what == "terminal" ? file_unknown_terminal : file_bad_value, key,
                    fmt::format("names the {} {}, which {}", what, in_backquotes(name),
                                what == "terminal" ? "the bank does not have"
                                                   : "is none of the bank's through which a current flows"),
                    help_with(report_.nearest(name, names), fmt::format("name a {} of the bank", what)));
        return false;
    }

    ReadLimits const& limits_;
    ReadingSheet& sheet_;
    bool& readable_;
    Report& report_;
    std::vector<std::string> terminals_, parts_;
    Models models_; // a file of readings has none
    ReadingState common_;
};

} // namespace internal::reader

BANKWRIGHT_INLINE ReadingsResult read_readings(std::string_view text, Bank const& bank, ReadLimits const& limits) {
    ReadingsResult result;
    result.findings = internal::reader::read_alone(
        text, limits, result.readable, [&](DocumentValue const& root, internal::reader::Report& report) {
            internal::reader::ReadingsReader(bank, limits, result, report).read(root);
        });
    return result;
}

} // namespace bankwright
