// Physics that holds for every bank, right or wrong: Kirchhoff, power balance, reciprocity, scaling, and that names and
// order are only names and order. All from what operating_point() reports and what the bank says; nothing of the
// network is asked.
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/terminals.hpp"
#include "support/jon_boat.hpp"
#include "support/random_bank.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <numeric>
#include <random>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

constexpr std::uint64_t seeds = 300; // of each kind
// Resistances of these banks span 0.1 milliohm to 100 ohm, 1e6 to one; with 1e-16 of rounding that leaves 1e-10.
constexpr double tolerance = 1e-10; // of the largest current, voltage or power in the bank

// Calls check(bank, point) for banks that have an operating point: every good one, and most of the weird.
template <class Check>
void for_random_banks(Check&& check) {
    int solved = 0;
    for (std::uint64_t seed = 0; seed < 2 * seeds; ++seed) {
        bool const weird = seed >= seeds;
        CAPTURE(seed);
        auto const bank = weird ? support::random_weird_bank(seed) : support::random_good_bank(seed);
        auto const point = operating_point(bank);
        if (!weird) REQUIRE(point.status == solver::Status::solved);
        REQUIRE((point.status == solver::Status::solved || point.status == solver::Status::no_operating_point));
        if (point.status != solver::Status::solved) continue;
        ++solved;
        check(bank, point);
    }
    CHECK(solved >= static_cast<int>(2 * seeds * 9 / 10));
}

double largest_current(OperatingPoint const& point) {
    double largest = 0.0;
    for (auto const& part : point.parts)
        largest = std::max(largest, std::abs(part.current.value()));
    return largest;
}

double largest_voltage(OperatingPoint const& point) {
    double largest = 0.0;
    for (auto const& part : point.parts)
        if (!std::isnan(part.voltage.value())) largest = std::max(largest, std::abs(part.voltage.value()));
    return largest;
}

// Currents and voltages are the same, part by part, up to a factor on the voltages.
void check_same_parts(OperatingPoint const& a, OperatingPoint const& b, double volts_factor = 1.0) {
    REQUIRE(b.status == solver::Status::solved);
    REQUIRE(a.parts.size() == b.parts.size());
    double const amperes = tolerance * (1.0 + largest_current(a));
    double const volts = tolerance * (1.0 + largest_voltage(a));
    for (auto const& part : a.parts) {
        CAPTURE(part.id);
        auto const& other = reading_of(b, part.id);
        CHECK(std::abs(other.current.value() - part.current.value()) <= amperes);
        CHECK(std::isnan(other.voltage.value()) == std::isnan(part.voltage.value()));
        if (!std::isnan(part.voltage.value()))
            CHECK(std::abs(other.voltage.value() / volts_factor - part.voltage.value()) <= volts);
    }
}

std::string& id_in(Run& run) { return run.conductor.id; }
template <class Part>
std::string& id_in(Part& part) {
    return part.id;
}

// [A] into each terminal from everything that ends there. A connector reports its positive pole alone, so its two
// negative contacts count as one terminal.
std::map<std::string, double> currents_into_terminals(Bank const& bank, OperatingPoint const& point) {
    std::map<std::string, double> into;
    for (auto const& name : terminals_of(bank))
        into[name] = 0.0;
    auto const through = [&](std::string const& id, std::string const& from, std::string const& to) {
        double const current = reading_of(point, id).current.value();
        into.at(from) -= current;
        into.at(to) += current;
    };
    for (auto const& b : bank.batteries)
        through(b.id, b.id + "-", b.id + "+");
    for (auto const& run : bank.jumpers)
        through(id_of(run), run.from, run.to);
    for (auto const& run : bank.cables)
        through(id_of(run), run.from, run.to);
    for (auto const& d : bank.breakers)
        through(d.id, d.id + ".line", d.id + ".load");
    for (auto const& d : bank.fuses)
        through(d.id, d.id + ".line", d.id + ".load");
    for (auto const& s : bank.switches)
        through(s.id, s.id + ".1", s.id + ".2");
    for (auto const& s : bank.shunts)
        through(s.id, s.id + ".1", s.id + ".2");
    for (auto const& r : bank.relays)
        through(r.id, r.id + ".1", r.id + ".2");
    for (auto const& s : bank.selectors) { // its reading is what the common carries
        through(s.id, s.id + ".1", s.id + ".common");
        into.at(s.id + ".1") += into.at(s.id + ".2");
        into.erase(s.id + ".2");
    }
    for (auto const& m : bank.motors)
        through(m.id, m.id + "+", m.id + "-");
    for (auto const& l : bank.loads)
        through(l.id, l.id + "+", l.id + "-");
    for (auto const& c : bank.connectors) {
        through(c.id, c.id + "+", c.id + ".plug+");
        if (!c.mated.value_or(true)) continue;
        into.at(c.id + "-") += into.at(c.id + ".plug-");
        into.erase(c.id + ".plug-");
    }
    return into;
}

} // namespace

