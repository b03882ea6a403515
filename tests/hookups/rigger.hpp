// A rigger who follows the sheet, has made one mistake, and reads what is asked for with a meter that errs. He knows
// the bank as it stands and the solver, and nothing of the judge.
//
// His mistake is one of belief: where an end is about to be landed on the wrong post, the probes go across that gap; a
// reading between named terminals is taken on the terminals of that name.
#pragma once

#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/half_made_bank.hpp"
#include "traces/true_faults.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace hookups {

using namespace bankwright;

// 0.5 % + 2 digits of a 2000-count meter: 10 mV below 20 V, 100 mV above. What it shows is within its limit.
inline double shown_volts(double volts, std::mt19937& random) {
    double const digit = std::abs(volts) < 19.9 ? 0.01 : 0.1;
    double const limit = 0.005 * std::abs(volts) + 2 * digit;
    double const off = std::uniform_real_distribution<double>(-limit + 0.5 * digit, limit - 0.5 * digit)(random);
    return std::round((volts + off) / digit) * digit;
}

// No battery and no conductor is quite as described: between 70 % and 100 % charged, each within 3 % of its neighbors.
inline Bank as_built(Bank bank, std::mt19937& random) {
    std::normal_distribution<double> normal;
    double const charge = traces::between(random, 0.73, 0.97);
    for (auto& battery : bank.batteries) {
        battery.charge = StateOfCharge::of(charge + traces::between(random, -0.03, 0.03));
        battery.resistance = internal_resistance(battery, bank.system.ambient) * std::exp(0.15 * normal(random));
    }
    for (auto runs : {&Bank::jumpers, &Bank::cables})
        for (auto& run : bank.*runs)
            run.conductor.resistance =
                resistance(run.conductor, bank.system.ambient, bank.system.joint) * std::exp(0.15 * normal(random));
    return bank;
}

class Rigger {
public:
    // `wired`: the whole bank as it will have been wired, with the mistake in it. Loads that are off conduct or do not.
    Rigger(Bank const& good, Bank const& wired, bool loads_conduct, std::mt19937& random)
        : good_(good), wired_(wired), built_(as_built(wired, random)), loads_conduct_(loads_conduct), random_(random) {}

    void make(HookupStep const& step) {
        if (step.action == HookupAction::open)
            made_.erase(step.part);
        else if (step.action != HookupAction::read)
            made_.insert(step.part);
    }

    LogEntry answer(HookupQuestion const& question, HookupResult const& sheet) {
        LogEntry entry{question.when, question.part, {}, {}, {}, {}};
        if (question.when == LogWhen::done) return entry;
        if (auto const* right = right_reading(question, sheet)) {
            auto red = right->red, black = right->black;
            if (question.when == LogWhen::before) probe_gap(question.part, red, black);
            entry.reads = volts(red, black);
        } else if (question.when == LogWhen::hull) {
            entry.reads = NoPath{};
        } else {
            entry.reads = ohms(sheet.dead[question.index]);
        }
        return entry;
    }

    LogEntry further(ProbeAsked const& asked) {
        LogEntry entry{LogWhen::also, {}, asked.red, asked.black, {}, {}};
        entry.reads = asked.is_ohms ? continuity(asked.red, asked.black, {}) : volts(asked.red, asked.black);
        return entry;
    }

    // [A] that flows in any battery by the mistake alone: with batteries that are all as described.
    double largest_current() const {
        auto const bank = support::half_made(wired_, landed());
        auto const network = build(bank, at_rest());
        auto const solution = solver::solve(network.circuit);
        double largest = 0.0;
        for (auto const& battery : bank.batteries)
            if (auto const& element = part_of(network, battery.id).elements.front(); element.is == Element::Is::branch)
                largest = std::max(largest, std::abs(solution.branch_amps[static_cast<std::size_t>(element.index)]));
        return largest;
    }

