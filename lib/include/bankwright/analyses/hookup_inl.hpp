// Bodies of hookup.hpp: the order walked step by step, with every mistake that no reading has shown so far.
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/hookup/hookup_equalizing.hpp"
#include "bankwright/analyses/hookup/hookup_meter.hpp"
#include "bankwright/analyses/hookup/hookup_mistakes.hpp"
#include "bankwright/analyses/hookup/hookup_order.hpp"
#include "bankwright/analyses/hookup/hookup_probes.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <utility>

namespace bankwright {

namespace internal {

class HookupRun {
public:
    HookupRun(Bank const& bank, HookupOptions const& options)
        : bank_(bank), partial_(bank), meter_(bank, partial_, options), probes_(bank, partial_),
          made_(partial_.connections().size(), 0), mistakes_(possible_mistakes(bank, partial_)),
          shown_(mistakes_.size(), 0), stand_(mistakes_.size()), loads_on_(loads_on(bank, partial_)) {}

    HookupResult run() {
        for (std::size_t b = 0; b < partial_.batteries(); ++b)
            result_.batteries.push_back(meter_.read_battery(b, mistakes_));
        auto const order = hookup_order(bank_, partial_);
        now_ = partial_.read(made_);
        for (auto const c : order.sequence)
            make(c);
        std::reverse(result_.disconnect.begin(), result_.disconnect.end());
        result_.left_open = drawn_open();
        result_.largest_gap = order.largest_gap * si::volt;
        result_.proven = order.proven;
        result_.states = order.states;
        return std::move(result_);
    }

private:
    void make(std::size_t c) {
        auto const& connection = partial_.connections()[c];
        HookupStep step;
        step.part = connection.part;
        step.action = action(connection.kind);
        step.dead = !probes_.is_live(connection, now_);
        if (connection.paths.size() == 1) {
            auto const ends = probes_.ends(connection, now_);
            step.first = name(ends.first);
            step.last = name(ends.second);
        }
        DisconnectStep undo{step.action, step.part, step.last, step.first, {}, {}};
        auto const gap = probes_.gap(connection, now_);
        auto const closes = closing_gap(connection, now_).has_value();
        if (!step.dead) {
            step.before = meter_.read(made_, now_, gap.first, gap.second);
            auto aimed = gap_mistakes(c, *step.before, gap);
            add_hidden(*step.before, aimed);
            step.before->wrong = meter_.merged(std::move(aimed));
            step.equalizing = equalizing(bank_, partial_, meter_, made_, now_, c);
        }
        auto const earlier = std::exchange(made_, with(c));
        auto const before = std::exchange(now_, partial_.read(made_));
        for (auto& stand : stand_)
            stand.reset();
        if (!step.dead) {
            auto const pair = probes_.across(connection, before, now_);
            step.after = meter_.read(made_, now_, pair.first, pair.second);
            std::vector<Cause> causes;
            add_hidden(*step.after, causes);
            step.after->wrong = meter_.merged(std::move(causes));
            Probes const parted =
                closes ? gap : Probes{partial_.node(step.after->red), partial_.node(step.after->black)};
            undo.then = meter_.read(earlier, before, parted.first, parted.second);
        }
        if (auto const live = probes_.most_live(before))
            undo.still_live = meter_.read(earlier, before, live->first, live->second);
        result_.steps.push_back(std::move(step));
        result_.disconnect.push_back(std::move(undo));
    }

    static HookupAction action(PartKind kind) {
        switch (kind) {
        case PartKind::fuse:
            return HookupAction::fit;
        case PartKind::connector:
            return HookupAction::mate;
        case PartKind::breaker:
        case PartKind::switch_:
            return HookupAction::close;
        default:
            return HookupAction::land;
        }
    }

    Made with(std::size_t c) const {
        auto made = made_;
        made[c] = 1;
        return made;
    }

    std::string const& name(int node) const { return partial_.terminals()[as_index(node)]; }

