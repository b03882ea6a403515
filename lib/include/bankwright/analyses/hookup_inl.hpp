// Bodies of hookup.hpp: the order walked step by step, with every mistake that no reading has shown so far.
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/hookup/dead_checks.hpp"
#include "bankwright/analyses/hookup/hookup_equalizing.hpp"
#include "bankwright/analyses/hookup/hookup_meter.hpp"
#include "bankwright/analyses/hookup/hookup_mistakes.hpp"
#include "bankwright/analyses/hookup/hookup_order.hpp"
#include "bankwright/analyses/hookup/hookup_probes.hpp"
#include "bankwright/analyses/hookup/last_devices.hpp"
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
          shown_(mistakes_.size(), 0), stand_(mistakes_.size()) {
        for (auto const& [plus, minus] : load_terminals(bank)) {
            loads_.emplace_back(partial_.node(plus), partial_.node(minus));
            conducting_.leaks.push_back(loads_.back());
        }
        std::size_t chargers = 0; // they do not draw, and stand after the motors and loads
        for (auto const& charger : bank.chargers)
            chargers += static_cast<std::size_t>(charger.outputs.value_or(1));
        auto const first = loads_.begin() + static_cast<std::ptrdiff_t>(bank.motors.size() + bank.loads.size());
        drawing_ = loads_;
        drawing_.erase(drawing_.begin() + (first - loads_.begin()),
                       drawing_.begin() + (first - loads_.begin()) + static_cast<std::ptrdiff_t>(chargers));
        loaded_stand_.resize(mistakes_.size());
    }

    HookupResult run() {
        for (std::size_t b = 0; b < partial_.batteries(); ++b)
            result_.batteries.push_back(meter_.read_battery(b, mistakes_));
        auto const order = hookup_order(bank_, partial_);
        largest_gap_ = order.largest_gap;
        now_ = partial_.read(made_);
        auto const& sequence = order.sequence;
        std::vector<std::size_t> plugs;
        auto& last = last_;
        for (std::size_t s = 0; s < sequence.size(); ++s) {
            auto const phase = order.phase[sequence[s]];
            if (phase >= HookupPhase::string_jumper) check_dead();
            if (phase == HookupPhase::plug)
                plugs.push_back(sequence[s]);
            else if (phase == HookupPhase::last_device)
                last.push_back(sequence[s]);
            else
                make(sequence[s]);
        }
        check_dead();
        push_in(plugs, last);
        for (auto const c : last)
            make(c);
        take_apart();
        result_.left_open = drawn_open();
        result_.largest_gap = largest_gap_ * si::volt;
        result_.proven = order.proven;
        result_.states = order.states;
        return std::move(result_);
    }

