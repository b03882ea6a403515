// What a report tells of one bank: its description, what is wrong with it, and what the analyses answer.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/recharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/rule_info.hpp"
#include "bankwright/findings/verdict.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/reports/logged.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright::page {

// Parts and conductors beyond which an analysis is left out: nobody works from a page of that length, and the time that
// it takes grows faster than the bank. Each command answers for itself alone, however large the bank.
inline constexpr std::size_t most_parts = 600;
inline constexpr std::size_t most_parts_of_hookup = 250;

// What a report tells after its verdict, in its order: what the dock needs first.
enum class Chapter { cautions, hookup, drawing, findings, readings, sharing, run, charging, shorts, cut, sources };
constexpr auto all_chapters() {
    return std::array{Chapter::cautions, Chapter::hookup,  Chapter::drawing, Chapter::findings,
                      Chapter::readings, Chapter::sharing, Chapter::run,     Chapter::charging,
                      Chapter::shorts,   Chapter::cut,     Chapter::sources};
}
constexpr std::string_view name(Chapter chapter) {
    constexpr std::string_view names[] = {"cautions", "hookup",   "drawing", "findings", "readings", "sharing",
                                          "run",      "charging", "shorts",  "cut",      "sources"};
    return names[static_cast<std::size_t>(chapter)];
}
constexpr std::string_view heading_of(Chapter chapter) { // as the page's list of contents has it
    constexpr std::string_view names[] = {"Cautions", "Hook-up",  "Drawing", "Findings", "Readings", "Sharing",
                                          "Run time", "Charging", "Shorts",  "Cut list", "Sources"};
    return names[static_cast<std::size_t>(chapter)];
}

// What was read while the bank was hooked up.
struct ReadLog {
    std::string file; // as the user named it
    HookupLog log;
    std::vector<std::string> changed; // parts that are not as they were when it was begun
};

struct ReportOptions {
    Moment moment;
    std::string moment_in_words; // "with every load off"; empty: as the file describes
    HookupOptions hookup;
    std::vector<Chapter> only{}; // empty: all
    std::optional<ReadLog> log{};
};

struct ThrottledRun {
    Throttle throttle;
    Duration runtime{};
    bool ends = false; // false: still running after that time
};

struct BankReport {
    Bank bank;
    Verdict verdict;
    std::vector<RuleInfo const*> rules; // all: a finding tells where its limit comes from
    ReportOptions options;
    OperatingPoint point;
    std::vector<std::vector<std::string>> strings; // ids of parallel strings' batteries; empty: no such arrangement
    std::optional<DischargeResult> run;
    std::optional<RunRange> run_range;                 // with it
    std::string no_run;                                // why there is none
    std::vector<ThrottledRun> at_throttles;            // rising; empty where there is no motor to throttle
    std::optional<RechargeResult> charge_from_empty;   // none: no charger, or see no_charge
    std::optional<RechargeResult> charge_as_described; // from the batteries' own charge
    std::string no_charge;                             // why there is none though there is a charger
    std::optional<ShortCircuitResult> shorts;          // none: too large a bank
    std::optional<HookupResult> hookup;
    std::string no_hookup; // why there is none
    std::optional<LoggedHookup> logged;
};

// Is there an error of the wiring that nobody has accepted? Then nothing is worked out that would build on it.
bool wiring_is_wrong(Verdict const& verdict);

inline std::string moment_of(BankReport const& report) {
    auto const& said = report.options.moment_in_words;
    return said.empty() ? std::string("with every load as the file describes it") : said;
}

// Asks every analysis about the bank. A run and a hook-up of a bank that is wired wrongly are left out: nobody is told
// how to put together what must not be put together. Throws std::invalid_argument where build() does.
BankReport report_on(Bank bank, Verdict verdict, std::vector<RuleInfo const*> rules, ReportOptions options = {});

} // namespace bankwright::page

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/page/bank_report_inl.hpp"
#endif
