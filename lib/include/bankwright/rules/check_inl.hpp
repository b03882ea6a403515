#pragma once

#include "bankwright/rules/catalog.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/rules/checking/chosen_rules.hpp"
#include "bankwright/rules/checking/consequences.hpp"
#include "bankwright/rules/checking/merged_positions.hpp"
#include "bankwright/text/escape.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright {

namespace internal {

// Marks what somebody has looked at; `used`: by acceptance, whether it accepts anything.
inline void accept(Bank const& bank, Findings& findings, std::vector<char>& used) {
    for (std::size_t i = 0; i < bank.accepted.size(); ++i) {
        auto const& acceptance = bank.accepted[i];
        for (auto& finding : findings) {
            auto const& parts = finding.parts;
            bool const about_part =
                acceptance.part.empty() || std::find(parts.begin(), parts.end(), acceptance.part) != parts.end();
            if (finding.rule != acceptance.rule || !about_part) continue;
            used[i] = 1;
            if (acceptance.reason.empty()) continue; // without a reason nothing is accepted
            finding.accepted = true;
            finding.accepted_because = acceptance.reason;
        }
    }
}

inline void say_unused(Bank const& bank, std::vector<char> const& used, Findings& findings) {
    constexpr auto unused = rule_named(file_rules, "file/accept-unused");
    for (std::size_t i = 0; i < bank.accepted.size(); ++i) {
        auto const& acceptance = bank.accepted[i];
        if (used[i]) continue;
        auto const where =
            acceptance.part.empty() ? std::string() : fmt::format(" about `{}`", terminal_safe(acceptance.part));
        auto finding = finding_of(
            unused, fmt::format("nothing to accept: no finding of {}{}", terminal_safe(acceptance.rule), where),
            "remove this entry, or correct its rule or part");
        finding.parts = {fmt::format("[[accept]] {}", i + 1)};
        findings.push_back(std::move(finding));
    }
}

inline std::vector<std::string> part_names(Bank const& bank) {
    std::vector<std::string> names;
    for_each_part(bank, [&](PartKind, auto const& part) { names.push_back(id_of(part)); });
    return names;
}

// What is told: neither of a rule that the options leave out nor hidden behind such a cause, or behind one that is
// accepted. Who accepts a cause has not accepted what it does.
inline void choose(Bank const& bank, CheckOptions const& options, CheckResult& result) {
    std::vector<char> used(bank.accepted.size(), 0);
    accept(bank, result.findings, used);
    Findings told, hidden;
    auto const parts = part_names(bank);
    for (auto& finding : result.findings) {
        bool const wanted = is_wanted(options, finding.rule);
        if (!wanted || finding.accepted) {
            auto effects = told_without_cause(finding, parts);
            accept(bank, effects, used);
            for (auto& effect : effects)
                if (is_wanted(options, effect.rule)) told.push_back(std::move(effect));
            finding.consequences.clear();
        }
        (wanted ? told : hidden).push_back(std::move(finding));
    }
    // Of a family that is not run nobody knows what an acceptance would accept.
    constexpr std::string_view unused = "file/accept-unused";
    if (!selects(options.skip, unused) && (options.count_left_out || is_wanted(options, unused)))
        say_unused(bank, used, told);
    result.left_out = {names_left_out(options), count(hidden)};
    result.findings = std::move(told);
}

// Is anything of this family wanted, or whatever an acceptance may be of?
inline bool is_asked(RuleFamily const& family, std::vector<std::string> const& only) {
    if (only.empty() || selects(only, "file/accept-unused")) return true;
    return std::any_of(family.rules.begin(), family.rules.end(),
                       [&](RuleInfo const& rule) { return selects(only, rule.id); });
}

// A notation is for what is a bank: not for a part of one while the rest lies idle, nor for a ring of batteries that
// short each other, which walked from end to end looks like two strings.
inline bool is_a_bank(Seen const& seen) {
    auto const& verdict = seen.verdict();
    if (!verdict.shorted.empty() || !verdict.unused.empty()) return false;
    auto const banks = seen.bank_of_batteries_or_one();
    if (std::any_of(banks.begin(), banks.end(), [&](int bank) { return bank != banks.front(); })) return false;
    auto const& form = seen.arrangement();
    for (auto const& string : form.strings) {
        auto here = form.negative_group;
        for (auto const e : string) {
            auto const& battery = seen.graph().edges[static_cast<std::size_t>(e)];
            bool const forward = verdict.group_of(battery.from) == here;
            if (!forward && !verdict.clashes.empty()) return false;
            here = verdict.group_of(forward ? battery.to : battery.from);
        }
    }
    return true;
}

} // namespace internal

BANKWRIGHT_INLINE CheckResult check(Bank const& bank, CheckOptions const& options) {
    refuse_unknown_rules(options.only);
    refuse_unknown_rules(options.skip);
    Seen const seen(bank, options.whole);
    CheckResult result;
    auto const positions = positions_of(bank);
    std::vector<Findings> found(positions.size());
    for (std::size_t p = 0; p < positions.size(); ++p) {
        Seen const in_position(positions[p].bank, options.whole);
        for (auto const& family : rule_families)
            if (family.check && (options.count_left_out || internal::is_asked(family, options.only)))
                family.check(in_position, found[p]);
    }
    result.findings = internal::merged_positions(bank, positions, found);
    internal::choose(bank, options, result);
    auto& findings = result.findings;
    fold_consequences(findings);
    std::stable_sort(findings.begin(), findings.end(),
                     [](Finding const& a, Finding const& b) { return a.level > b.level; });
    if (internal::is_a_bank(seen)) result.arrangement = seen.arrangement().notation();
    return result;
}

} // namespace bankwright
