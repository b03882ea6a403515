// Every state of a hook-up, and every state that a mistake would have led to, against nodal analysis in quadruple
// precision on the half-made bank itself: sound examples, and banks at random.
#include "bankwright/analyses/hookup.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/wiring/places.hpp"
#include "support/half_made_bank.hpp"
#include "support/random_bank.hpp"

#include <cmath>
#include <fstream>
#include <iterator>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::support;

namespace {

// Conductances span 1e-4 to 1e3 siemens: seven decades, of which double precision leaves nine.
constexpr double same_volts_to = 1e-9; // [V]
constexpr double no_current = 1e-8;    // [A] what a gap of 1e-11 V would drive through a milliohm

Bank example(std::string const& name) {
    std::ifstream file(std::string(BANKWRIGHT_SOURCE_DIR) + "/data/examples/" + name + ".toml");
    std::string const text{std::istreambuf_iterator<char>(file), {}};
    auto result = read(text);
    REQUIRE(result.findings.empty());
    return result.bank;
}

std::vector<std::string> const sound{"bow-36v",   "ferry-48v-lithium",   "houseboat-12v",
                                     "skiff-24v", "launch-36v-diagonal", "tender-12v"};

void check_same(std::optional<Voltage> const& ours, std::optional<double> const& theirs) {
    REQUIRE(ours.has_value() == theirs.has_value());
    if (ours) CHECK(std::abs(ours->value() - *theirs) < same_volts_to);
}

// Every motor, load and charger conducts as a control's electronics do.
Bank with_paths_through_loads(Bank bank) {
    auto const add = [&](std::string const& plus, std::string const& minus) {
        Run path;
        path.conductor.id = "through-" + plus;
        path.conductor.resistance = 1000.0 * si::ohm;
        path.from = plus;
        path.to = minus;
        bank.cables.push_back(path);
    };
    for (auto const& motor : bank.motors)
        add(motor.id + "+", motor.id + "-");
    for (auto const& load : bank.loads)
        add(load.id + "+", load.id + "-");
    for (auto const& charger : bank.chargers)
        for (int output = 1; output <= charger.outputs.value_or(1); ++output)
            add(charger.id + "." + std::to_string(output) + "+", charger.id + "." + std::to_string(output) + "-");
    return bank;
}

// What one wrong reading is said to come from, made and measured. `own`: the conductor about to be landed, whose
// misplaced end is only a misplaced probe before it is.
void check_cause(Bank const& bank, std::set<std::string> const& made, MeterReading const& right, Cause const& cause,
                 std::string const& own) {
    auto const& mistake = cause.mistake;
    CAPTURE(mistake.part);
    CAPTURE(mistake.at);
    CAPTURE(mistake.onto);
    auto red = right.red, black = right.black;
    auto wrong = half_made(bank, made);
    if (mistake.kind == MistakeKind::end_elsewhere && mistake.part == own)
        (red == mistake.at ? red : black) = mistake.onto;
    else
        make_mistake(wrong, mistake, red, black);
    auto const theirs = solve_densely(wrong).between(red, black);
    check_same(cause.reads, theirs);
    auto const shows = theirs.value_or(0.0); // floating shows as nothing
    auto const is_wrong = [&](double volts) {
        return right.expected ? volts < right.low.value() || volts > right.high.value() : std::abs(volts) > 0.0;
    };
    CHECK(is_wrong(shows));
    // Nor does it rest on a load as an open circuit: with electronics that conduct it is as wrong, and told if another.
    auto const conducts = solve_densely(with_paths_through_loads(wrong)).between(red, black);
    CHECK(is_wrong(conducts.value_or(0.0)));
    if (cause.depends_on_load)
        check_same(cause.through_load, conducts);
    else
        CHECK(std::abs(conducts.value_or(0.0) - shows) <= 0.005 * std::abs(shows) + 0.2); // a meter's own error
}

struct Walk {
    int readings = 0;
    int causes = 0;
    int loops = 0;
};

// `every`: check each cause; else one of every fourth wrong reading.
Walk check_hookup(Bank const& bank, bool every) {
    auto const result = hookup(bank);
    Walk walk;
    std::mt19937 random(1);
    std::set<std::string> made;
    auto const wrongs = [&](MeterReading const& right, std::string const& own) {
        for (auto const& wrong : right.wrong) {
            REQUIRE_FALSE(wrong.causes.empty());
            if (!every && random() % 4 != 0) continue;
            auto const first = every ? 0 : random() % wrong.causes.size();
            for (std::size_t c = first; c < (every ? wrong.causes.size() : first + 1); ++c, ++walk.causes)
                check_cause(bank, made, right, wrong.causes[c], own);
        }
    };
    double equalizing = 0.0; // [A] the most that the loops closed so far drive, together
    bool stale = false;      // copper without a battery waits for the first step that is live
    auto before = solve_densely(half_made(bank, made));
    for (auto const& step : result.steps) {
        CAPTURE(step.part);
        if (step.action == HookupAction::open) {
            REQUIRE(made.erase(step.part) == 1);
            before = solve_densely(half_made(bank, made));
            continue;
        }
        if (step.dead) {
            REQUIRE(made.insert(step.part).second);
            stale = true;
            continue;
        }
        if (std::exchange(stale, false)) before = solve_densely(half_made(bank, made));
        if (step.before) {
            check_same(step.before->expected, before.between(step.before->red, step.before->black));
            wrongs(*step.before, step.part);
            ++walk.readings;
        }
        if (step.action != HookupAction::read) REQUIRE(made.insert(step.part).second); // not made already
        auto after = solve_densely(half_made(bank, made));
        if (step.after) {
            check_same(step.after->expected, after.between(step.after->red, step.after->black));
            wrongs(*step.after, "");
            ++walk.readings;
        }
        if (step.equalizing) {
            ++walk.loops;
            equalizing += step.equalizing->expected.value();
            CHECK(step.equalizing->at_most >= step.equalizing->expected);
            if (auto const amps = after.amperes(step.part))
                CHECK(std::abs(*amps) == doctest::Approx(step.equalizing->expected.value()).epsilon(1e-6));
        }
        CHECK(after.largest_current() <= equalizing * (1.0 + 1e-9) + no_current);
        before = std::move(after);
    }
    CHECK(half_made(bank, made) == bank); // all that the file has closed, and nothing else, is made

    REQUIRE(result.disconnect.size() == made.size());
    for (auto const& step : result.disconnect) {
        CAPTURE(step.part);
        REQUIRE(made.erase(step.part) == 1);
        if (!step.then && !step.still_live) continue;
        auto const now = solve_densely(half_made(bank, made));
        CHECK(now.largest_current() <= equalizing * (1.0 + 1e-9) + no_current);
        for (auto const* right : {&step.then, &step.still_live})
            if (*right) check_same((*right)->expected, now.between((*right)->red, (*right)->black));
    }
    CHECK(made.empty());
    return walk;
}

} // namespace