private:
    void check_dead() {
        if (std::exchange(checked_, true)) return;
        result_.dead = dead_checks(bank_, partial_, probes_, now_, partial_.read(made_, conducting_));
    }

    // Every plug is read before it goes in, and goes in with the breakers open: those that the first plugs make live
    // are read in the next round.
    void push_in(std::vector<std::size_t> plugs, std::vector<std::size_t> const& last) {
        if (!last.empty()) // live now, it is fed past the breaker
            for (auto const c : plugs)
                if (!is_fed(c)) read_plug(c);
        while (!plugs.empty()) {
            auto const count = result_.steps.size();
            auto const shown = shown_;
            for (auto const c : last)
                make(c);
            std::vector<std::size_t> live, later;
            for (auto const c : plugs)
                (is_fed(c) ? live : later).push_back(c);
            if (live.empty()) { // nothing ever comes there: nothing to read
                result_.steps.resize(count);
                shown_ = shown;
                stand(without(last));
                live.swap(later);
            } else {
                for (auto const c : live)
                    read_plug(c);
                for (auto c = last.rbegin(); c != last.rend(); ++c)
                    open(*c);
            }
            for (auto const c : live)
                make(c);
            plugs = std::move(later);
        }
    }

    bool is_fed(std::size_t c) const {
        auto const pins = probes_.gap(partial_.connections()[c], now_);
        return now_.between(pins.first, pins.second).has_value();
    }

    void read_plug(std::size_t c) {
        auto const& connection = partial_.connections()[c];
        auto const pins = probes_.gap(connection, now_);
        HookupStep step;
        step.action = HookupAction::read;
        step.part = connection.part;
        step.places = places(connection);
        step.after = sound(made_, now_, pins);
        if (step.after) show(*step.after, {});
        result_.steps.push_back(std::move(step));
    }

    void open(std::size_t c) {
        HookupStep step;
        step.action = HookupAction::open;
        step.part = partial_.connections()[c].part;
        step.places = places(partial_.connections()[c]);
        stand(without({c}));
        result_.steps.push_back(std::move(step));
    }

    void make(std::size_t c) {
        auto const& connection = partial_.connections()[c];
        HookupStep step;
        step.part = connection.part;
        step.action = action(connection.kind);
        step.dead = !probes_.is_live(connection, now_);
        bool const is_plug = connection.kind == PartKind::connector;
        bool const closer = step.action == HookupAction::close;
        step.places = places(connection);
        if (connection.paths.size() == 1) {
            auto const ends = probes_.ends(connection, now_);
            step.first = name(ends.first);
            step.last = name(ends.second);
            step.places = probes_.places_of_work(ends);
        }
        auto const gap = probes_.gap(connection, now_);
        if (!step.dead) {
            step.before = is_plug ? std::nullopt : across_gap(made_, now_, connection, step.first, step.last, gap);
            if (step.before)
                show(*step.before, gap_mistakes(c, *step.before, gap));
            else if (step.action == HookupAction::land)
                step.before = across_load(c);
            step.equalizing = equalizing(bank_, partial_, meter_, made_, now_, c);
            if (auto const closed = closing_gap(connection, now_)) largest_gap_ = std::max(largest_gap_, *closed);
        }
        auto const fed = feeds();
        auto const before = now_;
        stand(with(c));
        step.live_make = !closer && feeds() > fed;
        if (!step.dead && !(is_plug && !step.live_make && !step.equalizing)) {
            auto const at = probes_.across(connection, before, now_);
            if (!waits_for_its_plug(at)) step.after = sound(made_, now_, at); // else it is read next
            if (step.after) show(*step.after, {});
        }
        result_.steps.push_back(std::move(step));
        if (std::find(net_.begin(), net_.end(), c) == net_.end()) net_.push_back(c);
    }

    bool waits_for_its_plug(Probes const& pins) const {
        for (std::size_t c = 0; c < made_.size(); ++c) {
            auto const& connection = partial_.connections()[c];
            if (connection.kind == PartKind::connector && !made_[c] && probes_.gap(connection, now_) == pins)
                return true;
        }
        return false;
    }

    std::vector<std::string> places(Connection const& connection) const {
        return {probes_.place(connection.paths.front().from)};
    }

    // What draws and has a closed path to a battery.
    int feeds() const {
        int count = 0;
        for (auto const& [plus, minus] : drawing_)
            if (auto const volts = now_.between(plus, minus)) count += std::abs(*volts) > 0.0;
        return count;
    }

    // Backwards: breakers, plugs, the other switches, the negative lead, and fuses when all is dead.
    void take_apart() {
        std::stable_sort(net_.begin(), net_.end(), [&](auto a, auto b) { return rank(a) < rank(b); });
        auto made = made_;
        auto now = partial_.read(made);
        for (auto c = net_.rbegin(); c != net_.rend(); ++c) {
            auto const& connection = partial_.connections()[*c];
            made[*c] = 0;
            auto const earlier = partial_.read(made);
            DisconnectStep undo{action(connection.kind), connection.part, places(connection), {}, {}, {}, {}};
            if (connection.paths.size() == 1) {
                auto const ends = probes_.ends(connection, earlier);
                undo.first = name(ends.second);
                undo.last = name(ends.first);
                undo.places = probes_.places_of_work({ends.second, ends.first});
            }
            auto const live = probes_.is_live(connection, earlier);
            bool const run = undo.undoes == HookupAction::land;
            if (live && run)
                undo.then =
                    across_gap(made, earlier, connection, undo.last, undo.first, probes_.gap(connection, earlier));
            else if (live && connection.kind == PartKind::connector)
                undo.then = sound(made, earlier, probes_.gap(connection, earlier));
            else if (live)
                undo.then = sound(made, earlier, probes_.across(connection, earlier, now));
            if (auto const most = probes_.most_live(earlier)) undo.still_live = sound(made, earlier, *most);
            result_.disconnect.push_back(std::move(undo));
            now = earlier;
        }
    }

    // Plugs come out behind open breakers and switches, whenever these were closed.
    int rank(std::size_t c) const {
        auto const kind = partial_.connections()[c].kind;
        bool const closes_last = std::find(last_.begin(), last_.end(), c) != last_.end();
        return kind == PartKind::connector ? 1 : closes_last ? 2 : 0;
    }

    // None that has its leads in two places, and none that would be another if loads conducted: a load that is off is
    // no open circuit.
    std::optional<MeterReading> sound(Made const& made, Potentials const& now, Probes probes,
                                      bool in_hand = false) const {
        if (!in_hand && !probes_.together(probes.first, probes.second)) return std::nullopt;
        auto const shown = now.between(probes.first, probes.second).value_or(0.0);
        auto const loaded = partial_.read(made, conducting_).between(probes.first, probes.second).value_or(0.0);
        if (std::abs(loaded - shown) > 0.5 * meter_.error(shown)) return std::nullopt;
        return meter_.read(made, now, probes.first, probes.second);
    }

    // The loose end of a conductor that comes from another place is in the hand that lands it.
    std::optional<MeterReading> across_gap(Made const& made, Potentials const& now, Connection const& connection,
                                           std::string const& landed, std::string const& waits, Probes gap) const {
        bool const in_hand = action(connection.kind) == HookupAction::land &&
                             !probes_.together(partial_.node(landed), partial_.node(waits));
        auto reading = sound(made, now, gap, in_hand);
        if (reading && in_hand) {
            reading->loose = landed;
            reading->loose_part = connection.part;
        }
        return reading;
    }

    // Before its last lead goes on: through a load that is off the gap reads this or that, but the load itself nothing.
    std::optional<MeterReading> across_load(std::size_t c) {
        auto const after = partial_.read(with(c));
        for (auto const& [plus, minus] : loads_) {
            if (now_.between(plus, minus) || !after.between(plus, minus)) continue;
            auto reading = sound(made_, now_, {plus, minus});
            if (reading) show(*reading, {});
            return reading;
        }
        return std::nullopt;
    }

    void show(MeterReading& reading, std::vector<Cause> causes) {
        add_hidden(reading, causes);
        reading.wrong = meter_.merged(std::move(causes));
    }

    void stand(Made made) {
        made_ = std::move(made);
        now_ = partial_.read(made_);
        for (auto* stands : {&stand_, &loaded_stand_})
            for (auto& one : *stands)
                one.reset();
        loaded_.reset();
    }

    // As it stands, with every load conducting.
    Potentials const& loaded() {
        if (!loaded_) loaded_ = partial_.read(made_, conducting_);
        return *loaded_;
    }

    // What a mistake makes the meter read, by whether the loads that are off conduct: it is told only where it shows
    // either way.
    std::optional<Cause> told(Mistake const& mistake, MeterReading const& right, std::optional<double> reads,
                              std::optional<double> loaded) const {
        if (!meter_.tells(right, reads) || !meter_.tells(right, loaded)) return std::nullopt;
        Cause cause{mistake, in_volts(reads), {}, false};
        auto const a = reads.value_or(0.0), b = loaded.value_or(0.0);
        cause.depends_on_load = std::abs(a - b) > meter_.error(a);
        if (cause.depends_on_load) cause.through_load = in_volts(loaded);
        return cause;
    }

    Made without(std::vector<std::size_t> const& these) const {
        auto made = made_;
        for (auto const c : these)
            made[c] = 0;
        return made;
    }

    static HookupAction action(PartKind kind) {
        switch (kind) {
        case PartKind::fuse:
            return HookupAction::fit;
        case PartKind::connector:
            return HookupAction::mate;
        case PartKind::breaker:
        case PartKind::switch_:
        case PartKind::relay:
        case PartKind::selector:
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

    // An end about to be landed in the wrong place shows across the gap that it would close.
    std::vector<Cause> gap_mistakes(std::size_t c, MeterReading const& right, std::pair<int, int> gap) {
        auto const& path = partial_.connections()[c].paths.front();
        bool const turned = right.red != name(gap.first);
        std::vector<Cause> causes;
        auto const across = [&](Potentials const& now, int red, int black) {
            return turned ? now.between(black, red) : now.between(red, black);
        };
        for (std::size_t m = 0; m < mistakes_.size(); ++m) {
            auto const& possible = mistakes_[m];
            if (shown_[m] || possible.connection != static_cast<int>(c)) continue;
            auto const onto = possible.deviation.onto;
            bool const from_end = possible.deviation.from_end;
            auto const red = from_end ? onto : path.from, black = from_end ? path.to : onto;
            auto cause = told(possible.mistake, right, across(now_, red, black), across(loaded(), red, black));
            if (!cause) continue;
            causes.push_back(std::move(*cause));
            shown_[m] = 1;
        }
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
            std::optional<double> reads, loaded;
            if (battery < 0) {
                if (!stand_[m]) stand_[m] = partial_.read(made_, possible.deviation);
                reads = loaded = stand_[m]->between(red, black);
                if (!meter_.tells(right, reads)) continue;
                loaded = with_loads(m).between(red, black);
            } else if (right.expected) { // the network is linear; and another emf closes no path
                auto const b = as_index(battery);
                reads = right.expected->value() + answers.per_volt[b] * (possible.deviation.emf - partial_.emf(b));
                loaded = reads; // an expected reading is one that no load moves
            }
            auto cause = told(possible.mistake, right, reads, loaded);
            if (!cause) continue;
            causes.push_back(std::move(*cause));
            shown_[m] = 1;
        }
    }

    Potentials const& with_loads(std::size_t m) {
        if (!loaded_stand_[m]) {
            auto deviation = mistakes_[m].deviation;
            deviation.leaks = conducting_.leaks;
            loaded_stand_[m] = partial_.read(made_, deviation);
        }
        return *loaded_stand_[m];
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
        for (auto const& relay : bank_.relays)
            add(relay.id, relay.closed && !*relay.closed);
        for (auto const& selector : bank_.selectors)
            add(selector.id, selector.position == SelectorPosition::off);
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
    std::vector<char> shown_;                             // by mistake: a reading has shown it
    std::vector<std::optional<Potentials>> stand_;        // by mistake: the present state with it, if it was asked for
    std::vector<std::optional<Potentials>> loaded_stand_; // the same with every load conducting
    std::optional<Potentials> loaded_;
    std::vector<std::pair<int, int>> loads_;   // + and -
    std::vector<std::pair<int, int>> drawing_; // of them those that draw
    Deviation conducting_;                     // every load, though off
    std::vector<std::size_t> net_, last_;      // what is made in the end, in order; what is closed last
    double largest_gap_ = 0.0;                 // [V]
    bool checked_ = false;
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