TEST_CASE("what flows into a terminal flows out of it") {
    for_random_banks([](Bank const& bank, OperatingPoint const& point) {
        double const allowed = tolerance * (1.0 + largest_current(point));
        for (auto const& into : currents_into_terminals(bank, point)) {
            CAPTURE(into.first);
            CHECK(std::abs(into.second) <= allowed);
        }
        CHECK(point.residual.value() <= allowed);
    });
}

TEST_CASE("what the batteries deliver is what everything else takes") {
    for_random_banks([](Bank const&, OperatingPoint const& point) {
        double delivered = 0.0;
        double taken = 0.0;
        double size = 1.0;
        for (auto const& part : point.parts) {
            (part.kind == PartKind::battery ? delivered : taken) += part.power.value();
            size += std::abs(part.power.value());
        }
        CHECK(std::abs(delivered - taken) <= tolerance * size);
        CHECK(std::abs(point.imbalance.value()) <= tolerance * size);
    });
}

TEST_CASE("terminal voltages and part voltages are the same voltages") {
    for_random_banks([](Bank const& bank, OperatingPoint const& point) {
        CHECK(voltage_at(point, point.reference).value().value() == 0.0);
        auto const drop = [&](std::string const& from, std::string const& to, Voltage reading) {
            auto const a = voltage_at(point, from);
            auto const b = voltage_at(point, to);
            if (a && b) CHECK(a->value() - b->value() == doctest::Approx(reading.value()).epsilon(1e-14).scale(100.0));
            if (a.has_value() != b.has_value()) CHECK(std::isnan(reading.value()));
        };
        for (auto const& b : bank.batteries)
            drop(b.id + "+", b.id + "-", reading_of(point, b.id).voltage);
        for (auto const& run : bank.cables)
            drop(run.from, run.to, reading_of(point, id_of(run)).voltage);
        for (auto const& d : bank.breakers)
            drop(d.id + ".line", d.id + ".load", reading_of(point, d.id).voltage);
        for (auto const& m : bank.motors)
            drop(m.id + "+", m.id + "-", reading_of(point, m.id).voltage);
    });
}

TEST_CASE("every conductor obeys Ohm and every battery its own resistance") {
    for_random_banks([](Bank const& bank, OperatingPoint const& point) {
        double const volts = tolerance * (1.0 + largest_voltage(point));
        for (auto const& run : bank.jumpers) {
            if (!run.conductor.resistance) continue;
            auto const& reading = reading_of(point, id_of(run));
            Voltage const ohm = reading.current * *run.conductor.resistance;
            if (!std::isnan(reading.voltage.value())) CHECK(std::abs((reading.voltage - ohm).value()) <= volts);
        }
        for (auto const& b : bank.batteries) {
            auto const& reading = reading_of(point, b.id);
            CHECK(std::abs((reading.voltage + reading.current * *b.resistance - *b.emf).value()) <= volts);
        }
    });
}

TEST_CASE("other names give the same numbers to the last bit") {
    for_random_banks([](Bank const& bank, OperatingPoint const& point) {
        // A new id for every part; a terminal is its part's id and what follows it.
        std::map<std::string, std::string> renamed;
        auto other = bank;
        for_each_part(other, [&](PartKind, auto& part) {
            auto const id = "q" + std::to_string(997 - renamed.size());
            std::string const old = id_of(part);
            auto const before = terminals_of(part);
            for (auto const& terminal : before)
                renamed[terminal] = id + terminal.substr(old.size());
            renamed[old] = id;
            id_in(part) = id;
        });
        for (auto* section : {&other.jumpers, &other.cables})
            for (auto& run : *section) {
                run.from = renamed.at(run.from);
                run.to = renamed.at(run.to);
            }
        auto const again = operating_point(other);
        CHECK(again.reference == renamed.at(point.reference));
        REQUIRE(again.parts.size() == point.parts.size());
        for (std::size_t i = 0; i < point.parts.size(); ++i) {
            CHECK(again.parts[i].id == renamed.at(point.parts[i].id));
            CHECK(again.parts[i].current == point.parts[i].current);
        }
        for (std::size_t i = 0; i < point.terminals.size(); ++i)
            CHECK(again.terminals[i].voltage == point.terminals[i].voltage);
    });
}

