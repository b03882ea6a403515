// Words for people and for programs: one of its own for each thing that can be meant.
#include "bankwright/reports/hooked_up.hpp"
#include "bankwright/reports/through_time.hpp"
#include "bankwright/reports/trace_text.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/solution.hpp"

#include <algorithm>
#include <initializer_list>
#include <set>
#include <string>
#include <string_view>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("reports/words");

namespace {

// Names of the JSON: letters in lower case and hyphens, no two alike.
template <class Kind>
void check_names(std::initializer_list<Kind> kinds) {
    std::set<std::string_view> names;
    for (auto const kind : kinds) {
        auto const word = name(kind);
        CHECK(!word.empty());
        CHECK(std::all_of(word.begin(), word.end(), [](char c) { return c == '-' || (c >= 'a' && c <= 'z'); }));
        names.insert(word);
    }
    CHECK(names.size() == kinds.size());
}

std::string told(Fault fault) {
    Traced traced;
    Diagnosis diagnosis;
    diagnosis.faults = {std::move(fault)};
    diagnosis.probability = 0.8;
    traced.result.diagnoses = {diagnosis};
    return trace_text(traced, {});
}

bool says(std::string const& text, std::string_view words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("names of the documents") {
    check_names({RunEnd::time, RunEnd::battery_empty, RunEnd::battery_cutoff, RunEnd::load_cutoff,
                 RunEnd::no_operating_point, RunEnd::nothing_drawn});
    check_names({RechargeEnd::full, RechargeEnd::not_all_full, RechargeEnd::time, RechargeEnd::nothing_charges, RechargeEnd::battery_empty});
    check_names({HookupAction::land, HookupAction::fit, HookupAction::close, HookupAction::read, HookupAction::open,
                 HookupAction::mate});
    check_names({MistakeKind::battery_turned, MistakeKind::battery_low, MistakeKind::cell_dead,
                 MistakeKind::end_elsewhere, MistakeKind::leads_exchanged, MistakeKind::not_joined,
                 MistakeKind::bypassed, MistakeKind::across});
    check_names({solver::Status::solved, solver::Status::no_operating_point, solver::Status::not_converged,
                 solver::Status::bad_circuit});
    using solver::InstructionSet;
    std::set<std::string_view> const sets{name(InstructionSet::portable), name(InstructionSet::avx2),
                                          name(InstructionSet::avx512)};
    CHECK(sets == std::set<std::string_view>{"portable", "AVX2", "AVX-512"});
}

TEST_CASE("each fault is told in a sentence of its own") {
    CHECK(says(told({FaultKind::reversed, "B", {}, {}, {}}), "`B` is turned around\n"));
    CHECK(says(told({FaultKind::dead, "B", {}, {}, {}}), "`B` is dead: it gives no voltage\n"));
    CHECK(says(told({FaultKind::dead_cell, "B", {}, {}, {}}), "`B` has a dead cell\n"));
    CHECK(says(told({FaultKind::shorted_cell, "B", {}, {}, {}}), "`B` has a shorted cell\n"));
    CHECK(says(told({FaultKind::low, "B", "20 %", {}, {}}), "`B` is low (20 %)\n"));
    CHECK(says(told({FaultKind::moved, "J1", {}, "C+", "B-"}), "`J1` is on C+ instead of B-\n"));
    CHECK(says(told({FaultKind::missing, "J1", {}, {}, {}}), "`J1` is missing or broken\n"));
    CHECK(says(told({FaultKind::resistive, "J1", "20 mohm", {}, {}, PartKind::jumper}),
               "`J1` or one of its joints resists (20 mohm)\n"));
    CHECK(says(told({FaultKind::open, "bow", "positive pole", {}, {}, PartKind::connector}),
               "`bow` makes no contact (positive pole)\n"));
    CHECK(says(told({FaultKind::open, "CB", {}, {}, {}, PartKind::breaker}),
               "`CB` is tripped, switched off or broken\n"));
    CHECK(says(told({FaultKind::open, "troll", {}, {}, {}, PartKind::motor}),
               "`troll` draws nothing: look at its own switch and fuse\n"));
    CHECK(says(told({FaultKind::resistive, "B", {}, {}, {}, PartKind::battery}), "`B` is worn: it sags under load\n"));
    CHECK(says(told({FaultKind::exchanged, "troll", {}, {}, {}, PartKind::motor}),
               "the two leads on `troll` are swapped\n"));
}

TEST_CASE("nothing more to read, and more that is alike than there is room for") {
    CHECK(says(told({FaultKind::dead, "B", {}, {}, {}}), "no voltage reading would tell more\n"));
    Traced traced;
    Diagnosis diagnosis;
    diagnosis.faults = {{FaultKind::dead, "B1", {}, {}, {}}};
    for (int b = 2; b <= 8; ++b)
        diagnosis.alike.push_back({{FaultKind::dead, "B" + std::to_string(b), {}, {}, {}}});
    diagnosis.probability = 0.95;
    traced.result.diagnoses = {diagnosis};
    auto const text = trace_text(traced, {});
    CHECK(says(text, "`B5` is dead"));
    CHECK(!says(text, "`B6` is dead"));
    CHECK(says(text, " 3 more that no voltage reading can tell from it\n"));
    CHECK(!says(text, "would tell more")); // as good as certain
}
