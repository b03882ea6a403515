// What lies in one place follows from the lengths of conductors; a word in the file overrules.
#include "bankwright/config/read.hpp"
#include "bankwright/wiring/places.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

// Invented: two batteries and a breaker under the stern deck, a bow motor 18 ft away.
std::string const boat = R"(
bankwright = 1
[batteries]
A = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }
B = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }
[jumpers]
J = { from = "A+", to = "B-", resistance = "0.4 mohm" }
[cables]
feed   = { from = "B+", to = "CB.line", size = "6 AWG", length = "10 in" }
main   = { from = "CB.load", to = "bow+", size = "6 AWG", length = "18 ft" }
return = { from = "bow-", to = "A-", size = "6 AWG", length = "18 ft" }
tail-p = { from = "bow.plug+", to = "troll+", size = "8 AWG", length = "3 ft" }
tail-n = { from = "troll-", to = "bow.plug-", size = "8 AWG", length = "3 ft" }
[breakers]
CB = { rating = "60 A" }
[connectors]
bow = {}
[motors]
troll = { voltage = "24 V", current = "50 A" }
)";

std::string with(std::string text, std::string const& what, std::string const& instead) {
    return text.replace(text.find(what), what.size(), instead);
}

Places of(std::string const& text) {
    auto const result = read(text);
    REQUIRE(result.findings.empty());
    return places_of(result.bank);
}

bool together(Places const& places, std::string const& a, std::string const& b) {
    return places.at.at(a) == places.at.at(b);
}

} // namespace

TEST_CASE("short conductors lie in one place, the ends of a long one in two") {
    auto const places = of(boat);
    CHECK(places.names.size() == 2);
    CHECK(together(places, "A-", "CB.load")); // a jumper without a length is a short one
    CHECK(together(places, "bow-", "troll+"));
    CHECK_FALSE(together(places, "B+", "troll-"));
    CHECK(places.names[0] == "by A");
    CHECK(places.names[1] == "by bow");
}

TEST_CASE("a receptacle and its plug are where they meet, the motor where its leads end") {
    auto text = boat;
    for (int tail = 0; tail < 2; ++tail)
        text = with(text, "\"8 AWG\", length = \"3 ft\"", "\"8 AWG\", length = \"6 ft\"");
    auto const places = of(text);
    CHECK(together(places, "bow+", "bow.plug-"));
    CHECK_FALSE(together(places, "bow.plug+", "troll+"));
    CHECK(places.names.size() == 3);
}

TEST_CASE("a cable without a length is long, unless its size and resistance say how long it is") {
    auto const feed = [](std::string const& instead) {
        return together(of(with(boat, "size = \"6 AWG\", length = \"10 in\"", instead)), "B+", "CB.line");
    };
    CHECK_FALSE(feed("resistance = \"0.5 mohm\""));
    // 13.3 mm2 of copper has 1.3 mohm/m: 0.5 mohm are 0.4 m, 3 mohm are 2.3 m
    CHECK(feed("size = \"6 AWG\", resistance = \"0.5 mohm\""));
    CHECK_FALSE(feed("size = \"6 AWG\", resistance = \"3 mohm\""));
}

TEST_CASE("the key place overrules the lengths") {
    auto const helm = with(boat, "CB = { rating = \"60 A\"", "CB = { rating = \"60 A\", place = \"helm\"");
    CHECK(together(of(helm), "CB.line", "B+")); // one name alone parts nothing that lies together
    CHECK(of(helm).names[0] == "helm");
    auto const named = of(with(helm, "A = {", "A = { place = \"battery box\","));
    CHECK_FALSE(together(named, "CB.line", "B+"));
    CHECK(named.names[static_cast<std::size_t>(named.at.at("B+"))] == "battery box");
    auto const deck = with(boat, "bow = {}", "bow = { place = \"deck\" }");
    CHECK(together(of(with(deck, "A = {", "A = { place = \"deck\",")), "bow-", "A-"));
}

TEST_CASE("a conductor's end comes as far as its length") {
    auto const bank = read(boat).bank;
    auto const places = places_of(bank);
    auto const box = places.at.at("A+"), bow = places.at.at("bow+");
    auto const reach = [&](int from, Run const& run, PartKind kind, int to) {
        return within_reach(places, from, run, kind, bank.system)[static_cast<std::size_t>(to)] != 0;
    };
    CHECK_FALSE(reach(box, bank.jumpers[0], PartKind::jumper, bow));
    CHECK_FALSE(reach(bow, bank.cables[3], PartKind::cable, box)); // a tail of 3 ft
    CHECK(reach(box, bank.cables[1], PartKind::cable, bow));
    CHECK(reach(box, bank.cables[1], PartKind::cable, box));
}
