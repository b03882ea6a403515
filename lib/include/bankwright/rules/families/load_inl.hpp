#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/rules/families/load.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal {

inline constexpr double flat_charge = 0.05;

class LoadInspector {
public:
    LoadInspector(Seen const& seen, Findings& findings) : seen_(seen), findings_(findings) {}

    void inspect() {
        flat();
        if (!seen_.verdict().right()) return;
        auto const full = with_full_batteries();
        for (std::size_t i = 0; i < seen_.verdict().loads.size(); ++i) {
            auto const& edge = seen_.graph().edges[static_cast<std::size_t>(seen_.verdict().loads[i].edge)];
            auto const& part = seen_.graph().parts[static_cast<std::size_t>(edge.part)];
            if (part.kind == PartKind::motor) {
                nameplate(seen_.bank().motors[part.index], seen_.verdict().loads[i].volts * si::volt);
                under(part.id, seen_.bank().motors[part.index].min_voltage);
            } else if (part.kind == PartKind::load) {
                auto const& load = seen_.bank().loads[part.index];
                under(load.id, load.min_voltage);
                over(load, edge, full.loads[i].volts * si::volt);
            }
        }
        if (seen_.bank().system.runtime && seen_.is_sound() && !missing_for_discharge(seen_.bank()))
            runtime(*seen_.bank().system.runtime);
    }

private:
    WiringVerdict with_full_batteries() const {
        auto edges = seen_.graph().edges;
        for (auto& e : edges) {
            if (e.kind != WiringEdgeKind::battery) continue;
            auto const& battery = seen_.bank().batteries[seen_.graph().parts[static_cast<std::size_t>(e.part)].index];
            auto const ambient = seen_.bank().system.ambient;
            e.volts = (battery.chemistry ? open_circuit_voltage(battery, StateOfCharge::of(1.0), ambient)
                                         : open_circuit_voltage(battery, ambient))
                          .value();
        }
        return judge(seen_.graph(), edges);
    }

    bool starts(std::string const& id) const {
        auto const& loads = seen_.bank().loads;
        return std::any_of(loads.begin(), loads.end(), [&](auto const& l) { return l.id == id && is_starter(l); });
    }

    void under(std::string const& id, std::optional<Voltage> const& least) {
        if (!least || !seen_.is_sound()) return;
        auto const* reading = reading_if_any(starts(id) ? seen_.cranking() : seen_.working(), id);
        if (!reading || !exceeds(*least, reading->voltage)) return;
        constexpr auto rule = rule_named(load_rules, "load/under-voltage");
        auto finding =
            finding_of(rule, fmt::format("`{}` sees {}, at least {}", id, print(reading->voltage), print(*least)),
                       std::string(rule.fix));
        measured(finding, reading->voltage.value(), least->value(), "V").parts = {id};
        finding.key = "min_voltage";
        findings_.push_back(std::move(finding));
    }

    struct Charging {
        std::string id;
        Voltage volts{};
    };

    // The highest that a charger at work, or a converter, holds between the two points that the load is joined to.
    std::optional<Charging> charging(WiringEdge const& load) const {
        std::optional<Charging> highest;
        auto const& verdict = seen_.verdict();
        for (auto const& edge : seen_.graph().edges) {
            if (edge.kind != WiringEdgeKind::charger) continue;
            if (verdict.group_of(edge.from) != verdict.group_of(load.from)) continue;
            if (verdict.group_of(edge.to) != verdict.group_of(load.to)) continue;
            auto const& part = seen_.graph().parts[static_cast<std::size_t>(edge.part)];
            bool const is_charger = part.kind == PartKind::charger;
            if (is_charger && !seen_.bank().chargers[part.index].connected.value_or(false)) continue;
            auto const volts =
                is_charger ? seen_.bank().chargers[part.index].voltage : seen_.bank().converters[part.index].voltage;
            if (volts && (!highest || *volts > highest->volts)) highest = Charging{part.id, *volts};
        }
        return highest;
    }

    void over(Load const& load, WiringEdge const& edge, Voltage full) {
        auto const most = load.max_voltage;
        if (!most) return;
        auto const held = charging(edge);
        bool const is_charging = held && held->volts > full;
        auto const sees = is_charging ? held->volts : full;
        if (!exceeds(sees, *most)) return;
        constexpr auto rule = rule_named(load_rules, "load/over-voltage");
        auto const when = is_charging ? fmt::format("while `{}` holds that", held->id)
                                      : std::string("with the bank full and nothing switched on");
        auto finding = finding_of(
            rule, fmt::format("`{}` sees {} {}, at most {}", load.id, print(sees), when, print(*most)),
            is_charging ? std::string("use a load made for the charging voltage, or a converter; until then switch it "
                                      "off while it charges")
                        : std::string(rule.fix));
        measured(finding, sees.value(), most->value(), "V").parts = {load.id};
        if (is_charging) finding.parts.push_back(held->id);
        finding.key = "max_voltage";
        findings_.push_back(std::move(finding));
    }

