// Bodies of sizing_words.hpp.
#pragma once

#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/sizing_words.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/sizing/standard_sizes.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace bankwright::sizing_words {

BANKWRIGHT_INLINE std::string length(Length value, bool in_feet) {
    auto const up_to = [&](double unit) { return std::ceil(value.value() / unit - 1e-9); };
    if (!in_feet) return fmt::format("{:.2f} m", 0.01 * up_to(0.01));
    auto const inches = static_cast<long>(up_to(0.0254)); // in words here: a sum of 310 in is 7.874 m to the last digit
    if (inches < 36 && inches % 12 != 0) return fmt::format("{} in", inches);
    return inches % 12 == 0 ? fmt::format("{} ft", inches / 12) : fmt::format("{} ft {} in", inches / 12, inches % 12);
}

BANKWRIGHT_INLINE bool in_feet(Length value) { return print(value).back() != 'm'; }

BANKWRIGHT_INLINE bool in_feet(CutList const& list) { return !list.cuts.empty() && in_feet(list.cuts.front().run); }

BANKWRIGHT_INLINE std::string joined(std::vector<std::string> const& words) {
    return fmt::format("{}", fmt::join(words, ", "));
}

BANKWRIGHT_INLINE std::string reasons(Findings const& findings) {
    constexpr std::size_t most = 2;
    std::vector<std::string> words;
    for (auto const& finding : findings) {
        if (words.size() == most) break;
        words.push_back(fmt::format("{} [{}]", finding.message, finding.rule));
    }
    auto line = fmt::format("{}", fmt::join(words, "; "));
    if (findings.size() > most) line += fmt::format("; and {} more", findings.size() - most);
    return line;
}

BANKWRIGHT_INLINE Table groups(Sized const& sized) {
    bool const gauges = sized.system == SizeSystem::awg;
    Table out{"what is enough",
              {{"parts", "as written", "enough", gauges ? "or in mm2" : "or in AWG"}},
              {Align::left, Align::left, Align::left, Align::left}};
    auto const& chosen = sized.chosen().groups;
    auto const other = [](SizedGroup const& group) { // a device's rating is the same with either
        auto const size = group.size ? at_least_as_good(*group.size) : std::nullopt;
        return size ? print(*size) : std::string();
    };
    if (auto const& strings = sized.chosen().strings)
        out.rows.push_back(
            {"strings in parallel", std::to_string(strings->as_written), std::to_string(strings->chosen), ""});
    for (auto const& group : chosen)
        out.rows.push_back({joined(group.parts), group.as_written, group.chosen, other(group)});
    return out;
}

BANKWRIGHT_INLINE Table wire(CutList const& list) {
    Table out{
        "conductor", {{"size", "color", "pieces", "in all"}}, {Align::left, Align::left, Align::right, Align::left}};
    for (auto const& total : list.wire)
        out.rows.push_back({print(total.size), terminal_safe(total.color), std::to_string(total.pieces),
                            length(total.length, in_feet(list))});
    return out;
}

BANKWRIGHT_INLINE Table cuts(CutList const& list) {
    Table out{"cut", {{"conductor", "size", "color", "from", "to", "run", "cut"}}, std::vector<Align>(7, Align::left)};
    for (auto const& cut : list.cuts)
        out.rows.push_back({cut.id, print(cut.size), terminal_safe(cut.color), cut.from, cut.to, print(cut.run),
                            length(cut.cut, in_feet(cut.run))});
    return out;
}

BANKWRIGHT_INLINE Table ends(CutList const& list) {
    Table out{"ends", {{"end", "size", "count", "on"}}, {Align::left, Align::left, Align::right, Align::left}};
    for (auto const& end : list.ends)
        out.rows.push_back({end.what, print(end.size), std::to_string(end.count), end.on});
    return out;
}

BANKWRIGHT_INLINE Table articles(CutList const& list) {
    Table out{"parts", {{"part", "count", "detail", "for"}}, {Align::left, Align::right, Align::left, Align::left}};
    auto const with_price = [](std::string detail, std::optional<Price> const& price) {
        if (price) detail += (detail.empty() ? "" : ", ") + print(*price) + " each";
        return detail;
    };
    for (auto const& battery : list.batteries)
        out.rows.push_back({"battery", std::to_string(battery.count),
                            with_price(battery.what + (battery.size ? ", " + print(*battery.size) : ""), battery.price),
                            ""});
    if (auto const mass = masses(list); !mass.empty()) out.rows.push_back({"batteries", "", mass, ""});
    for (auto const& article : list.articles)
        out.rows.push_back({article.what, std::to_string(article.parts.size()),
                            with_price(article.detail, article.each), joined(article.parts)});
    if (list.heat_shrink.value() > 0.0)
        out.rows.push_back({"heat-shrink", "", length(list.heat_shrink, in_feet(list)), "every ring terminal"});
    if (list.screws > 0)
        out.rows.push_back(
            {"No. 10 screw", std::to_string(list.screws), "pilot hole 1/8 in", "devices and receptacles"});
    if (list.receptacle_holes > 0)
        out.rows.push_back({"hole", std::to_string(list.receptacle_holes), "about 1 in", "plug and receptacle"});
    if (auto const price = prices(list); !price.empty()) out.rows.push_back({"price", "", price, ""});
    return out;
}

BANKWRIGHT_INLINE std::string masses(CutList const& list) {
    if (!list.battery_mass) return {};
    auto const in_all = print(*list.battery_mass) + " in all";
    bool const alike = std::all_of(list.batteries.begin(), list.batteries.end(), [&](BatteryTotal const& total) {
        return total.each == list.batteries.front().each;
    });
    return alike ? print(*list.batteries.front().each) + " a battery, " + in_all : in_all;
}

BANKWRIGHT_INLINE std::string prices(CutList const& list) {
    if (list.prices.empty()) return {};
    std::vector<std::string> sums;
    for (auto const& sum : list.prices)
        sums.push_back(print(sum));
    auto const left_out = list.without_price == 0
                              ? std::string()
                              : " and " + counted(list.without_price, "part") + " whose price is not stated";
    return fmt::format("{} in all, without the conductors{}", fmt::join(sums, " and "), left_out);
}

BANKWRIGHT_INLINE std::vector<Table> cut_tables(CutList const& list) {
    std::vector<Table> out;
    for (auto&& one : {wire(list), cuts(list), ends(list), articles(list)})
        if (one.rows.size() > 1) out.push_back(one);
    return out;
}

BANKWRIGHT_INLINE std::vector<std::string> no_less(SizingResult const& result) {
    std::vector<std::string> lines;
    if (result.strings && !result.strings->refused.empty())
        lines.push_back(fmt::format("{} in parallel would not do: {}", result.strings->chosen - 1,
                                    reasons(result.strings->refused)));
    for (auto const& group : result.groups)
        if (!group.smaller.empty() && !group.refused.empty())
            lines.push_back(
                fmt::format("{} for {} would not do: {}", group.smaller, joined(group.parts), reasons(group.refused)));
    return lines;
}

BANKWRIGHT_INLINE std::string run_time(Sized const& sized) {
    if (!sized.reached) return {};
    auto line = fmt::format("it runs {}", run_words::about(*sized.reached));
    if (sized.wanted) line += fmt::format("; {} is wanted", print(*sized.wanted));
    return line;
}

} // namespace bankwright::sizing_words
