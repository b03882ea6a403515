// Two mistakes in one bank: whatever changes the circuit is found, and what is electrically a good bank is not accused.
#include "miswires/proof.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <map>
#include <memory>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

using namespace miswires;

namespace {

struct Drawn {
    explicit Drawn(Shape const& shape) : good(shape) {
        for (auto& miswire : MiswireMaker(good.bank).all())
            kinds[miswire.kind].push_back(std::move(miswire));
    }
    // Of each kind of mistake equally often: most of all single ones are ends on other posts.
    Miswire const& miswire(std::mt19937& random) const {
        auto kind = kinds.begin();
        std::advance(kind, random() % kinds.size());
        return kind->second[random() % kind->second.size()];
    }
    Good good;
    std::map<std::string, std::vector<Miswire>> kinds;
};

} // namespace

TEST_CASE("of two miswires at once everything that changes the circuit is found, and nothing else") {
    // MISWIRE_DOUBLES=20000 is the whole proof; the first so many of the same sample are the default.
    auto const* asked = std::getenv("MISWIRE_DOUBLES");
    auto const wanted = asked ? std::atoi(asked) : 2000;
    std::mt19937 random(20260427);
    auto const shapes = all_shapes();
    std::map<std::size_t, std::unique_ptr<Drawn>> banks;
    Table table(false);
    int shown = 0;
    for (int n = 0; n < wanted; ++n) {
        auto const chosen = random() % shapes.size();
        auto& drawn = banks[chosen];
        if (!drawn) drawn = std::make_unique<Drawn>(shapes[chosen]);
        auto const& first = drawn->miswire(random);
        auto const& second = drawn->miswire(random);
        auto const judged = judge(drawn->good, with(with(drawn->good.bank, first), second));
        auto const [a, b] = std::minmax(first.kind, second.kind);
        table.count(a + ", " + b, judged, false);
        if (judged.right() || shown++ >= 40) continue;
        std::printf("%s %s: %s; %s: %s\n", judged.same ? "FALSE" : "MISSED", drawn->good.title.c_str(),
                    first.what.c_str(), second.what.c_str(), first_of(judged.found).c_str());
    }
    table.print("double miswires");
    CHECK(table.total.made == wanted);
    CHECK(table.total.missed == 0);
    CHECK(table.total.false_alarms == 0);
}
