// What else tracing is asked: banks that nobody laid out for it, banks on which nothing is wrong, two faults at once.
#include "miswires/good_banks.hpp"
#include "support/random_bank.hpp"
#include "traces/following.hpp"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

using namespace traces;

namespace {

TrueFault pick(std::vector<TrueFault> faults, std::mt19937& random) {
    return std::move(faults[1 + random() % (faults.size() - 1)]); // the first is as described
}

std::vector<Bank> good_banks() {
    std::vector<Bank> banks;
    for (auto const& [series, parallel] : {std::pair(1, 1), {2, 1}, {3, 1}, {1, 2}, {2, 2}})
        banks.push_back(on_a_boat(miswires::BankBuilder({series, parallel, miswires::MainLeads::diagonal}).build()));
    return banks;
}

// TRACE_FAULTS=all tries more.
bool is_thorough() {
    auto const* wanted = std::getenv("TRACE_FAULTS");
    return wanted && std::string(wanted) == "all";
}
int pairs_per_bank() { return is_thorough() ? 40 : 1; }

} // namespace

TEST_CASE("a sound bank with ordinary parts and an ordinary meter is as described") {
    std::mt19937 random(11);
    int made = 0, found = 0;
    for (auto const& bank : good_banks()) {
        FaultTracer tracer(bank);
        for (int boat = 0; boat < (is_thorough() ? 40 : 2); ++boat, ++made)
            found += follow(tracer, as_built(bank, random), {}, 6, random).found;
    }
    std::printf("    sound banks: %d of %d are as described\n", found, made);
    CHECK(found >= 0.95 * made);
}

// Made by another generator: busbars, cross-ties, ideal conductors, several loads, a switch.
TEST_CASE("in banks laid out at random the fault is found") {
    std::mt19937 random(23);
    int made = 0, found = 0;
    for (std::uint64_t seed = 1; seed <= (is_thorough() ? 400u : 12u); ++seed) {
        auto const bank = support::RandomBank(seed, false).make();
        if (bank.batteries.size() > (is_thorough() ? 6u : 4u)) continue;
        FaultTracer tracer(bank);
        auto const fault = pick(TrueFaults(bank, random).all(), random);
        bool const is_found = follow(tracer, as_built(fault.bank, random), {fault}, 6, random).found;
        ++made;
        found += is_found;
        if (!is_found)
            std::printf("    not found: random bank %d, %s %s%s\n", static_cast<int>(seed), fault.kind.c_str(),
                        fault.part.c_str(), fault.detail.c_str());
    }
    std::printf("    banks at random: %d of %d found\n", found, made);
    CHECK(found >= 0.9 * made);
}

// Often one fault hides the other, or alone explains all that can be read: it is mended, and the next trace finds the
// other. Naming one is half of the way, both the whole.
TEST_CASE("of two faults at once one at least is named most often") {
    std::mt19937 random(31);
    int made = 0, both = 0, one = 0;
    for (auto const& bank : good_banks())
        for (int n = 0; n < pairs_per_bank(); ++n, ++made) {
            auto const first = pick(TrueFaults(bank, random).all(), random);
            auto second = pick(TrueFaults(first.bank, random).all(), random);
            while (second.part == first.part)
                second = pick(TrueFaults(first.bank, random).all(), random);
            FaultTracer tracer(bank);
            auto const followed = follow(tracer, as_built(second.bank, random), {first, second}, 10, random);
            both += followed.found;
            one += !followed.found && names_one(followed.result.diagnoses.front(), {first, second});
        }
    std::printf("    two faults at once: of %d, both named in %d, one of them in %d\n", made, both, one);
    CHECK(both + one >= 0.7 * made);
}
