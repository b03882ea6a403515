// The miswire proof: every single mistake on every good bank is found, its cause is named, and nothing else is accused.
#include "miswires/proof.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace miswires;

namespace {

bool names(Finding const& finding, std::vector<std::string> const& culprits) {
    return std::any_of(culprits.begin(), culprits.end(), [&](auto const& c) {
        return std::find(finding.parts.begin(), finding.parts.end(), c) != finding.parts.end();
    });
}

// By default banks of up to four batteries, every place of the main leads, with and without a second load and fuses in
// the strings, though not with every pair of the two; "all" is every bank up to 4S4P, a prefix such as 3S2P that one.
bool is_wanted(Shape const& shape, std::string const& asked) {
    if (asked == "all") return true;
    if (!asked.empty()) return describe(shape).rfind(asked, 0) == 0;
    bool const odd = static_cast<int>(shape.main_leads) % 2 == 1;
    return shape.series * shape.parallel <= 4 &&
           (shape.parallel == 1 || (shape.second_load != shape.string_fuses) == odd);
}

} // namespace

TEST_CASE("every single miswire is an error whose cause is named, and what is electrically the same is none") {
    auto const* asked = std::getenv("MISWIRE_SHAPES");
    Table table(true);
    int shown = 0;
    for (auto const& shape : all_shapes()) {
        if (!is_wanted(shape, asked ? asked : "")) continue;
        Good const good(shape);
        for (auto const& miswire : MiswireMaker(good.bank).all()) {
            auto const judged = judge(good, with(good.bank, miswire));
            bool const named = !judged.found.empty() && names(judged.found.front(), miswire.culprits);
            table.count(miswire.kind, judged, named);
            if ((judged.right() && (judged.same || named)) || shown++ >= 40) continue;
            std::printf("%s %s: %s: %s\n",
                        judged.same      ? "FALSE"
                        : judged.right() ? "UNNAMED"
                                         : "MISSED",
                        good.title.c_str(), miswire.what.c_str(), first_of(judged.found).c_str());
        }
    }
    table.print("single miswires");
    CHECK(table.total.changed > 0);
    CHECK(table.total.missed == 0);
    CHECK(table.total.false_alarms == 0);
    CHECK(table.total.named >= 0.98 * table.total.changed);
}

// Three or more strings without a device each are good wiring and yet against protection/parallel-string; so are tied
// ones with a fuse at the end of each string, as a battery below a tie is fed through the tie.
TEST_CASE("good banks give nothing") {
    for (auto const& shape : all_shapes()) {
        auto const result = check(BankBuilder(shape).build());
        auto const title = describe(shape);
        CAPTURE(title);
        bool const tied = shape.main_leads == MainLeads::cross_tied;
        bool const wants_fuses = shape.parallel >= 3 && (tied || !shape.string_fuses);
        for (auto const& finding : result.findings) {
            CAPTURE(finding.message);
            CHECK((wants_fuses && finding.rule == "protection/parallel-string"));
        }
        CHECK(result.findings.size() == (wants_fuses ? 1 : 0));
        CHECK(result.arrangement == std::to_string(shape.series) + "S" + std::to_string(shape.parallel) + "P");
    }
}