TEST_CASE("a hook-up of every sound example reads at each step what a dense solver reads, and so does every mistake") {
    for (auto const& name : sound) {
        CAPTURE(name);
        auto const walk = check_hookup(example(name), true);
        CHECK(walk.readings > 5);
        CHECK(walk.causes > 10);
    }
}

TEST_CASE(
    "a hook-up of 200 random banks reads at each step what a dense solver reads, and carries no current that it does "
    "not announce") {
    Walk all;
    int banks = 0;
    for (std::uint64_t seed = 0; banks < 200; ++seed) {
        CAPTURE(seed);
        auto const bank = random_good_bank(seed);
        if (unfit_for_hookup(bank)) continue;                     // its switch would join two taps
        if (bank.batteries.size() > 6 && seed % 8 != 0) continue; // the dense solver's time goes with the cube
        ++banks;
        auto const walk = check_hookup(bank, false);
        all.readings += walk.readings;
        all.causes += walk.causes;
        all.loops += walk.loops;
    }
    CHECK(all.readings > 2000);
    CHECK(all.causes > 1000);
    CHECK(all.loops > 200);
}

// The order of work on random banks, against a bank in which every load conducts (10 ohm: a control's electronics are
// not an open circuit) and the lengths that places come from.
TEST_CASE("work goes dead first, no fuse makes or breaks a circuit, no plug goes in unread, a breaker closes last") {
    int fuses = 0, plugs = 0, closed_last = 0, readings = 0, checks = 0;
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        CAPTURE(seed);
        auto const bank = random_good_bank(seed);
        if (unfit_for_hookup(bank) || bank.batteries.size() > 6) continue;
        auto const places = places_of(bank);
        auto loaded = bank;
        std::set<std::string> paths, made;
        auto const add = [&](std::string const& id) {
            Run path;
            path.conductor.id = "through-" + id;
            path.conductor.resistance = 10.0 * si::ohm;
            path.from = id + "+";
            path.to = id + "-";
            loaded.cables.push_back(path);
            paths.insert(path.conductor.id);
        };
        for (auto const& motor : bank.motors)
            add(motor.id);
        for (auto const& load : bank.loads)
            add(load.id);
        auto const stands = [&](std::set<std::string> all) {
            all.insert(paths.begin(), paths.end());
            return solve_densely(half_made(loaded, all));
        };
        auto const draws = [&](DenseReading const& now) {
            int count = 0;
            for (auto const& path : paths)
                count += std::abs(*now.amperes(path)) > no_current;
            return count;
        };
        auto const same_with_loads = [&](std::optional<MeterReading> const& right, DenseReading const& now) {
            if (!right) return;
            ++readings;
            CAPTURE(right->red);
            CAPTURE(right->black);
            // A load that draws lowers what is read, but next to nothing beside one that is taken as open where it is
            // not.
            auto const volts = right->expected.value_or(Voltage{}).value();
            CHECK(std::abs(now.between(right->red, right->black).value_or(0.0) - volts) < 0.3 + 0.05 * std::abs(volts));
            bool const near = places.at.at(right->red) == places.at.at(right->black);
            CHECK((near || !right->loose.empty())); // both leads in one place, or a loose end in the hand
        };
        auto const result = hookup(bank);
        std::set<std::string> checked, read;
        for (auto const& check : result.dead) {
            ++checks;
            checked.insert({check.part, check.other});
            auto const in_one_place = check.black.empty() || places.at.at(check.red) == places.at.at(check.black);
            CHECK(in_one_place != check.lengthened);
            if (check.kind == DeadCheckKind::apart) {
                auto dead = paths;
                for (auto const& step : result.steps)
                    if (step.dead) dead.insert(step.part);
                CHECK_FALSE(solve_densely(half_made(loaded, dead)).between(check.red, check.black));
            }
        }
        for (auto const* runs : {&bank.jumpers, &bank.cables})
            for (auto const& run : *runs)
                if (places.at.at(run.from) != places.at.at(run.to)) CHECK(checked.count(run.conductor.id) == 1);
        auto before = stands(made);
        bool joined = false;
        for (auto const& step : result.steps) {
            CAPTURE(step.part);
            same_with_loads(step.before, before);
            if (step.action == HookupAction::read) {
                REQUIRE(step.after);
                // With every breaker open nothing is there, else something feeds it past them.
                if (step.after->expected) read.insert(step.part);
            } else if (step.action == HookupAction::open) {
                made.erase(step.part);
            } else {
                made.insert(step.part);
            }
            auto const now = stands(made);
            same_with_loads(step.after, now);
            joined = joined || (step.action == HookupAction::land && !step.dead);
            if (step.action == HookupAction::fit) {
                ++fuses;
                CHECK_FALSE(joined); // all is dead
                CHECK(now.largest_current() < no_current);
            }
            if (step.action == HookupAction::mate) {
                ++plugs;
                CHECK((read.count(step.part) == 1 || step.dead || draws(now) == draws(before)));
                CHECK((draws(now) <= draws(before) || step.live_make));
            }
            if (step.action == HookupAction::land && draws(now) > draws(before)) CHECK(step.live_make);
            before = now;
        }
        if (!bank.breakers.empty() || !bank.switches.empty()) {
            ++closed_last;
            CHECK(result.steps.back().action == HookupAction::close);
        }
        bool opened = false, out = false;
        for (auto const& step : result.disconnect) {
            CAPTURE(step.part);
            auto const was = stands(made);
            made.erase(step.part);
            if (step.undoes == HookupAction::fit) {
                out = true;
                CHECK(was.largest_current() < no_current);
            }
            opened = opened || step.undoes == HookupAction::land;
            if (step.undoes == HookupAction::close) CHECK_FALSE((opened || out)); // before any lead or fuse comes off
            same_with_loads(step.then, stands(made));
        }
    }
    CHECK(fuses > 10);
    CHECK(plugs > 10);
    CHECK(closed_last > 10);
    CHECK(readings > 300);
    CHECK(checks > 50);
    MESSAGE(fuses << " fuses, " << plugs << " plugs, " << readings << " readings, " << checks << " dead checks");
}