    // An end about to be landed in the wrong place shows across the gap that it would close; so does a load that is on.
    std::vector<Cause> gap_mistakes(std::size_t c, MeterReading const& right, std::pair<int, int> gap) {
        auto const& path = partial_.connections()[c].paths.front();
        bool const turned = right.red != name(gap.first);
        std::vector<Cause> causes;
        auto const consider = [&](Mistake const& mistake, std::optional<double> reads) {
            if (reads && turned) *reads = -*reads;
            if (!meter_.tells(right, reads)) return false;
            causes.push_back({mistake, in_volts(reads)});
            return true;
        };
        for (std::size_t m = 0; m < mistakes_.size(); ++m) {
            auto const& possible = mistakes_[m];
            if (shown_[m] || possible.connection != static_cast<int>(c)) continue;
            auto const onto = possible.deviation.onto;
            bool const from_end = possible.deviation.from_end;
            shown_[m] =
                consider(possible.mistake, now_.between(from_end ? onto : path.from, from_end ? path.to : onto));
        }
        for (auto const& load : loads_on_)
            consider(load.mistake, partial_.read(made_, load.deviation).between(gap.first, gap.second));
        return causes;
    }

    // The mistakes that this reading is the first to show.
    void add_hidden(MeterReading const& right, std::vector<Cause>& causes) {
        auto const red = partial_.node(right.red), black = partial_.node(right.black);
        auto const answers = right.expected ? partial_.sense(made_, red, black) : Sensitivity{};
        for (std::size_t m = 0; m < mistakes_.size(); ++m) {
            auto const& possible = mistakes_[m];
            bool const made = possible.connection < 0 || made_[as_index(possible.connection)];
            if (shown_[m] || !made) continue;
            auto const battery = possible.deviation.battery;
            std::optional<double> reads;
            if (battery < 0) {
                if (!stand_[m]) stand_[m] = partial_.read(made_, possible.deviation);
                reads = stand_[m]->between(red, black);
            } else if (right.expected) { // the network is linear; and another emf closes no path
                auto const b = as_index(battery);
                reads = right.expected->value() + answers.per_volt[b] * (possible.deviation.emf - partial_.emf(b));
            }
            if (!meter_.tells(right, reads)) continue;
            causes.push_back({possible.mistake, in_volts(reads)});
            shown_[m] = 1;
        }
    }

    static std::optional<Voltage> in_volts(std::optional<double> volts) {
        if (!volts) return std::nullopt;
        return *volts * si::volt;
    }

    std::vector<std::string> drawn_open() const {
        std::vector<std::string> open;
        auto const add = [&](std::string const& id, bool is_open) {
            if (is_open) open.push_back(id);
        };
        for (auto const& device : bank_.breakers)
            add(device.id, !device.closed.value_or(true));
        for (auto const& device : bank_.fuses)
            add(device.id, !device.closed.value_or(true));
        for (auto const& device : bank_.switches)
            add(device.id, !device.closed.value_or(true));
        for (auto const& device : bank_.connectors)
            add(device.id, !device.mated.value_or(true));
        return open;
    }

    Bank const& bank_;
    PartialBank partial_;
    HookupMeter meter_;
    HookupProbes probes_;
    Made made_;
    Potentials now_;
    std::vector<PossibleMistake> mistakes_;
    std::vector<char> shown_;                      // by mistake: a reading has shown it
    std::vector<std::optional<Potentials>> stand_; // by mistake: the present state with it, if it was asked for
    std::vector<PossibleMistake> loads_on_;
    HookupResult result_;
};

} // namespace internal

BANKWRIGHT_INLINE std::optional<std::string> unfit_for_hookup(Bank const& bank) {
    if (bank.batteries.empty()) return "it has no battery";
    auto const graph = wiring_graph(bank);
    auto const verdict = judge(graph, graph.edges);
    for (auto const* edges : {&verdict.shorted, &verdict.clashes})
        if (!edges->empty()) return "a loop shorts battery `" + graph.id(graph.edges[as_index(edges->front())]) + "`";
    return std::nullopt;
}

BANKWRIGHT_INLINE void refuse_unfit(HookupOptions const& options) {
    auto const of_reading = Spread::of(options.of_reading);
    refuse_if(of_reading_problem(of_reading), "of_reading", of_reading);
    refuse_if(digits_problem(options.digits), "digits", std::to_string(options.digits));
    if (options.resolution) refuse_if(resolution_problem(*options.resolution), "resolution", *options.resolution);
    refuse_if(charge_within_problem(options.charge_within), "charge_within", options.charge_within);
}

BANKWRIGHT_INLINE HookupResult hookup(Bank const& bank, HookupOptions const& options) {
    refuse_unfit(options);
    if (auto const unfit = unfit_for_hookup(bank)) throw std::invalid_argument("no hook-up: " + *unfit);
    return internal::HookupRun(bank, options).run();
}

} // namespace bankwright