    // Is there a pair of terminals in one place, or a gap about to be closed, on which a voltmeter reads otherwise than
    // on the sound bank, whether loads that are off conduct or not?
    bool shows(std::string const& pending) const {
        auto const names = terminals_of(good_);
        auto const made = landed();
        using Readings = std::vector<double>;
        auto const of = [&](Bank const& bank, bool conducts) {
            auto network = build(support::half_made(bank, made), at_rest());
            if (conducts) let_loads_conduct(network);
            auto const solution = solver::solve(network.circuit);
            std::pair<Readings, std::vector<int>> read{{}, solution.island};
            for (auto const& name : names)
                read.first.push_back(solution.volts[static_cast<std::size_t>(node_of(network, name))]);
            std::vector<int> island;
            for (auto const& name : names)
                island.push_back(solution.island[static_cast<std::size_t>(node_of(network, name))]);
            read.second = island;
            return read;
        };
        auto const sound = std::pair{of(good_, false), of(good_, true)};
        auto const wrong = std::pair{of(wired_, false), of(wired_, true)};
        auto const between = [](auto const& read, std::size_t a, std::size_t b) {
            return read.second[a] == read.second[b] ? read.first[a] - read.first[b] : 0.0;
        };
        auto const differs = [&](std::size_t a, std::size_t b, std::size_t c, std::size_t d) {
            double const s = between(sound.first, a, b), t = between(sound.second, a, b);
            double const w = between(wrong.first, c, d), x = between(wrong.second, c, d);
            double const gap = std::max(std::min(w, x) - std::max(s, t), std::min(s, t) - std::max(w, x));
            return gap > 1.0;
        };
        for (std::size_t a = 0; a < names.size(); ++a)
            for (std::size_t b = a + 1; b < names.size(); ++b)
                if (traces::is_on_the_bow(names[a]) == traces::is_on_the_bow(names[b]) && differs(a, b, a, b))
                    return true;
        auto const *drawn = run_of(good_, pending), *real = run_of(wired_, pending);
        auto const number = [&](std::string const& name) {
            return static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
        };
        return drawn && real && differs(number(drawn->from), number(drawn->to), number(real->from), number(real->to));
    }

private:
    static Moment at_rest() {
        Moment moment;
        moment.loads = LoadsAre::at_rest;
        moment.chargers = false;
        return moment;
    }

    // What nobody drew lies there from the first; a twin goes on with its sister.
    std::set<std::string> landed() const {
        auto all = made_;
        miswires::for_each_conductor(const_cast<Bank&>(wired_), [&](Run const& run) {
            auto const& id = run.conductor.id;
            bool const is_drawn = run_of(good_, id) != nullptr;
            bool const is_twin = id.size() > 5 && id.ends_with("-twin");
            if (!is_drawn && (!is_twin || made_.count(id.substr(0, id.size() - 5)) > 0)) all.insert(id);
        });
        return all;
    }

    static Run const* run_of(Bank const& bank, std::string const& id) {
        for (auto const* runs : {&bank.jumpers, &bank.cables})
            for (auto const& run : *runs)
                if (run.conductor.id == id) return &run;
        return nullptr;
    }

    void let_loads_conduct(Network& network) const {
        auto const conducts = [&](std::string const& plus, std::string const& minus) {
            network.circuit.branches.push_back({node_of(network, plus), node_of(network, minus), 2e3, 0.0});
        };
        for (auto const& motor : good_.motors)
            conducts(motor.id + "+", motor.id + "-");
        for (auto const& load : good_.loads)
            conducts(load.id + "+", load.id + "-");
        for (auto const& charger : good_.chargers)
            conducts(charger.id + ".1+", charger.id + ".1-");
    }

    void probe_gap(std::string const& part, std::string& red, std::string& black) const {
        auto const *drawn = run_of(good_, part), *real = run_of(wired_, part);
        auto const is_end = [&](std::string const& at) { return at == drawn->from || at == drawn->to; };
        if (!drawn || !real || !is_end(red) || !is_end(black)) return;
        for (auto* probe : {&red, &black})
            *probe = *probe == drawn->from ? real->from : *probe == drawn->to ? real->to : *probe;
    }

