// Body of short_circuit_text.hpp.
#pragma once

#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/short_circuit_text.hpp"
#include "bankwright/reports/short_circuit_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::short_circuit_text {

using short_circuit_words::band;
using short_circuit_words::ended;
using short_circuit_words::needed;

inline std::string places(ShortCircuitResult const& result) {
    std::vector<Row> rows{{"short between", "and", "before", "flows", "through", "opens in", "ended by"}};
    for (auto const& place : result.places) {
        Row row{place.terminal, place.against, print(place.voltage), print(place.prospective), "", "", ended(place)};
        for (auto const& device : place.devices) {
            row[4] = device.id + " " + print(device.through);
            row[5] = band(device);
            rows.push_back(row);
            row = {"", "", "", "", "", "", ""};
        }
        if (place.devices.empty()) rows.push_back(row);
    }
    return table(rows, {Align::left, Align::left, Align::right, Align::right, Align::left, Align::left, Align::left});
}

inline std::string devices(ShortCircuitResult const& result) {
    std::vector<Row> rows{{"device", "most through it", "short at", "must interrupt", "interrupts", ""}};
    for (auto const& device : result.devices) {
        if (device.at.empty()) {
            rows.push_back(
                {device.id, "nothing", "", "", device.interrupts ? print(*device.interrupts) : "not stated", ""});
            continue;
        }
        rows.push_back({device.id, print(device.most), device.at, needed(device),
                        device.interrupts ? print(*device.interrupts) : "not stated",
                        !device.suffices   ? "not known"
                        : *device.suffices ? "enough"
                                           : "too little"});
    }
    return table(rows, {Align::left, Align::right, Align::left, Align::right, Align::right, Align::left});
}

// What a short does to the copper: where a device ends it, and where nothing opens.
inline std::string conductors(ShortCircuitResult const& result) {
    std::vector<Row> rows{
        {"conductor", "ended, short at", "", "nothing opens, short at", "flows", "the wire is spoiled after"}};
    for (auto const& one : result.conductors) {
        Row row{one.id, "", one.withstand ? "" : "size not stated", "", "", ""};
        if (one.ended) {
            row[1] = one.ended->at;
            row[2] = !one.ended->survives ? "not sure" : *one.ended->survives ? "survives" : "does not survive";
        }
        if (one.unended) {
            row[3] = one.unended->at;
            row[4] = print(one.unended->current);
            row[5] = one.unended->bears ? print(*one.unended->bears) : "not known";
        }
        rows.push_back(std::move(row));
    }
    return table(rows, {Align::left, Align::left, Align::left, Align::left, Align::right, Align::right});
}

} // namespace internal::short_circuit_text

BANKWRIGHT_INLINE std::string short_circuit_text(ShortCircuited const& shorted) {
    auto const& result = shorted.result;
    auto out = fmt::format("{}: {}short circuits at {}\n", terminal_safe(shorted.file),
                           shorted.arrangement ? *shorted.arrangement + ", " : std::string(),
                           counted(static_cast<int>(result.places.size()), "place"));
    if (result.places.empty()) return out;
    out +=
        "\none at a time and without resistance, every device closed, every load and charger off; what flows is the\n"
        "prospective current (available short-circuit current):\n\n";
    out += internal::short_circuit_text::places(result);
    if (!result.devices.empty()) out += "\n" + internal::short_circuit_text::devices(result);
    if (!result.conductors.empty()) out += "\n" + internal::short_circuit_text::conductors(result);
    out += "\nevery device is assumed to be as slow as the standard named by its `class` allows; some standards bound\n"
           "overloads only, and a short may well be over sooner: what is not sure need not fail\n"
           "spoiled: its insulation is past use, and above 5 s that time is on the safe side\n"
           "not counted: what inductance holds back, a fuse's arc, and a lithium battery's own disconnect\n";
    return out + assumed_line(shorted.assumed) + errors_first(shorted.file, shorted.counts);
}

} // namespace bankwright
