#pragma once

#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/reports/tolerance_text.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <cmath>
#include <cstddef>
#include <string>

#include <fmt/format.h>

namespace bankwright {
namespace internal::tolerance_words {

inline std::string what_varies(Spreads const& s) {
    auto const share = [](Spread spread) { return fmt::format("{:.3g} %", spread.in_percent()); };
    return fmt::format(
        "tolerances, unless the file says otherwise: batteries' resistance where stated +/- {}, their "
        "charge +/- {:.3g} points, their capacity +/- {}, conductors +/- {}, joints +/- {}, contacts +/- {}\n",
        share(s.resistance), s.charge.in_percent(), share(s.capacity), share(s.conductor), share(s.joint),
        share(s.contact));
}

inline int decimals(Spreading const& answer) { return answer.unit == "V" ? 3 : 2; }

// Half of the last decimal shown: less than that is rounding, not spread.
inline double shown_step(Spreading const& answer) { return 0.5 * std::pow(10.0, -decimals(answer)); }

inline std::string answers(ToleranceResult const& result) {
    std::vector<Row> rows{{"", "as stated", "mean", "deviation", "samples", "", "at worst", ""}};
    std::vector<Align> aligned(8, Align::right);
    aligned.front() = Align::left;
    for (auto const& answer : result.answers) {
        auto const number = [&](double value) {
            auto const shown = std::abs(value) < shown_step(answer) ? 0.0 : value; // never -0.00
            return fmt::format("{:.{}f} {}", shown, decimals(answer), answer.unit);
        };
        if (std::isnan(answer.as_stated)) {
            rows.push_back({answer.part, "floating"});
            continue;
        }
        rows.push_back({answer.part, number(answer.as_stated), number(answer.mean), number(answer.deviation),
                        number(answer.least), number(answer.most), number(answer.worst_least),
                        number(answer.worst_most)});
    }
    return table(rows, aligned);
}

// Of the voltage at each motor and load, and of the battery that spreads most.
inline std::string influences(ToleranceResult const& result) {
    constexpr std::size_t most = 4;
    constexpr double least_share = 0.01;
    std::string out;
    Spreading const* widest = nullptr;
    auto const list = [&](Spreading const& answer, std::string const& what) {
        if (answer.deviation < shown_step(answer)) return;
        std::string line;
        for (std::size_t i = 0; i < answer.influences.size() && i < most; ++i) {
            auto const& one = answer.influences[i];
            if (one.share < least_share) break;
            line += fmt::format("{}{:.0f} % {} of `{}`", line.empty() ? "" : ", ", 100.0 * one.share,
                                one.key == "emf" ? "charge" : one.key, one.part);
        }
        if (!line.empty()) out += fmt::format("  {}: {}\n", what, line);
    };
    for (auto const& answer : result.answers) {
        if (answer.unit == "V") list(answer, fmt::format("voltage at `{}`", answer.part));
        // Batteries in series spread alike but for rounding: the first of them speaks for all.
        if (answer.unit == "A" && (!widest || answer.deviation > widest->deviation * (1.0 + 1e-6))) widest = &answer;
    }
    if (widest) list(*widest, fmt::format("current of `{}`", widest->part));
    return out.empty() ? out : "\nwhat matters most, as a share of the variance:\n" + out;
}

inline std::string rules(Toleranced const& toleranced) {
    if (toleranced.shares.samples == 0) return {};
    auto const share = [&](std::size_t samples) {
        return fmt::format("{:.1f} %",
                           100.0 * static_cast<double>(samples) / static_cast<double>(toleranced.shares.samples));
    };
    auto out = fmt::format("\nof {} sample banks", toleranced.shares.samples);
    if (toleranced.shares.rules.empty()) return out + ", all pass every rule\n";
    out += ", rules set off by\n";
    for (auto const& rule : toleranced.shares.rules)
        out += fmt::format("  {:>7}  {}: {}{}{}\n", share(rule.samples), name(rule.level), rule.rule,
                           rule.part.empty() ? "" : fmt::format(", `{}` most often", rule.part),
                           rule.as_stated ? ", as stated too" : "");
    return out;
}

inline std::string run_time(Toleranced const& toleranced) {
    if (!toleranced.shares.run_time || toleranced.shares.samples == 0) return {};
    auto const& run = *toleranced.shares.run_time;
    if (run.most < 1.0 * si::second) return "\nit does not run for a second, as stated or in any sample\n";
    auto line =
        fmt::format("\nit runs {} as stated, {} on average, {} to {} in all samples", run_words::about(run.as_stated),
                    run_words::about(run.mean), print(as_well_as_known(run.least)), print(as_well_as_known(run.most)));
    if (!run.ended_by.empty()) line += fmt::format("; `{}` ends it most often", run.ended_by.front());
    return line + "\n";
}

} // namespace internal::tolerance_words

BANKWRIGHT_INLINE std::string tolerance_text(Toleranced const& toleranced) {
    using namespace internal::tolerance_words;
    auto const& result = toleranced.result;
    auto const head = fmt::format("{}: {}", terminal_safe(toleranced.file),
                                  toleranced.arrangement ? *toleranced.arrangement + ", " : std::string());
    if (!result.solved) return head + "no operating point as stated, and so nothing to vary\n";
    auto out = head + fmt::format("{} samples, seed {}\n", result.samples, toleranced.options.seed);
    out += what_varies(toleranced.options.spreads) + assumed_line(toleranced.assumed) + "\n" + answers(result);
    if (result.unanswered > 0)
        out += fmt::format("{} samples have no operating point: more is asked than there is\n", result.unanswered);
    return out + influences(result) + rules(toleranced) + run_time(toleranced);
}

} // namespace bankwright