TEST_CASE("the order in which parts are written changes no current and no drop") {
    std::mt19937_64 engine(20240607);
    for_random_banks([&](Bank const& bank, OperatingPoint const& point) {
        auto other = bank;
        std::shuffle(other.batteries.begin(), other.batteries.end(), engine);
        std::shuffle(other.jumpers.begin(), other.jumpers.end(), engine);
        std::shuffle(other.cables.begin(), other.cables.end(), engine);
        std::shuffle(other.fuses.begin(), other.fuses.end(), engine);
        std::shuffle(other.loads.begin(), other.loads.end(), engine);
        std::reverse(other.busbars.begin(), other.busbars.end());
        check_same_parts(point, operating_point(other));
    });
}

TEST_CASE("a conductor written from its other end reads the other sign") {
    for_random_banks([](Bank const& bank, OperatingPoint const& point) {
        auto other = bank;
        auto& turned = other.cables.front();
        std::swap(turned.from, turned.to);
        auto again = operating_point(other);
        for (auto& part : again.parts)
            if (part.id == id_of(turned)) {
                part.current = -part.current;
                part.voltage = -part.voltage;
            }
        check_same_parts(point, again);
    });
}

TEST_CASE("three times the voltages across three times the resistances are the same currents") {
    double const k = 3.0;
    for_random_banks([&](Bank const& bank, OperatingPoint const& point) {
        auto other = bank;
        auto const scale = [&](auto& quantity) {
            if (quantity) *quantity *= k;
        };
        for (auto& b : other.batteries)
            scale(b.emf), scale(b.resistance), scale(b.voltage);
        for (auto* section : {&other.jumpers, &other.cables})
            for (auto& run : *section)
                scale(run.conductor.resistance), scale(run.conductor.length), scale(run.conductor.joint);
        for (auto* section : {&other.breakers, &other.fuses})
            for (auto& d : *section)
                scale(d.resistance);
        for (auto& s : other.switches)
            scale(s.resistance);
        for (auto& s : other.shunts)
            scale(s.resistance), scale(s.drop);
        for (auto& c : other.connectors)
            scale(c.contact);
        for (auto& m : other.motors)
            scale(m.voltage), scale(m.winding);
        for (auto& l : other.loads)
            scale(l.power), scale(l.resistance);
        check_same_parts(point, operating_point(other), k);
    });
}

TEST_CASE("an ampere drawn here moves the voltage there as an ampere drawn there moves it here") {
    std::mt19937_64 engine(7);
    for (std::uint64_t seed = 0; seed < seeds; ++seed) {
        CAPTURE(seed);
        auto bank = support::random_good_bank(seed);
        bank.motors.clear(); // only what is linear
        bank.cables.erase(std::remove_if(bank.cables.begin(), bank.cables.end(),
                                         [](Run const& run) {
                                             return run.from.rfind("troll", 0) == 0 || run.to.rfind("troll", 0) == 0;
                                         }),
                          bank.cables.end());
        for (auto& load : bank.loads)
            if (load.power) {
                load.power.reset();
                load.current = 1.0 * si::ampere;
            }
        auto const at_rest = operating_point(bank);
        REQUIRE(at_rest.status == solver::Status::solved);
        auto const pick = [&] { return bank.batteries[engine() % bank.batteries.size()].id; };
        auto const here = pick();
        auto const there = pick();
        // The change of `watch`'s voltage by 10 A drawn across `drawn`.
        auto const transfer = [&](std::string const& drawn, std::string const& watch) {
            auto other = bank;
            auto probe = support::named<Load>("probe");
            probe.current = 10.0 * si::ampere;
            other.loads.push_back(probe);
            other.cables.push_back(support::plain_run("probe-p", drawn + "+", "probe+", 0.0));
            other.cables.push_back(support::plain_run("probe-n", "probe-", drawn + "-", 0.0));
            auto const loaded = operating_point(other);
            return (reading_of(loaded, watch).voltage - reading_of(at_rest, watch).voltage).value();
        };
        // 1e-10 of tens of volts, against changes of some ten millivolts
        CHECK(transfer(here, there) == doctest::Approx(transfer(there, here)).epsilon(1e-8).scale(1.0));
    }
}
