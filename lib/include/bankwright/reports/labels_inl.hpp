#pragma once

#include "bankwright/reports/labels.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/wiring/wiring_graph.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::labeling {

struct Sign {
    char const* word;
    char const* shape;
    char const* color;
};
inline constexpr std::array<Sign, 3> signs{
    {{"plus", "square", "red"}, {"minus", "disk", "black"}, {"between", "triangle", "white"}}};
inline Sign const& sign(Side side) { return signs[static_cast<std::size_t>(side)]; }

inline std::string cell(std::string const& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string out = "\"";
    for (auto const c : text)
        out += c == '"' ? "\"\"" : std::string(1, c);
    return out + '"';
}

inline BoxLabel box_of(Bank const& bank, std::optional<std::string> const& arrangement) {
    BoxLabel box;
    box.name = bank.name;
    if (bank.system.voltage) box.system = print(*bank.system.voltage) + " DC";
    box.arrangement = arrangement.value_or("");
    if (!bank.batteries.empty()) {
        auto const& first = bank.batteries.front();
        std::string what = first.voltage ? print(*first.voltage) : std::string();
        if (first.chemistry) what += " " + std::string(label_name(*first.chemistry));
        if (first.capacity) what += " " + print(*first.capacity);
        box.lines.push_back(fmt::format("{} x {}", bank.batteries.size(), what));
    }
    // Alike ones in one line: "fuse FA, FB, FC: 100 A".
    for (auto const* devices : {&bank.breakers, &bank.fuses}) {
        std::vector<std::pair<std::string, std::string>> lines; // rating, names
        for (auto const& device : *devices) {
            auto const rating = device.rating ? ": " + print(*device.rating) : std::string();
            auto const alike =
                std::find_if(lines.begin(), lines.end(), [&](auto const& one) { return one.first == rating; });
            if (alike == lines.end())
                lines.emplace_back(rating, device.id);
            else
                alike->second += ", " + device.id;
        }
        for (auto const& [rating, names] : lines)
            box.lines.push_back((devices == &bank.breakers ? "breaker " : "fuse ") + names + rating);
    }
    return box;
}

} // namespace internal::labeling

BANKWRIGHT_INLINE char const* word(Side side) { return internal::labeling::sign(side).word; }
BANKWRIGHT_INLINE char const* shape(Side side) { return internal::labeling::sign(side).shape; }
BANKWRIGHT_INLINE char const* color(Side side) { return internal::labeling::sign(side).color; }

BANKWRIGHT_INLINE Labels labels_of(std::string file, Bank const& bank, std::optional<std::string> const& arrangement) {
    Labels labels;
    labels.file = std::move(file);
    labels.box = internal::labeling::box_of(bank, arrangement);
    auto const graph = wiring_graph(bank);
    auto const verdict = judge(graph, graph.edges);
    for (auto const* runs : {&bank.jumpers, &bank.cables})
        for (auto const& [conductor, from, to] : *runs)
            for (auto const& [at, other] : {std::pair(from, to), std::pair(to, from)}) {
                EndLabel label{conductor.id, at, other, {}, {}, Side::between, {}};
                if (conductor.size) label.size = print(*conductor.size);
                if (conductor.length) label.length = print(*conductor.length);
                if (auto const found = graph.terminal_named.find(at); found != graph.terminal_named.end()) {
                    auto const volts = verdict.potential_of(found->second);
                    auto const top = verdict.top[static_cast<std::size_t>(verdict.island_of(found->second))];
                    label.above_negative = volts * si::volt;
                    if (top - volts < same_volts) label.side = Side::positive;
                    if (volts < same_volts) label.side = Side::negative;
                }
                labels.ends.push_back(std::move(label));
            }
    return labels;
}

BANKWRIGHT_INLINE std::string labels_csv(Labels const& labels) {
    using internal::labeling::cell;
    std::string out = "conductor,at,to,size,length,side,shape,color\r\n";
    for (auto const& end : labels.ends)
        out += fmt::format("{},{},{},{},{},{},{},{}\r\n", cell(end.conductor), cell(end.at), cell(end.to),
                           cell(end.size), cell(end.length), word(end.side), shape(end.side), color(end.side));
    return out;
}

} // namespace bankwright