// Strings of one battery side by side: every order of the links is walked through the dense solver.
TEST_CASE("no order of the links has a smaller largest gap than the one that is given") {
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        std::mt19937_64 random(seed);
        auto const volts = [&] { return 12.2 + 0.7 * static_cast<double>(random() % 1000) / 1000.0; };
        Bank bank;
        for (auto const* id : {"A", "B", "C", "D"}) {
            Battery battery;
            battery.id = id;
            battery.voltage = 12.0 * si::volt;
            battery.emf = volts() * si::volt;
            battery.resistance = (3.0 + static_cast<double>(random() % 9)) * 1e-3 * si::ohm;
            bank.batteries.push_back(battery);
        }
        std::vector<std::string> ids;
        for (auto const* sign : {"+", "-"})
            for (auto const* pair : {"AB", "BC", "CD"}) {
                Run link;
                link.conductor.id = std::string(pair) + (*sign == '+' ? "p" : "n");
                link.conductor.resistance = 1e-3 * si::ohm;
                link.from = std::string(1, pair[0]) + sign;
                link.to = std::string(1, pair[1]) + sign;
                ids.push_back(link.conductor.id);
                bank.jumpers.push_back(link);
            }
        // Least largest gap from a set of landed links to the end, over all orders.
        std::map<std::set<std::string>, double> known;
        auto const least = [&](auto const& self, std::set<std::string> const& made) -> double {
            if (made.size() == ids.size()) return 0.0;
            if (auto const it = known.find(made); it != known.end()) return it->second;
            auto const now = solve_densely(half_made(bank, made));
            double best = 1e9;
            for (auto const& run : bank.jumpers) {
                if (made.count(run.conductor.id)) continue;
                auto next = made;
                next.insert(run.conductor.id);
                best =
                    std::min(best, std::max(std::abs(now.between(run.from, run.to).value_or(0.0)), self(self, next)));
            }
            return known[made] = best;
        };
        auto const result = hookup(bank);
        CHECK(result.proven);
        CHECK(result.largest_gap.value() == doctest::Approx(least(least, {})).epsilon(1e-9));
    }
}
