#pragma once

#include "bankwright/reports/compare_words.hpp"
#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/sizing_words.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <functional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::comparing {

// A rule's findings in one bank: "warning: `main`, `return`".
inline std::string told(Findings const& findings, std::string const& rule) {
    std::string text;
    int more = 0;
    for (auto const& finding : findings) {
        if (finding.rule != rule || finding.accepted) continue;
        if (text.empty())
            text = finding.parts.empty() ? std::string(name(finding.level))
                                         : fmt::format("{} at {}", name(finding.level), finding.parts.front());
        else
            ++more;
    }
    return more == 0 ? text : fmt::format("{}, {} more", text, more);
}

inline std::string batteries(CutList const& list) {
    std::vector<std::string> words;
    for (auto const& total : list.batteries)
        words.push_back(fmt::format("{} x {}", total.count, total.what));
    return fmt::format("{}", fmt::join(words, " and "));
}

inline std::string articles(CutList const& list, std::string_view what) {
    std::vector<std::string> words;
    for (auto const& article : list.articles)
        if (article.what == what)
            words.push_back(article.parts.size() == 1 ? article.detail
                                                      : fmt::format("{} x {}", article.parts.size(), article.detail));
    return fmt::format("{}", fmt::join(words, "; "));
}

class Rows {
public:
    explicit Rows(std::vector<BankFigures> const& banks) : banks_(banks) {}

    template <class Value>
    void add(std::string what, Value&& value_of) {
        ComparedRow row;
        row.what = std::move(what);
        for (auto const& bank : banks_)
            row.values.push_back(value_of(bank));
        bool const says_nothing =
            std::all_of(row.values.begin(), row.values.end(), [](auto const& value) { return value.empty(); });
        if (says_nothing) return;
        row.differs = std::any_of(row.values.begin(), row.values.end(),
                                  [&](auto const& value) { return value != row.values.front(); });
        rows_.push_back(std::move(row));
    }

    std::vector<ComparedRow> take() {
        std::stable_partition(rows_.begin(), rows_.end(), [](ComparedRow const& row) { return row.differs; });
        return std::move(rows_);
    }

    // Every name that any bank has, in the order of the banks.
    std::vector<std::string> all(std::function<std::vector<std::string>(BankFigures const&)> const& names_of) const {
        std::vector<std::string> names;
        for (auto const& bank : banks_)
            for (auto& one : names_of(bank))
                if (std::find(names.begin(), names.end(), one) == names.end()) names.push_back(std::move(one));
        return names;
    }

private:
    std::vector<BankFigures> const& banks_;
    std::vector<ComparedRow> rows_;
};

} // namespace internal::comparing

BANKWRIGHT_INLINE std::vector<ComparedRow> compared_rows(std::vector<BankFigures> const& banks) {
    using namespace internal::comparing;
    Rows rows(banks);
    auto const or_none = [](auto const& value) { return value ? print(*value) : std::string(); };
    rows.add("check", [](auto const& bank) { return tally(count(bank.findings)); });
    auto const rules = rows.all([](auto const& bank) {
        std::vector<std::string> ids;
        for (auto const& finding : bank.findings)
            if (!finding.accepted) ids.push_back(finding.rule);
        return ids;
    });
    for (auto const& rule : rules)
        rows.add(rule, [&](auto const& bank) { return told(bank.findings, rule); });
    rows.add("arrangement", [](auto const& bank) { return bank.arrangement.value_or(""); });
    rows.add("batteries", [](auto const& bank) { return batteries(bank.cuts); });
    rows.add("runs down to its reserve",
             [](auto const& bank) { return bank.to_reserve ? run_words::about(*bank.to_reserve) : std::string(); });
    rows.add("runs until it stops",
             [](auto const& bank) { return bank.runtime ? run_words::about(*bank.runtime) : std::string(); });
    auto const loads = rows.all([](auto const& bank) {
        std::vector<std::string> ids;
        for (auto const& load : bank.loads)
            ids.push_back(load.first);
        return ids;
    });
    for (auto const& id : loads)
        rows.add("voltage at " + id, [&](auto const& bank) {
            auto const found =
                std::find_if(bank.loads.begin(), bank.loads.end(), [&](auto const& load) { return load.first == id; });
            return found == bank.loads.end() ? std::string() : print(found->second);
        });
    rows.add("busiest battery", [&](auto const& bank) {
        return bank.hardest_current ? fmt::format("{}, {}", bank.hardest, print(*bank.hardest_current)) : std::string();
    });
    rows.add("its share of the mean", [](auto const& bank) {
        return bank.share ? fmt::format("{:.0f} %", 100.0 * *bank.share) : std::string();
    });
    rows.add("largest short circuit", [&](auto const& bank) { return or_none(bank.largest_short); });
    for (auto const* what : {"breaker", "fuse and holder", "receptacle and plug", "charger"})
        rows.add(what, [&](auto const& bank) { return articles(bank.cuts, what); });
    auto const sizes = rows.all([](auto const& bank) {
        std::vector<std::string> names;
        for (auto const& copper : bank.copper)
            names.push_back(print(copper.size));
        return names;
    });
    for (auto const& size : sizes)
        rows.add("copper, " + size, [&](auto const& bank) {
            for (auto const& copper : bank.copper)
                if (print(copper.size) == size)
                    return sizing_words::length(copper.length, sizing_words::in_feet(bank.cuts));
            return std::string();
        });
    rows.add("mass", [](auto const& bank) { return sizing_words::masses(bank.cuts); });
    rows.add("price", [](auto const& bank) { return sizing_words::prices(bank.cuts); });
    return rows.take();
}

} // namespace bankwright
