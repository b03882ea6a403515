#include "bankwright/drawing/layout/lay_out.hpp"
#include "bankwright/drawing/wires/wire_labels.hpp"
#include "miswires/good_banks.hpp"
#include "support/random_bank.hpp"

#include <algorithm>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

// How many found no room.
int check_labels(Bank const& bank) {
    auto const drawing = drawing::lay_out(bank);
    std::vector<drawing::LabelSize> sizes; // now without readings, now with a finding
    for (std::size_t w = 0; w < drawing.wires.size(); ++w)
        sizes.push_back({w % 3 == 0 ? 112.0 : 80.0, w % 2 == 0 ? 52.0 : 28.0});
    auto const places = drawing::place_labels(drawing, sizes);
    REQUIRE(places.size() == sizes.size());
    int homeless = 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (!places[i]) {
            ++homeless;
            continue;
        }
        auto const& box = places[i]->box;
        CHECK(box.x >= 0.0);
        CHECK(box.y >= 0.0);
        CHECK(box.right() <= drawing.width);
        CHECK(box.bottom() <= drawing.height);
        for (std::size_t j = i + 1; j < places.size(); ++j)
            if (places[j]) CHECK_FALSE(overlap(box, places[j]->box));
        for (auto const& part : drawing.parts)
            CHECK_FALSE(overlap(box, part.box));
        auto const& path = drawing.wires[i].path;
        bool on_its_line = false;
        for (std::size_t k = 0; k + 1 < path.size(); ++k)
            on_its_line = on_its_line || overlap(box, drawing::around(path[k], path[k + 1], 0.1));
        CHECK(on_its_line);
    }
    return homeless;
}

} // namespace

TEST_CASE("labels stand on their own lines, clear of each other, of parts and of the edge") {
    for (auto const& shape : miswires::all_shapes())
        CHECK(check_labels(miswires::BankBuilder(shape).build()) == 0);
    for (std::uint64_t seed = 0; seed < 110; ++seed) {
        CHECK(check_labels(support::random_good_bank(seed)) == 0);
        check_labels(support::random_weird_bank(seed));
    }
}
