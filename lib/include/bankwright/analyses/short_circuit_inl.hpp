// Bodies of short_circuit.hpp.
#pragma once

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/analyses/short_circuit/interrupting_standard.hpp"
#include "bankwright/analyses/short_circuit/short_course.hpp"
#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/devices/conductor_heating.hpp"
#include "bankwright/network/option_limits.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

namespace bankwright {

namespace internal {

class ShortCircuits {
public:
    ShortCircuits(Bank const& bank, ShortCircuitOptions const& options)
        : closed_(with_all_closed(bank)), network_(closed_), options_(options) {
        for (auto const* devices : {&closed_.breakers, &closed_.fuses})
            for (auto const& device : *devices) {
                devices_.push_back(&device);
                result_.devices.push_back({device.id, {}, {}, {}, {}, {}, {}, device.interrupts, {}});
            }
        for (auto const* runs : {&closed_.jumpers, &closed_.cables})
            for (auto const& run : *runs) {
                auto const allowed = ampacity(run.conductor, closed_.system.ambient);
                steady_.push_back(allowed ? allowed->current : Current{});
                result_.conductors.push_back({id_of(run), withstand(run.conductor), {}, {}});
            }
    }

    ShortCircuitResult run() {
        for (auto const& pair : short_places(closed_, options_.least_voltage)) {
            ShortCourse const course(closed_, network_, pair);
            if (!course.stages().empty()) consider(pair, course);
        }
        InterruptingStandard const standard(closed_);
        for (auto& device : result_.devices) {
            if (device.at.empty()) continue;
            device.need = device.most;
            standard.raise(device);
            if (device.interrupts) device.suffices = device.need <= *device.interrupts;
        }
        return std::move(result_);
    }

private:
    void consider(TerminalPair const& pair, ShortCourse const& course) {
        ShortPlace place{
            pair.terminal,           pair.against,     pair.voltage, course.prospective(), {}, course.cleared_by(),
            course.cleared_within(), course.bypassed()};
        for (std::size_t d = 0; d < devices_.size(); ++d) {
            auto const& device = *devices_[d];
            auto const amps = course.through(course.stages().front(), device.id);
            if (amps == Current{}) continue;
            FaultDevice carries{device.id, amps, trip_band(device, amps), {}};
            auto most = amps;
            for (auto const& stage : course.stages())
                most = std::max(most, course.through(stage, device.id));
            if (device.interrupts) carries.interrupts = most <= *device.interrupts;
            auto& duty = result_.devices[d];
            if (most > duty.most) {
                duty.most = most;
                duty.at = pair.terminal;
            }
            place.devices.push_back(std::move(carries));
        }
        for (std::size_t c = 0; c < result_.conductors.size(); ++c)
            heat(result_.conductors[c], steady_[c], place, course);
        result_.places.push_back(std::move(place));
    }

    // A current that the conductor may carry for good is no short circuit, and heats it no further.
    static void heat(ConductorDuty& duty, Current steady, ShortPlace const& place, ShortCourse const& course) {
        ConductorInShort here{place.terminal, course.through(course.stages().front(), duty.id), {}, {}, {}};
        auto most = 0.0; // [A2s]
        for (auto const& stage : course.stages()) {
            auto const amps = course.through(stage, duty.id);
            if (amps == Current{} || amps <= steady) continue;
            here.current = std::max(here.current, amps);
            most += amps.value() * amps.value() * stage.lasts.value();
        }
        if (most == 0.0) return;
        if (duty.withstand) here.bears = *duty.withstand / (here.current * here.current);
        if (!std::isfinite(most)) {
            if (!duty.unended || duty.unended->current < here.current) duty.unended = here;
            return;
        }
        here.heat = LetThrough::from_value(most);
        if (duty.withstand && most <= duty.withstand->value()) here.survives = true;
        if (duty.withstand && at_least(place, here.current) > duty.withstand->value()) here.survives = false;
        if (!duty.ended || *duty.ended->heat < *here.heat) duty.ended = here;
    }

    // [A2s] What it gets before any device can have opened.
    static double at_least(ShortPlace const& place, Current current) {
        auto soonest = std::numeric_limits<double>::infinity(); // [s]
        for (auto const& device : place.devices)
            soonest = std::min(soonest, device.band ? device.band->at_least.value() : 0.0);
        return std::isfinite(soonest) ? current.value() * current.value() * soonest : 0.0;
    }

    Bank closed_;
    ShortedNetwork network_;
    ShortCircuitOptions options_;
    std::vector<ProtectiveDevice const*> devices_; // as in the result
    std::vector<Current> steady_;                  // by conductor: its ampacity; 0 where that is not known
    ShortCircuitResult result_;
};

} // namespace internal

BANKWRIGHT_INLINE ShortCircuitResult short_circuit(Bank const& bank, ShortCircuitOptions const& options) {
    refuse_unless(options.least_voltage.value() >= 0.0 && options.least_voltage.value() <= 1000.0, "least_voltage",
                  options.least_voltage.value(), "0 V to 1 kV");
    return internal::ShortCircuits(bank, options).run();
}

} // namespace bankwright
