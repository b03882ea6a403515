// Readings by an update of the wiring as described are those of the faulty wiring solved afresh.
#include "bankwright/analyses/trace/updated_readings.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/network/build.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

struct Compared {
    int updated = 0, afresh = 0;
    double mean = 0.0, sensitivity = 0.0; // worst difference [V] or [A], of readings that are not beyond any meter
};

using Faults = UpdatedReadings::Faults;

Bank example(std::string const& file) {
    std::ifstream stream(BANKWRIGHT_SOURCE_DIR "/data/examples/" + file, std::ios::binary);
    return read(std::string{std::istreambuf_iterator<char>(stream), {}}).bank;
}

class Comparison {
public:
    explicit Comparison(std::string const& file)
        : bank_(example(file)), network_(build(bank_, at_rest())), drawn_(wiring_of(network_)),
          updated_(drawn_, spread_), singles_(single_faults(bank_, network_, places_of(bank_))) {
        int const nodes = static_cast<int>(network_.terminals.size());
        for (int red = 0; red < nodes; red += 3)
            asked_.push_back({red, (red * 7 + 2) % nodes, {}});
        for (std::size_t e = 0; e < drawn_.elements.size(); e += 4)
            if (drawn_.elements[e].is == Element::Is::branch) asked_.push_back({-1, -1, e});
    }

    void of_each() {
        compare({});
        for (auto const& fault : singles_)
            compare({{&fault, middle(fault)}});
    }
    void of_pairs() {
        for (std::size_t a = 0; a < singles_.size(); a += 5)
            for (std::size_t b = a + 1; b < singles_.size(); b += 17)
                if (singles_[a].element != singles_[b].element)
                    for (auto const& [first, second] : {std::pair(a, b), std::pair(b, a)}) // one after the other
                        compare({{&singles_[first], middle(singles_[first])},
                                 {&singles_[second], middle(singles_[second])}});
    }
    Compared found;

private:
    static Moment at_rest() {
        Moment moment;
        moment.loads = LoadsAre::at_rest;
        return moment;
    }
    static double middle(FaultChange const& fault) {
        return fault.ladder.empty() ? 0.0 : fault.ladder[fault.ladder.size() / 3];
    }

    void compare(Faults const& faults) {
        std::vector<PartDoubt> doubts;
        if (!faults.empty()) doubts.push_back({faults.front().first->element, 0.1, 1e-4});
        for (auto const& one : asked_) { // one by one: a current may lie in the very part that is faulty
            auto const updated = updated_.with(faults, doubts, {one});
            (updated ? found.updated : found.afresh) += 1;
            if (!updated) continue;
            auto wiring = drawn_;
            for (auto const& [fault, value] : faults)
                apply(*fault, value, wiring);
            ExpectedReadings const solved(wiring, spread_, doubts);
            auto const expected =
                one.element ? solved.amps_reading(*one.element) : solved.volts_reading(one.red, one.black);
            auto const& reading = updated->front();
            CAPTURE(faults.size());
            CHECK(reading.own_spread == expected.own_spread);
            REQUIRE(reading.sensitivities.size() == expected.sensitivities.size());
            double const unit = one.element ? 1e4 : 1.0; // a short drives thousands of amperes
            found.mean = std::max(found.mean, std::abs(reading.mean - expected.mean) / unit);
            for (std::size_t e = 0; e < expected.sensitivities.size(); ++e)
                found.sensitivity =
                    std::max(found.sensitivity, std::abs(reading.sensitivities[e] - expected.sensitivities[e]) / unit);
        }
    }

    Bank bank_;
    PartSpread spread_;
    Network network_;
    FaultyWiring drawn_;
    UpdatedReadings updated_;
    std::vector<FaultChange> singles_;
    std::vector<AskedReading> asked_;
};

} // namespace

// In small banks half of all moved ends join islands or let the wiring fall apart, and are left to a solve.
TEST_CASE("every single fault, and many pairs, read by an update as they do solved afresh") {
    for (auto const* file :
         {"bow-36v.toml", "houseboat-12v.toml", "launch-36v-diagonal.toml", "ferry-48v-lithium.toml"}) {
        CAPTURE(file);
        Comparison comparison(file);
        comparison.of_each();
        comparison.of_pairs();
        auto const& found = comparison.found;
        CHECK(found.mean < 1e-9);
        CHECK(found.sensitivity < 3e-5); // what next to nothing moves is left out or not, by a hair
        CHECK(found.updated > 1000);
    }
}