    // Where something is to run on it.
    void flat() {
        auto const& bank = seen_.bank();
        if (bank.motors.empty() && bank.loads.empty()) return;
        std::vector<std::string> batteries;
        double fullest = 0.0;
        for (auto const& battery : bank.batteries) {
            if (battery.emf || !battery.charge || battery.charge->value() > flat_charge) continue;
            batteries.push_back(battery.id);
            fullest = std::max(fullest, battery.charge->value());
        }
        if (batteries.empty()) return;
        constexpr auto rule = rule_named(load_rules, "load/flat-battery");
        auto finding = finding_of(rule,
                                  fmt::format("{} {} flat: {:.3g} % of the charge is left", quoted_list(batteries),
                                              batteries.size() == 1 ? "is" : "are", 100.0 * fullest),
                                  std::string(rule.fix));
        finding.parts = std::move(batteries);
        finding.key = "charge";
        findings_.push_back(std::move(finding));
    }

    // A declared system voltage says what the wiring should give, not what the motor is made for. Lithium batteries'
    // nominal voltages are names, held to 8 %.
    void nameplate(Motor const& motor, Voltage counted) {
        if (!motor.voltage) return;
        auto const slack = std::max(same_volts, seen_.graph().lithium ? 0.08 * motor.voltage->value() : 0.0) * si::volt;
        bool const over = exceeds(counted, *motor.voltage + slack);
        if (!over && !exceeds(*motor.voltage - slack, counted)) return;
        constexpr auto too_much = rule_named(load_rules, "load/over-voltage");
        constexpr auto too_little = rule_named(load_rules, "load/nameplate-voltage");
        auto finding =
            finding_of(over ? too_much : too_little,
                       fmt::format("`{}` is made for {}, the batteries it is joined to give {}", motor.id,
                                   print(*motor.voltage), print(counted)),
                       over ? std::string("use a motor made for that voltage, or feed it from a converter; do "
                                          "not close the breaker on it")
                            : std::string(too_little.fix));
        measured(finding, counted.value(), motor.voltage->value(), "V").parts = {motor.id};
        finding.key = "voltage";
        findings_.push_back(std::move(finding));
    }

    // A thousandth of a battery's charge a step is some seconds of an hour's run: enough to tell it from what is
    // wanted.
    void runtime(Duration wanted) {
        DischargeOptions options;
        options.moment.everything_closed = true;
        options.moment.combined = false;
        options.longest = wanted;
        options.tolerance = 1e-3;
        options.samples_apart = 0.1;
        auto const run = discharge(seen_.bank(), options);
        if (run.end == RunEnd::time || run.end == RunEnd::nothing_drawn) return;
        auto const because = [&] {
            switch (run.end) {
            case RunEnd::battery_empty:
                return run.recovers ? fmt::format("`{}` gives no more at this current", run.ended_by)
                                    : fmt::format("`{}` is empty", run.ended_by);
            case RunEnd::battery_cutoff:
                return fmt::format("`{}` is at its cut-off voltage", run.ended_by);
            case RunEnd::load_cutoff:
                return fmt::format("`{}` sees less than its minimum voltage", run.ended_by);
            default:
                return std::string("the bank can no longer supply the power");
            }
        }();
        constexpr auto rule = rule_named(load_rules, "load/runtime");
        auto const known = as_well_as_known(run.runtime);
        auto message = fmt::format("the run ends after {}, wanted {}: {}", print(known < wanted ? known : run.runtime),
                                   print(wanted), because);
        if (run.to_reserve && *run.to_reserve < run.runtime)
            message += fmt::format("; it is down to its reserve after {}", print(as_well_as_known(*run.to_reserve)));
        auto finding = finding_of(rule, std::move(message), std::string(rule.fix));
        measured(finding, run.runtime.value(), wanted.value(), "s");
        if (!run.ended_by.empty()) finding.parts = {run.ended_by};
        findings_.push_back(std::move(finding));
    }

    Seen const& seen_;
    Findings& findings_;
};

} // namespace internal

BANKWRIGHT_INLINE void check_loads(Seen const& seen, Findings& findings) {
    internal::LoadInspector(seen, findings).inspect();
}

} // namespace bankwright
