// Bodies of short_course.hpp.
#pragma once

#include "bankwright/analyses/short_circuit/short_course.hpp"
#include "bankwright/devices/protection_trip.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE Bank with_all_closed(Bank bank) {
    for (auto* devices : {&bank.breakers, &bank.fuses})
        for (auto& device : *devices)
            device.closed = true;
    for (auto& device : bank.switches)
        device.closed = true;
    for (auto& relay : bank.relays)
        relay.closed = true;
    for (auto& selector : bank.selectors)
        selector.position = SelectorPosition::both;
    for (auto& connector : bank.connectors)
        connector.mated = true;
    return bank;
}

BANKWRIGHT_INLINE Duration latest_opening(ProtectiveDevice const& device, Current current) {
    auto latest = std::numeric_limits<double>::infinity() * si::second;
    if (device.interrupts && current > *device.interrupts) return latest;
    if (auto const band = trip_band(device, current)) latest = band->at_most;
    if (auto const bound = let_through(device, current))
        latest = std::min(latest, Duration(bound->at_most / (current * current)));
    return latest;
}

BANKWRIGHT_INLINE ShortCourse::ShortCourse(Bank const& closed, ShortedNetwork const& network, TerminalPair const& pair)
    : closed_(closed), network_(network), pair_(pair) {
    run();
}

BANKWRIGHT_INLINE std::optional<ShortCurrents> ShortCourse::with(std::vector<std::string> const& open) const {
    constexpr double nothing = 1e-6; // of the short at first
    auto carried = network_.between(pair_.terminal, pair_.against, open);
    if (carried && carried->total <= nothing * prospective()) carried.reset();
    return carried;
}

// Each device wears by the share of its time that passes at each current: the whole of it, and it opens.
BANKWRIGHT_INLINE void ShortCourse::run() {
    struct Wearing {
        ProtectiveDevice const* device;
        double worn; // of 1
        double left; // [s] at the present current
        double time; // [s] in all, at the present current
    };
    std::vector<Wearing> closed;
    for (auto const* devices : {&closed_.breakers, &closed_.fuses})
        for (auto const& device : *devices)
            closed.push_back({&device, 0.0, 0.0, 0.0});
    while (auto carried = with(opened_)) {
        stages_.push_back({std::numeric_limits<double>::infinity() * si::second, std::move(*carried)});
        auto& stage = stages_.back();
        for (auto& one : closed) {
            auto const current = through(stage, one.device->id);
            one.time = current > Current{} ? latest_opening(*one.device, current).value()
                                           : std::numeric_limits<double>::infinity();
            one.left = (1.0 - one.worn) * one.time;
        }
        auto const next = std::min_element(closed.begin(), closed.end(),
                                           [](auto const& a, auto const& b) { return a.left < b.left; });
        if (next == closed.end() || !std::isfinite(next->left)) return;
        auto const lasts = std::max(0.0, next->left);
        stage.lasts = lasts * si::second;
        for (auto& one : closed)
            if (std::isfinite(one.time)) one.worn = std::min(1.0, one.worn + lasts / one.time);
        opened_.push_back(next->device->id);
        closed.erase(next);
    }
}

BANKWRIGHT_INLINE Current ShortCourse::through(Stage const& stage, std::string const& part) const {
    constexpr double nothing = 1e-6; // of the short at first
    auto const carried = stage.currents.parts.find(part);
    if (carried == stage.currents.parts.end()) return {};
    auto const amps = std::abs(carried->second.value()) * si::ampere;
    return amps > nothing * prospective() ? amps : Current{};
}

BANKWRIGHT_INLINE std::optional<Duration> ShortCourse::cleared_within() const {
    if (stages_.empty() || !std::isfinite(stages_.back().lasts.value())) return std::nullopt;
    Duration within{};
    for (auto const& stage : stages_)
        within += stage.lasts;
    return within;
}

BANKWRIGHT_INLINE bool ShortCourse::bypassed() const {
    if (stages_.empty() || cleared_within()) return false;
    for (auto const* devices : {&closed_.breakers, &closed_.fuses})
        for (auto const& device : *devices)
            if (through(stages_.back(), device.id) > Current{}) return false;
    return true;
}

BANKWRIGHT_INLINE std::vector<std::string> ShortCourse::cleared_by() const {
    if (!cleared_within()) return {};
    auto needed = opened_;
    for (std::size_t k = needed.size(); k-- > 0;) {
        auto fewer = needed;
        fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(k));
        if (!with(fewer)) needed = std::move(fewer);
    }
    return needed;
}

} // namespace bankwright
