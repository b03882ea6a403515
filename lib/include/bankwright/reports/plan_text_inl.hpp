#pragma once

#include "bankwright/planning/plan_file.hpp"
#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/plan_text.hpp"
#include "bankwright/reports/sizing_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::plan_text {

inline std::string headline(Planned const& planned) {
    auto const& bank = planned.result.banks.front();
    auto text = fmt::format("{}: {} of {}\n", in_words(*planned.wish), bank.arrangement, bank.battery);
    text += fmt::format("it runs {} down to a charge of {}; {} is wanted\n", run_words::about(bank.to_reserve),
                        print(bank.reserve), print(planned.wish->runtime));
    if (auto const mass = sizing_words::masses(bank.cuts); !mass.empty()) text += "batteries: " + mass + "\n";
    return text;
}

inline std::string prices_of(PlannedBank const& bank) {
    std::vector<std::string> sums;
    for (auto const& sum : bank.cuts.prices)
        sums.push_back(print(sum));
    return fmt::format("{}", fmt::join(sums, " and "));
}

} // namespace internal::plan_text

BANKWRIGHT_INLINE std::string banks_side_by_side(PlanResult const& plans) {
    using internal::plan_text::prices_of;
    auto const& banks = plans.banks;
    bool const priced =
        std::any_of(banks.begin(), banks.end(), [](auto const& bank) { return !bank.cuts.prices.empty(); });
    std::vector<Row> rows{{"", "bank", "batteries", "model", "runs about", "mass", "current of each"}};
    std::vector<Align> aligned{Align::right, Align::left,  Align::left, Align::left,
                               Align::right, Align::right, Align::right};
    if (priced) {
        rows.front().push_back("price");
        aligned.push_back(Align::right);
    }
    for (auto const& bank : banks) {
        rows.push_back({std::to_string(rows.size()), bank.arrangement,
                        fmt::format("{} x {}", bank.series * bank.strings, bank.battery), bank.model,
                        run_words::about(bank.to_reserve).substr(6),
                        bank.cuts.battery_mass ? print(*bank.cuts.battery_mass) : "", print(bank.each)});
        if (priced) rows.back().push_back(prices_of(bank));
    }
    return table(rows, aligned);
}

BANKWRIGHT_INLINE std::string plan_problems(Planned const& planned) {
    std::string out;
    for (auto const& problem : planned.result.problems)
        out += fmt::format("{} {}\n  {}\n", name(problem.part), problem.message, problem.help);
    return out;
}

BANKWRIGHT_INLINE std::string plan_text(Planned const& planned) {
    using namespace internal::plan_text;
    auto const& banks = planned.result.banks;
    if (banks.empty()) return plan_problems(planned);
    auto out = headline(planned) + "\nwhy, and why no less:\n";
    for (auto const& choice : banks.front().choices) {
        out += fmt::format("  {}: {}, {}\n", choice.what, choice.chosen, choice.decided_by);
        if (auto const less = why_no_less(choice); !less.empty()) out += fmt::format("    {}\n", less);
    }
    if (banks.size() > 1)
        out += "\nbanks that will do, the proposed one first:\n\n" + banks_side_by_side(planned.result);
    out += "\nto cut and to buy:\n";
    for (auto const& one : sizing_words::cut_tables(banks.front().cuts))
        out.append("\n").append(table(one.rows, one.aligned));
    for (auto const& note : banks.front().notes)
        out += fmt::format("note: {} [{}]\n", note.message, note.rule);
    return out + "\n" + sizing_words::assumed + "\n" + std::string(judgment_caution) + "\n";
}

} // namespace bankwright