    Voltage volts(std::string const& red, std::string const& black) {
        auto network = build(support::half_made(built_, landed()), at_rest());
        if (loads_conduct_) let_loads_conduct(network);
        auto const solution = solver::solve(network.circuit);
        auto const a = static_cast<std::size_t>(node_of(network, red)),
                   b = static_cast<std::size_t>(node_of(network, black));
        bool const joined = solution.island[a] == solution.island[b];
        return shown_volts(joined ? solution.volts[a] - solution.volts[b] : 0.0, random_) * si::volt;
    }

    // A few points of an ohm where copper joins the two, else no continuity; through a battery or a load none.
    Shown continuity(std::string const& red, std::string const& black, std::vector<Run> const& in_hand) {
        auto bank = support::half_made(built_, landed());
        bank.cables.insert(bank.cables.end(), in_hand.begin(), in_hand.end());
        std::map<std::string, std::string> up;
        std::function<std::string(std::string)> const top = [&](std::string const& at) {
            auto const found = up.find(at);
            return found == up.end() ? at : top(found->second);
        };
        auto const join = [&](std::string const& a, std::string const& b) {
            if (top(a) != top(b)) up[top(a)] = top(b);
        };
        miswires::for_each_conductor(bank, [&](Run const& run) { join(run.from, run.to); });
        for (auto const* devices : {&bank.breakers, &bank.fuses})
            for (auto const& device : *devices)
                if (device.closed.value_or(true)) join(device.id + ".line", device.id + ".load");
        for (auto const& connector : bank.connectors)
            if (connector.mated.value_or(true)) {
                join(connector.id + "+", connector.id + ".plug+");
                join(connector.id + "-", connector.id + ".plug-");
            }
        if (top(red) != top(black)) return NoPath{};
        return std::uniform_real_distribution<double>(0.1, 0.6)(random_) * si::ohm;
    }

    Shown ohms(DeadCheck const& check) {
        std::vector<Run> in_hand;
        if (check.kind == DeadCheckKind::loop) {
            for (auto const* part : {&check.part, &check.other})
                if (run_of(wired_, *part) && made_.count(*part) == 0) in_hand.push_back(*run_of(good_, *part));
            Run clip;
            clip.conductor.id = "clip";
            clip.from = check.clip;
            clip.to = check.onto;
            in_hand.push_back(clip);
        }
        return continuity(check.red, check.black, in_hand);
    }

    Bank const& good_;
    Bank const& wired_;
    Bank built_; // no battery and no conductor quite as described
    bool loads_conduct_;
    std::mt19937& random_;
    std::set<std::string> made_;
};

struct Outcome {
    bool stopped = false, flowed = false;
    bool shown = false; // some voltmeter could have seen it before it flowed
    int further = 0;    // readings to find the cause
    std::string at;     // the question that stopped
    HookupJudgment last;
};

// To the end of the sheet, or to the end of the search.
inline Outcome hook_up(HookupJudge const& judge, Rigger& rigger, int most_further) {
    constexpr double flows = 1.0; // [A]
    Outcome outcome;
    std::vector<LogEntry> entries;
    auto const& questions = judge.questions();
    std::optional<std::size_t> reached;
    for (;;) {
        outcome.last = judge.judge(entries);
        auto const& now = outcome.last;
        if (now.state == HookupState::complete) return outcome;
        if (now.state == HookupState::stopped) {
            auto const& question = questions[*now.at];
            outcome.at = question.part + " " + std::string(name(question.when));
            outcome.stopped = true;
            if (now.again) {
                entries.push_back(rigger.answer(question, judge.sheet()));
                continue;
            }
            if (!now.found || !now.found->next || outcome.further == most_further) return outcome;
            ++outcome.further;
            entries.push_back(rigger.further(*now.found->next));
            continue;
        }
        auto const& question = questions[*now.at];
        if (!outcome.flowed && !outcome.shown)
            outcome.shown = rigger.shows(question.when == LogWhen::before ? question.part : std::string());
        if ((question.when == LogWhen::after || question.when == LogWhen::done) && reached != now.at) {
            rigger.make(judge.sheet().steps[question.index]);
            reached = now.at;
            outcome.flowed = outcome.flowed || rigger.largest_current() > flows;
        }
        entries.push_back(rigger.answer(question, judge.sheet()));
    }
}

} // namespace hookups
