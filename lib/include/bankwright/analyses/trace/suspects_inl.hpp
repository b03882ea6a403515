// Bodies of suspects.hpp.
#pragma once

#include "bankwright/analyses/trace/suspect_chances.hpp"
#include "bankwright/analyses/trace/suspects.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>

namespace bankwright {

BANKWRIGHT_INLINE Suspects::Suspects(Bank const& bank, PartSpread const& spread, std::optional<Since> since)
    : bank_(bank), network_(build(bank, internal::suspecting::at_rest())), places_(places_of(bank)), spread_(spread),
      changes_(single_faults(bank_, network_, places_)) {
    suspects_.push_back({{}, hypotheses_++, internal::suspecting::chance_as_described});
    for (std::size_t c = 0; c < changes_.size(); ++c) {
        auto const& ladder = changes_[c].ladder;
        double const weight = chance_of(changes_[c], since);
        if (ladder.empty()) suspects_.push_back({{{c, 0.0}}, hypotheses_, weight});
        for (double value : ladder)
            suspects_.push_back({{{c, value}}, hypotheses_, weight / static_cast<double>(ladder.size())});
        ++hypotheses_;
    }
    singles_ = suspects_.size();
    single_hypotheses_ = hypotheses_;
}

BANKWRIGHT_INLINE std::size_t Suspects::elements() const {
    std::size_t sum = 0;
    for (auto const& part : network_.parts)
        sum += part.elements.size();
    return sum;
}

BANKWRIGHT_INLINE void Suspects::forget_pairs() {
    bool const had_pairs = suspects_.size() > singles_;
    suspects_.resize(singles_);
    hypotheses_ = single_hypotheses_;
    pairs_.clear();
    if (!had_pairs) return;
    for (auto& then : moments_)
        for (auto known = then.expected.begin(); known != then.expected.end();)
            if (known->first < singles_)
                ++known;
            else
                known = then.expected.erase(known);
}

BANKWRIGHT_INLINE void Suspects::forget_but(std::vector<Moment> const& moments) {
    moments_.remove_if([&](AtMoment const& then) {
        return std::none_of(moments.begin(), moments.end(),
                            [&](Moment const& one) { return internal::suspecting::same(one, then.moment); });
    });
    kept_bytes_ = 0;
    for (auto const& then : moments_)
        for (auto const& [suspect, expected] : then.expected)
            kept_bytes_ += expected.bytes();
    if (kept_bytes_ <= internal::suspecting::most_kept_bytes) return;
    for (auto& then : moments_)
        then.expected.clear();
    kept_bytes_ = 0;
}

// Wet: a plug and receptacle, and the ring terminals and crimps of what is landed there.
BANKWRIGHT_INLINE double Suspects::chance_of(FaultChange const& change, std::optional<Since> since) const {
    auto const& part = network_.parts[change.part];
    auto const is_of_plug = [&](int terminal) {
        for (auto const& other : network_.parts) {
            if (other.kind != PartKind::connector) continue;
            for (auto const& pole : other.elements)
                if (terminal == pole.from || terminal == pole.to) return true;
        }
        return false;
    };
    bool const is_wet = part.kind == PartKind::connector || is_of_plug(part.elements.front().from) ||
                        is_of_plug(part.elements.front().to);
    return internal::suspecting::chance(change, part.kind, is_wet) *
           internal::suspecting::chance_since(since, change.kind);
}

BANKWRIGHT_INLINE void Suspects::add_pair(std::size_t one, std::size_t other) {
    auto const &a = suspects_[one], &b = suspects_[other];
    if (a.faults.size() != 1 || b.faults.size() != 1) return;
    auto const &first = a.faults.front(), &second = b.faults.front();
    if (first.first == second.first || changes_[first.first].element == changes_[second.first].element) return;
    auto const key = std::minmax(first.first, second.first);
    Suspect pair{{first, second}, 0, a.weight * b.weight * internal::suspecting::chance_of_second};
    auto const [known, is_new] = pairs_.emplace(std::pair(key.first, key.second), hypotheses_);
    if (is_new) ++hypotheses_;
    pair.hypothesis = known->second;
    suspects_.push_back(std::move(pair));
}

BANKWRIGHT_INLINE std::vector<Fault> Suspects::describe(Suspect const& suspect, double low, double high) const {
    bool const is_alone = suspect.faults.size() == 1;
    std::vector<Fault> faults;
    for (auto const& [change, value] : suspect.faults)
        faults.push_back(
            bankwright::describe(changes_[change], is_alone ? low : value, is_alone ? high : value, network_));
    return faults;
}

BANKWRIGHT_INLINE Suspects::AtMoment& Suspects::at(Moment const& moment) {
    for (auto& known : moments_)
        if (internal::suspecting::same(known.moment, moment)) return known;
    auto wiring = wiring_of(build(bank_, internal::suspecting::as_looked_at(moment)));
    wiring.current_is_stated = moment.loads == LoadsAre::constant_current;
    auto const usual = solver::solve(wiring.circuit);
    if (usual.status == solver::Status::solved)
        for (auto const& load : wiring.circuit.loads)
            wiring.usual_volts.push_back(usual.volts[static_cast<std::size_t>(load.plus)] -
                                         usual.volts[static_cast<std::size_t>(load.minus)]);
    moments_.push_back({moment, UpdatedReadings(std::move(wiring), spread_), {}});
    return moments_.back();
}

// What lies between two values of a ladder: a normal spread as wide as the step.
BANKWRIGHT_INLINE std::vector<PartDoubt> Suspects::doubts_of(Suspect const& suspect, FaultyWiring const& drawn) const {
    std::vector<PartDoubt> doubts;
    for (auto const& [c, value] : suspect.faults) {
        auto const& change = changes_[c];
        if (change.ladder.size() < 2) continue;
        PartDoubt doubt{change.element, 0.0, 0.0};
        auto const& element = drawn.elements[change.element];
        bool const is_branch = element.is == Element::Is::branch;
        double const as_described =
            is_branch ? drawn.circuit.branches[static_cast<std::size_t>(element.index)].resistance : 0.0;
        double const half_step = std::log(change.ladder[1] / change.ladder[0]) / 2.0;
        if (change.kind == FaultKind::resistive || change.kind == FaultKind::dead_cell)
            doubt.ohms = (change.is_multiple ? as_described : 1.0) * value * half_step;
        else if (change.kind == FaultKind::stalled)
            doubt.ohms = as_described / value * half_step;
        else if (is_branch)
            doubt.volts = (change.ladder[1] - change.ladder[0]) / 2.0 *
                          drawn.circuit.branches[static_cast<std::size_t>(element.index)].emf;
        doubts.push_back(doubt);
    }
    return doubts;
}

BANKWRIGHT_INLINE ExpectedReadings& Suspects::expected(std::size_t suspect, Moment const& moment) {
    auto& then = at(moment);
    auto const known = then.expected.find(suspect);
    if (known != then.expected.end()) return known->second;
    auto& solved = then.expected.emplace(suspect, solve(suspect, then.updated.drawn())).first->second;
    kept_bytes_ += solved.bytes();
    return solved;
}

BANKWRIGHT_INLINE ExpectedReadings const& Suspects::glance(std::size_t suspect, AtMoment& moment,
                                                           std::optional<ExpectedReadings>& other) {
    auto const known = moment.expected.find(suspect);
    if (known != moment.expected.end()) return known->second;
    auto solved = solve(suspect, moment.updated.drawn());
    if (kept_bytes_ + solved.bytes() > internal::suspecting::most_kept_bytes) return other.emplace(std::move(solved));
    kept_bytes_ += solved.bytes();
    return moment.expected.emplace(suspect, std::move(solved)).first->second;
}

BANKWRIGHT_INLINE void Suspects::prepare(std::size_t suspect, Moment const& moment) {
    auto& then = at(moment);
    if (then.updated.serves() || kept_bytes_ > internal::suspecting::most_kept_bytes) return;
    std::optional<ExpectedReadings> other;
    glance(suspect, then, other);
}

BANKWRIGHT_INLINE ExpectedReadings Suspects::solve(std::size_t suspect, FaultyWiring wiring) const {
    auto const doubts = doubts_of(suspects_[suspect], wiring);
    for (auto const& [change, value] : suspects_[suspect].faults)
        apply(changes_[change], value, wiring);
    return ExpectedReadings(wiring, spread_, doubts);
}

BANKWRIGHT_INLINE std::vector<ExpectedReading> Suspects::readings(std::size_t suspect, Moment const& moment,
                                                                  std::vector<AskedReading> const& asked) {
    auto& then = at(moment);
    UpdatedReadings::Faults faults;
    for (auto const& [change, value] : suspects_[suspect].faults)
        faults.emplace_back(&changes_[change], value);
    if (!then.expected.count(suspect))
        if (auto updated = then.updated.with(faults, doubts_of(suspects_[suspect], then.updated.drawn()), asked))
            return *std::move(updated);
    std::optional<ExpectedReadings> other;
    auto const& solved = glance(suspect, then, other);
    std::vector<ExpectedReading> readings;
    for (auto const& one : asked)
        readings.push_back(one.element ? solved.amps_reading(*one.element) : solved.volts_reading(one.red, one.black));
    return readings;
}

} // namespace bankwright
