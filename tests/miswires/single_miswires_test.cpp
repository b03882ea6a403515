// The miswire proof: every single mistake on every good bank is found, its cause is named, and nothing else is accused.
#include "miswires/electrical_sameness.hpp"
#include "miswires/good_banks.hpp"
#include "miswires/single_miswires.hpp"

#include "bankwright/rules/run.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <set>
#include <string>
#include <vector>

using namespace miswires;

namespace {

struct Row {
    int made = 0, same = 0, sharing = 0, changed = 0, missed = 0, false_alarms = 0, named = 0;
};

bool has_error(Findings const& findings) {
    return std::any_of(findings.begin(), findings.end(), [](auto const& f) { return f.level == Level::error; });
}

bool names(Finding const& finding, std::vector<std::string> const& culprits) {
    return std::any_of(culprits.begin(), culprits.end(), [&](auto const& c) {
        return std::find(finding.parts.begin(), finding.parts.end(), c) != finding.parts.end();
    });
}

} // namespace

TEST_CASE("every single miswire is an error whose cause is named, and what is electrically the same is none") {
    // Here banks of up to four batteries, some 60 000 miswires; MISWIRE_SHAPES=all takes every bank to 4S4P (an hour),
    // a prefix such as 3S2P that one.
    auto const* wanted = std::getenv("MISWIRE_SHAPES");
    auto const asked = std::string(wanted ? wanted : "");
    std::map<std::string, Row> table;
    int shown = 0;
    for (auto const& shape : all_shapes()) {
        auto const title = describe(shape);
        if (asked.empty() ? shape.series * shape.parallel > 4 : asked != "all" && title.rfind(asked, 0) != 0) continue;
        auto const good = BankBuilder(shape).build();
        // A change that leads to another good bank, a tie more or less in 2S2P say, is no mistake.
        std::set<std::set<std::set<std::string>>> good_circuits;
        for (auto other : all_shapes()) {
            if (other.series != shape.series || other.parallel != shape.parallel) continue;
            other.second_load = shape.second_load;
            if (other.string_fuses == shape.string_fuses) good_circuits.insert(circuit_of(BankBuilder(other).build()));
        }
        for (auto const& miswire : MiswireMaker(good).all()) {
            auto& row = table[miswire.kind];
            ++row.made;
            auto const found = check(miswire.bank).findings;
            bool const same = good_circuits.count(circuit_of(miswire.bank)) > 0;
            bool const error = has_error(found);
            if (same) {
                ++row.same;
                row.false_alarms += error;
                if (error && shown++ < 40)
                    std::printf("FALSE %s: %s: %s\n", title.c_str(), miswire.what.c_str(),
                                found.front().message.c_str());
                continue;
            }
            // Where the circuit has changed and yet only the sharing differs, a warning is enough.
            bool const said = error || (!found.empty() && only_sharing_changes(good, miswire.bank));
            row.sharing += said && !error;
            ++row.changed;
            row.missed += !said;
            bool const named = said && names(found.front(), miswire.culprits);
            row.named += named;
            if (!named && shown++ < 40)
                std::printf("%s %s: %s: %s\n", said ? "UNNAMED" : "MISSED", title.c_str(), miswire.what.c_str(),
                            found.empty() ? "" : (found.front().rule + " " + found.front().message).c_str());
        }
    }
    std::printf("%-24s %8s %8s %8s %8s %8s %8s\n", "single miswires", "made", "same", "changed", "missed", "false",
                "named");
    Row total;
    for (auto const& [kind, row] : table) {
        std::printf("%-24s %8d %8d %8d %8d %8d %8d %8d\n", kind.c_str(), row.made, row.same, row.changed, row.sharing,
                    row.missed, row.false_alarms, row.named);
        total.changed += row.changed;
        total.missed += row.missed;
        total.false_alarms += row.false_alarms;
        total.named += row.named;
    }
    std::printf("named %.2f %%\n", 100.0 * total.named / std::max(1, total.changed));
    CHECK(total.missed == 0);
    CHECK(total.false_alarms == 0);
    CHECK(total.named >= 0.98 * total.changed);
}

// Three or more strings without a device each are good wiring and yet against protection/parallel-string.
TEST_CASE("good banks give nothing") {
    for (auto const& shape : all_shapes()) {
        auto const result = check(BankBuilder(shape).build());
        auto const title = describe(shape);
        CAPTURE(title);
        bool const wants_fuses = shape.parallel >= 3 && !shape.string_fuses && shape.take_off != TakeOff::cross_tied;
        for (auto const& finding : result.findings) {
            CAPTURE(finding.message);
            CHECK((wants_fuses && finding.rule == "protection/parallel-string"));
        }
        CHECK(result.findings.size() == (wants_fuses ? 1 : 0));
        CHECK(result.arrangement == std::to_string(shape.series) + "S" + std::to_string(shape.parallel) + "P");
    }
}
