// What was taken for granted, and where each number came from.
#pragma once

#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/drawing/words.hpp"
#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/assumption_words.hpp"
#include "bankwright/tables/open_circuit_voltage.hpp"
#include "bankwright/tables/source.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

inline std::string cited(Source const& source) {
    auto text = std::string(source.document);
    if (!source.clause.empty()) text += ": " + std::string(source.clause);
    if (source.edition != "none" && !source.edition.empty()) text += " (" + std::string(source.edition) + ")";
    return text + ". How sure: " + std::string(source.confidence.substr(0, source.confidence.find(':'))) + ".";
}

inline Source open_circuit_source(Chemistry chemistry) {
    namespace table = tables::open_circuit_voltage;
    switch (chemistry) {
    case Chemistry::flooded:
        return table::flooded_source;
    case Chemistry::agm:
        return table::agm_source;
    case Chemistry::gel:
        return table::gel_source;
    case Chemistry::lifepo4:
        return table::lifepo4_source;
    case Chemistry::nmc:
        return table::nmc_source;
    }
    return table::flooded_source;
}

class SourcesChapter {
public:
    SourcesChapter(Html& html, BankReport const& report) : html_(html), report_(report), bank_(report.bank) {}

    void write() {
        html_.folded_chapter("sources", "What this rests on");
        html_.paragraph(
            "Every figure on this page is calculated from the description of the bank; nobody has measured the "
            "boat. It knows no loose lug, no corroded crimp and no cell that is about to fail.");
        taken_for_granted();
        batteries();
        conductors();
        documents();
        html_.close();
    }

private:
    void taken_for_granted() {
        auto const& system = bank_.system;
        std::vector<std::string> said{
            "Batteries and conductors are at " + print(system.ambient) + " where the file gives no other temperature.",
            system.joint.value() > 0.0
                ? "Each bolted or crimped joint has " + milliohms(system.joint) + " unless a conductor says otherwise."
                : "Joints have no resistance unless a conductor says otherwise: the file states none.",
            "Breakers, fuses, switches and contacts have no resistance where the file states none.",
            "A motor follows the law of a propeller from its nameplate figure; other loads draw what the file says.",
            "Currents are steady: what happens within a second of a switch is not looked at.",
        };
        for (auto const& one : assumptions(bank_, Asked::everything, !report_.at_throttles.empty()))
            said.push_back("Assumed, as the file does not say: " + one + ".");
        for (auto& one : said)
            one = with_unit_signs(one);
        html_.element("h3", "Assumptions").items(said);
    }

    void cite(Source const& source) {
        auto const text = sentence(cited(source));
        if (std::find(cited_.begin(), cited_.end(), text) == cited_.end()) cited_.push_back(text);
    }

    void batteries() {
        std::vector<std::vector<std::string>> rows;
        for (auto const& battery : bank_.batteries) {
            auto const temperature = battery.temperature.value_or(bank_.system.ambient);
            std::string voltage_from = "the file", resistance_from = "the file";
            if (!battery.emf && battery.chemistry) {
                voltage_from = "its chemistry and charge";
                cite(open_circuit_source(*battery.chemistry));
            }
            if (!battery.resistance) {
                resistance_from = battery.cranking ? "its cranking current" : "its chemistry and capacity";
                cite(internal_resistance_source(battery));
            }
            if (report_.run && battery.capacity) cite(peukert_source(battery));
            rows.push_back({battery.id, volts(open_circuit_voltage(battery, temperature)) + ", from " + voltage_from,
                            milliohms(internal_resistance(battery, temperature)) + ", from " + resistance_from});
        }
        if (!rows.empty()) html_.table("Batteries at rest", {{"battery"}, {"voltage"}, {"internal resistance"}}, rows);
    }

    void conductors() {
        std::vector<std::vector<std::string>> rows;
        bool any_copper = false;
        for (auto const* runs : {&bank_.jumpers, &bank_.cables})
            for (auto const& run : *runs) {
                auto const& wire = run.conductor;
                auto const value = resistance(wire, bank_.system.ambient, bank_.system.joint);
                any_copper = any_copper || !wire.resistance;
                rows.push_back(
                    {wire.id, "`" + run.from + "` to `" + run.to + "`",
                     milliohms(value) +
                         (wire.resistance ? ", from the file" : ", copper of " + drawing::size_and_length(wire))});
            }
        if (rows.empty()) return;
        html_.table("Resistance of jumpers and cables", {{"conductor"}, {"runs from, to"}, {"resistance"}}, rows);
        if (any_copper)
            cited_.push_back(sentence(
                "IEC 60028, annealed copper: 1/58 ohm mm2/m at 20 degC, 0.00393 per kelvin. How sure: recalled; "
                "the figures that IEC 60364 and IEC 60228 derive from them are quoted by reprints. Strands are 2 % "
                "longer than the conductor: ASTM B496 (quoted: a reprint)."));
    }

    void documents() {
        for (auto const* devices : {&bank_.breakers, &bank_.fuses})
            for (auto const& device : *devices)
                if (auto const band = device.rating ? trip_band(device, 2.0 * *device.rating) : std::nullopt)
                    cite(band->source);
        html_.element("h3", "Documents");
        if (!cited_.empty()) html_.items(cited_);
        html_.paragraph("Each finding says where its limit comes from: [read] the text itself was "
                        "read, [quoted: where] it was read second-hand, [recalled] it was not looked up, [derived] it "
                        "follows from physics, common practice: the trade does so, and no source says it.");
    }

    Html& html_;
    BankReport const& report_;
    Bank const& bank_;
    std::vector<std::string> cited_;
};

} // namespace bankwright::page
