#include "bankwright/devices/protection_trip.hpp"

#include <cmath>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
ProtectiveDevice device(std::string trip_class, double rating) {
    ProtectiveDevice d;
    d.id = "CB";
    d.trip_class = std::move(trip_class);
    d.rating = rating * si::ampere;
    return d;
}
} // namespace

TEST_CASE("a device without a class, or of an unknown one, has no curve") {
    CHECK_FALSE(trip_band(device("unknown", 60), 120.0 * si::ampere));
    auto unnamed = device("ul-489", 60);
    unnamed.trip_class.reset();
    CHECK_FALSE(trip_band(unnamed, 120.0 * si::ampere));
    CHECK_FALSE(let_through(unnamed, 3000.0 * si::ampere));
}

TEST_CASE("class names read back, however they are spelled") {
    for (auto text : trip_class_names)
        CHECK(name(*trip_class_named(text)) == text);
    CHECK(trip_class_named("UL 489") == TripClass::ul_489);
    CHECK(trip_class_named("ISO_8820-3") == TripClass::iso_8820_3);
    CHECK_FALSE(trip_class_named("ul"));
}

TEST_CASE("no device opens later at a higher current") {
    for (auto text : trip_class_names)
        for (double rating : {20.0, 40.0, 60.0, 120.0, 300.0}) {
            auto const d = device(std::string(text), rating);
            auto before = *trip_band(d, 0.5 * *d.rating);
            for (double multiple = 0.6; multiple < 30.0; multiple += 0.1) {
                auto const now = *trip_band(d, multiple * *d.rating);
                CHECK(now.at_most.value() <= before.at_most.value());
                CHECK(now.at_least.value() <= before.at_least.value());
                CHECK(now.at_least.value() <= now.at_most.value());
                before = now;
            }
        }
}

TEST_CASE("between two points it holds as the next one above and has opened as the next one below") {
    auto const band = *trip_band(device("iso-8820-5", 100), 250.0 * si::ampere); // points at 2.0 and 3.5
    CHECK(band.at_least.value() == 0.3);
    CHECK(band.at_most.value() == 15.0);
}

TEST_CASE("a breaker holds its rating for good and promises nothing just above it") {
    auto const at_rating = *trip_band(device("ul-489", 60), 60.0 * si::ampere);
    CHECK(std::isinf(at_rating.at_least.value()));
    auto const above = *trip_band(device("ul-489", 60), 70.0 * si::ampere);
    CHECK(above.at_least.value() == 0.0);
    CHECK(std::isinf(above.at_most.value()));
}

TEST_CASE("let-through is known only where the class has an instantaneous region") {
    CHECK_FALSE(let_through(device("ul-489", 60), 3000.0 * si::ampere));
    CHECK_FALSE(let_through(device("sae-j554", 30), 3000.0 * si::ampere));
    CHECK_FALSE(let_through(device("iec-60898-c", 63), 800.0 * si::ampere)); // below 14 x rating
    auto const bound = let_through(device("iec-60898-c", 63), 1000.0 * si::ampere);
    REQUIRE(bound);
    CHECK(bound->at_most.value() == doctest::Approx(1e6 * 0.1));
    CHECK(bound->source.confidence.find("recalled") == 0);
}

// ISO 8820-5 strip fuses open within 1 s at 6 x their rating (recalled): (6 x 100 A)2 x 1 s, whatever flows beyond.
TEST_CASE("a fuse lets no more heat through the larger the current is") {
    for (double amperes : {600.0, 2000.0, 9000.0}) {
        auto const bound = let_through(device("iso-8820-5", 100), amperes * si::ampere);
        REQUIRE(bound);
        CHECK(bound->at_most.value() == doctest::Approx(3.6e5));
    }
    CHECK_FALSE(let_through(device("iso-8820-5", 100), 599.0 * si::ampere));
}

// ISO 8820-3 (recalled): the large blade, type E, is slow; a medium of 40 A takes 0.15 s at six times.
TEST_CASE("a blade fuse is as slow as its body, and without a letter as the body its rating is sold in") {
    auto const latest = [](char const* trip_class, double rating, double multiple) {
        return trip_band(device(trip_class, rating), multiple * rating * si::ampere)->at_most.value();
    };
    CHECK(latest("iso-8820-3-e", 60, 2.0) == 50.0);
    CHECK(latest("iso-8820-3-e", 60, 3.5) == 7.0);
    CHECK(latest("iso-8820-3-e", 60, 6.0) == 1.0);
    CHECK(latest("iso-8820-3-c", 40, 6.0) == 0.15);
    CHECK(latest("iso-8820-3-f", 30, 6.0) == 0.1);
    CHECK(latest("iso-8820-3", 30, 2.0) == 5.0);
    CHECK(latest("iso-8820-3", 60, 2.0) == 50.0);
}

TEST_CASE("a band of the device's own wins over its class") {
    auto own = device("ul-489", 60);
    own.trips = {{2.0, 10.0 * si::second, 60.0 * si::second}, {6.0, 0.0 * si::second, 0.5 * si::second}};
    auto const band = *trip_band(own, 120.0 * si::ampere);
    CHECK(band.at_least.value() == 10.0);
    CHECK(band.at_most.value() == 60.0);
    CHECK(band.source.confidence == "stated");
    CHECK(has_trip_band(own));
    CHECK(let_through(own, 600.0 * si::ampere)->at_most.value() == doctest::Approx(600.0 * 600.0 * 0.5));
    own.trip_class.reset();
    CHECK(has_trip_band(own));
    own.trips.reset();
    CHECK_FALSE(has_trip_band(own));
}
