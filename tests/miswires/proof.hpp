// What must be said of a miswired bank, and what is: the two are told apart by the circuit and the solved numbers
// alone.
#pragma once

#include "bankwright/rules/check.hpp"
#include "miswires/electrical_sameness.hpp"
#include "miswires/good_banks.hpp"
#include "miswires/single_miswires.hpp"

#include <algorithm>
#include <cstdio>
#include <map>
#include <string>
#include <vector>

namespace miswires {

// A good bank, and every circuit that its batteries and loads may form and be right: a change that leads from one to
// another, a tie more in a cross-tied bank say, is no mistake.
struct Good {
    explicit Good(Shape const& shape) : title(describe(shape)), bank(BankBuilder(shape).build()) {
        for (auto other : all_shapes()) {
            if (other.series != shape.series || other.parallel != shape.parallel || other.charger) continue;
            other.second_load = shape.second_load;
            other.charger = shape.charger;
            auto circuit = circuit_of(BankBuilder(other).build());
            if (other.string_fuses == shape.string_fuses) circuits.push_back(std::move(circuit));
        }
    }
    bool is_one_of_these(Circuit const& circuit) const {
        return std::find(circuits.begin(), circuits.end(), circuit) != circuits.end();
    }

    std::string title;
    Bank bank;
    std::vector<Circuit> circuits;
};

struct Judged {
    bool same = false;    // electrically a good bank
    bool error = false;   // the library finds an error
    bool warning = false; // a warning only, and only sharing or charging changes, so that a warning is enough
    Findings found;

    bool right() const { return same ? !error : error || warning; }
};

inline Judged judge(Good const& good, Bank const& miswired) {
    Judged judged;
    judged.found = check(miswired).findings;
    judged.same = good.is_one_of_these(circuit_of(miswired));
    judged.error = std::any_of(judged.found.begin(), judged.found.end(),
                               [](auto const& finding) { return finding.level == Level::error; });
    judged.warning = !judged.same && !judged.error && !judged.found.empty() &&
                     (only_sharing_changes(good.bank, miswired) || only_charging_changes(good.bank, miswired));
    return judged;
}

inline std::string first_of(Findings const& found) {
    return found.empty() ? "nothing found" : found.front().rule + " " + found.front().message;
}

// Counts by kind of mistake. Where there are two causes the first finding need name neither.
class Table {
public:
    explicit Table(bool names_causes) : names_causes_(names_causes) {}

    struct Row {
        int made = 0, same = 0, changed = 0, warned = 0, missed = 0, false_alarms = 0, named = 0;
    };

    void count(std::string const& kind, Judged const& judged, bool named) {
        for (auto* row : {&rows_[kind], &total}) {
            ++row->made;
            row->same += judged.same;
            row->changed += !judged.same;
            row->warned += judged.warning;
            row->missed += !judged.same && !judged.right();
            row->false_alarms += judged.same && !judged.right();
            row->named += !judged.same && named;
        }
    }

    void print(char const* title) const {
        std::printf("%-44s %8s %8s %8s %8s %8s %8s %8s\n", title, "made", "same", "changed", "warned", "missed",
                    "false", names_causes_ ? "named" : "");
        for (auto const& [kind, row] : rows_)
            print(kind, row);
        print("all", total);
        if (names_causes_) std::printf("named %.2f %%\n", 100.0 * total.named / std::max(1, total.changed));
    }

    Row total;

private:
    void print(std::string const& kind, Row const& row) const {
        std::printf("%-44s %8d %8d %8d %8d %8d %8d", kind.c_str(), row.made, row.same, row.changed, row.warned,
                    row.missed, row.false_alarms);
        names_causes_ ? std::printf(" %8d\n", row.named) : std::printf("\n");
    }
    bool names_causes_;
    std::map<std::string, Row> rows_;
};

} // namespace miswires
