// What Python may ask of a bank, a room an analysis: the command's JSON document, and plain arrays where there are many
// numbers. Nothing here knows of Python. Each throws Refused for a bank that could not be read whole, and
// std::invalid_argument, std::out_of_range or std::length_error where the library does.
#pragma once

#include "bankwright/config/document.hpp"
#include "read_bank.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bankwright::python {

std::string check_answer(ReadBank const&, CheckOptions const&);

struct Readings {
    std::string document;
    std::vector<double> volts;                  // by terminal [V]; not a number where there is none
    std::vector<double> amperes, across, watts; // by part [A], [V], [W]
};
Readings solve_answer(ReadBank const&, MomentWords const&);

// By sample, then by battery.
struct Course {
    std::string document;
    std::vector<double> seconds; // [s]
    std::vector<double> charge;  // [1]
    std::vector<double> amperes; // [A] positive when it discharges
    std::vector<double> volts;   // [V] across its posts
};
struct DischargeWords {
    MomentWords moment;
    std::optional<double> longest;               // [s]
    std::optional<double> rest;                  // [s]
    std::vector<std::pair<double, double>> legs; // throttle 0..1, duration [s]
    bool repeat = false;
};
Course discharge_answer(ReadBank const&, DischargeWords const&);
Course recharge_answer(ReadBank const&, std::optional<double> charge, std::optional<double> longest);

struct MeterWords {
    std::optional<double> of_reading; // 0..1
    std::optional<int> digits;
    std::optional<double> resolution;    // [V]
    std::optional<double> charge_within; // 0..1
};
std::string hookup_answer(ReadBank const&, MeterWords const&);
struct LogAnswer {
    std::string document;
    std::string text; // as `bankwright hookup --log` prints it
};
LogAnswer judged_answer(ReadBank const&, MeterWords const&, std::string const& log, std::string const& file);
std::string short_circuit_answer(ReadBank const&);

// What source the bank is between two terminals, every load and charger off; none where no closed path joins them.
struct Source {
    double volts = 0.0;               // [V]
    double ohms = 0.0;                // [ohm]
    std::optional<double> short_amps; // [A]; none where the two are one point
};
std::optional<Source> seen_from_answer(ReadBank const&, std::string const& plus, std::string const& minus);

struct SizeWords {
    std::optional<double> runtime; // [s]
    std::optional<double> ambient; // [K]
    bool metric = false;
    bool keep_strings = false;
};
struct SizeAnswer {
    std::string document;
    std::string text;     // as `bankwright size` prints it
    std::string cut_list; // CSV
    std::string bank;     // the bank as sized
};
SizeAnswer size_answer(ReadBank const&, SizeWords const&);

// From a wish, each part as it is typed ("36 V", "80 lb"); `parts` is the text of a part list, empty: the usual parts.
struct PlanAnswer {
    std::string document;
    std::string text; // as `bankwright plan` prints it; empty where no bank does
    std::string file; // of the proposed bank
};
PlanAnswer plan_answer(std::map<std::string, std::string> const& wish, std::string const& parts,
                       std::string const& parts_file);

struct CompareAnswer {
    std::string document;
    std::string text; // as `bankwright compare` prints it
};
CompareAnswer compare_answer(std::vector<std::shared_ptr<ReadBank const>> const& banks);

struct TraceAnswer {
    std::string document;
    std::string text; // as `bankwright trace` prints it
};
TraceAnswer trace_answer(ReadBank const&, std::string const& readings, std::string const& file);

struct SampleWords {
    std::size_t samples = 100'000;
    std::uint64_t seed = 1;
    int threads = 1;
    std::size_t checked = 0; // samples on which every rule is tried
};
std::string tolerance_answer(ReadBank const&, MomentWords const&, SampleWords const&);

std::string drawing_answer(ReadBank const&, MomentWords const&, bool readings, bool findings,
                           std::string const& prefix);
std::string report_answer(ReadBank const&, MomentWords const&);
std::string written_answer(ReadBank const&); // canonical text of the bank
std::string rules_answer();                  // the JSON document "rules"

// The text as TOML, within the reader's limits; throws Refused where it is none.
DocumentValue document_answer(std::string const& text, std::string const& file);

// The table of keys, in words that live as long as the program.
struct KeyWords {
    std::string_view name, kind, unit, example, meaning, if_absent;
    std::vector<std::string_view> choices;
};
struct SectionWords {
    std::string_view name, part, meaning, terminals;
    std::vector<KeyWords> keys;
};
std::vector<SectionWords> sections_answer();

// A text as a quantity in SI: the quantity's name as KeyKind has it, its SI unit, the value.
struct QuantityAnswer {
    double value = 0.0;
    std::string problem; // empty if all is well
    bool unit_is_wrong = false;
};
QuantityAnswer quantity_answer(std::string const& kind, std::string const& text);
std::string print_answer(std::string const& kind, double value); // as messages have it: "4.2 mohm"

} // namespace bankwright::python
