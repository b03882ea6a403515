#include "bankwright/analyses/main_leads.hpp"
#include "bankwright/units/literals.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <random>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Run link(std::string const& id, std::string const& from, std::string const& to, double ohms) {
    Run run;
    run.conductor.id = id;
    run.conductor.resistance = ohms * si::ohm;
    run.from = from;
    run.to = to;
    return run;
}

// Invented: so many batteries in parallel, each with a resistance and links of its own, and a load landed on the first.
Bank ladder(int strings, std::mt19937& random) {
    std::uniform_real_distribution<double> spread(0.5, 1.5);
    Bank bank;
    for (int s = 0; s < strings; ++s) {
        Battery battery;
        battery.id = "B" + std::to_string(10 + s);
        battery.voltage = 12_V;
        battery.emf = 12.7_V;
        battery.resistance = 4e-3 * spread(random) * si::ohm;
        bank.batteries.push_back(battery);
        if (s == 0) continue;
        auto const before = bank.batteries[static_cast<std::size_t>(s) - 1].id;
        bank.jumpers.push_back(link("p" + battery.id, before + "+", battery.id + "+", 4e-4 * spread(random)));
        bank.jumpers.push_back(link("n" + battery.id, before + "-", battery.id + "-", 4e-4 * spread(random)));
    }
    bank.cables = {link("feed", "B10+", "L+", 2e-3), link("back", "L-", "B10-", 2e-3)};
    Load load;
    load.id = "L";
    load.current = 80_A;
    bank.loads = {load};
    return bank;
}

} // namespace

// Every pair solved, as it is done for few strings: what superposition leaves unsolved is none that is better.
TEST_CASE("of many strings the best landing is that of all pairs") {
    std::mt19937 random(7);
    for (int const strings : {7, 9, 12}) {
        auto const bank = ladder(strings, random);
        WiringGraph const graph = wiring_graph(bank);
        auto const form = arrangement(graph, graph.edges, judge(graph, graph.edges));
        REQUIRE(form.parallel == strings);
        double least = worst_share(bank, graph, form);
        auto trial = bank;
        for (auto const& top : bank.batteries)
            for (auto const& bottom : bank.batteries) {
                trial.cables[0].from = top.id + "+";
                trial.cables[1].to = bottom.id + "-";
                least = std::min(least, worst_share(trial, graph, form));
            }
        auto const best = best_main_leads(bank, graph, form);
        CHECK(best.worst_share == doctest::Approx(least).epsilon(1e-8));
        trial.cables[0].from = best.positive;
        trial.cables[1].to = best.negative;
        CHECK(worst_share(trial, graph, form) == best.worst_share);
    }
}
