#pragma once

#include "bankwright/planning/wish_words.hpp"
#include "bankwright/planning/words/labels.hpp"
#include "bankwright/planning/words/typed.hpp"
#include "bankwright/text/quoted_names.hpp"
#include "bankwright/units/print.hpp"

#include <stdexcept>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::typed {

// Which values may be wished for, in SI; beyond them it is a slip, or no small boat.
struct Limits {
    double least;
    double most;
    std::string_view words;
};
inline constexpr Limits system_limits{6.0, 60.0, "6 V to 60 V"};
inline constexpr Limits current_limits{0.1, 1000.0, "0.1 A to 1000 A"};
inline constexpr Limits power_limits{1.0, 50e3, "1 W to 50 kW"};
inline constexpr Limits thrust_limits{10.0, 5000.0, "10 N (2.2 lb) to 5000 N (1100 lb)"};
inline constexpr Limits run_limits{0.3, 60.0, "1 ft to 200 ft"};
inline constexpr Limits runtime_limits{60.0, 100.0 * 3600.0, "1 min to 100 h"};
inline constexpr Limits throttle_limits{0.05, 1.0, "5 % to 100 %"};
inline constexpr Limits charger_limits{0.5, 500.0, "0.5 A to 500 A"};
inline constexpr Limits drop_limits{0.005, 0.2, "0.5 % to 20 %"};
inline constexpr Limits voltage_limits{2.0, 60.0, "2 V to 60 V"};
inline constexpr Limits capacity_limits{3600.0, 3.6e6, "1 Ah to 1000 Ah"};

template <class Q>
std::string put(std::optional<Q>& target, std::string const& text, Limits const& limits) {
    auto const parsed = parse<Q>(text);
    if (!parsed.value) return parsed.problem;
    if (!(parsed.value->value() >= limits.least * (1.0 - 1e-9) && parsed.value->value() <= limits.most * (1.0 + 1e-9)))
        return fmt::format("`{}` is out of range; {} may be asked for", text, limits.words);
    target = *parsed.value;
    return {};
}

inline bool says_none(std::string_view text) {
    auto const all = tokens(text);
    return all.size() == 1 && (all[0].text == "no" || all[0].text == "none");
}

inline std::string motor(Wish& wish, std::string const& text) {
    if (text.ends_with('A')) return put(wish.current, text, current_limits);
    if (text.ends_with('W') || text.ends_with("hp")) return put(wish.power, text, power_limits);
    return put(wish.thrust, text, thrust_limits);
}

inline std::string battery(Wish& wish, std::string_view text, std::string& understood) {
    auto read = label(text);
    if (!read.problem.empty()) return read.problem;
    auto& one = read.battery;
    auto const judge = [&](auto& value, Limits const& limits, std::string_view unit) -> std::string {
        if (!value) return {};
        understood += (understood.empty() ? "" : " ") + print(*value);
        return value->value() >= limits.least && value->value() <= limits.most
                   ? std::string()
                   : fmt::format("{} of a battery is out of range; {} may be asked for", unit, limits.words);
    };
    if (auto problem = judge(one.voltage, voltage_limits, "the voltage"); !problem.empty()) return problem;
    if (one.chemistry) understood += (understood.empty() ? "" : " ") + std::string(label_name(*one.chemistry));
    if (auto problem = judge(one.capacity, capacity_limits, "the capacity"); !problem.empty()) return problem;
    wish.battery = std::move(one);
    return {};
}

inline std::string chemistry(Wish& wish, std::string_view text, std::string& understood) {
    auto const read = label(text);
    bool const alone =
        read.problem.empty() && read.battery.chemistry && !read.battery.voltage && !read.battery.capacity;
    if (!alone)
        return fmt::format("`{}` is not a chemistry; known are flooded, AGM, gel and lithium (LiFePO4)",
                           terminal_safe(text));
    wish.chemistry = read.battery.chemistry;
    understood = std::string(label_name(*wish.chemistry));
    return {};
}

inline std::string stock(Wish& wish, std::string_view text, std::string& understood) {
    while (!text.empty()) {
        auto const end = std::min(text.find(','), text.size());
        std::string size;
        for (auto const& token : tokens(text.substr(0, end)))
            size += token.text == "awg" ? std::string(" AWG") : token.text;
        if (!size.empty() && size.find_first_not_of("0123456789/") == std::string::npos) size += " AWG";
        auto const parsed = parse<WireSize>(size);
        if (!parsed.value)
            return fmt::format("`{}` is not a size of a conductor; write them as in `10 AWG, 8 AWG, 6 AWG`",
                               terminal_safe(text.substr(0, end)));
        understood += (understood.empty() ? "" : ", ") + print(*parsed.value);
        wish.stock.push_back(*parsed.value);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return {};
}

// What was understood goes into the wish; empty, or the problem.
inline std::string take(Wish& wish, WishPart part, std::string_view text, std::string& understood) {
    auto const in = [&](std::span<Spelling const> spellings, std::string_view bare, std::string_view example,
                        auto&& use) -> std::string {
        auto read = spelled(text, spellings, bare, example);
        if (!read.problem.empty()) return read.problem;
        understood = read.text;
        return use(read.text);
    };
    switch (part) {
    case WishPart::system:
        return in(volts, "V", "36 V", [&](auto const& t) {
            std::optional<Voltage> value;
            auto problem = put(value, t, system_limits);
            if (value) wish.system = *value;
            return problem;
        });
    case WishPart::motor:
        return in(draws, "A", "45 A", [&](auto const& t) { return motor(wish, t); });
    case WishPart::run:
        return in(lengths, "ft", "20 ft", [&](auto const& t) {
            std::optional<Length> value;
            auto problem = put(value, t, run_limits);
            if (value) wish.run = *value;
            return problem;
        });
    case WishPart::runtime:
        return in(times, "h", "4 h", [&](auto const& t) {
            std::optional<Duration> value;
            auto problem = put(value, t, runtime_limits);
            if (value) wish.runtime = *value;
            return problem;
        });
    case WishPart::throttle:
        return in(shares, "%", "60 %", [&](auto const& t) { return put(wish.throttle, t, throttle_limits); });
    case WishPart::battery:
        return battery(wish, text, understood);
    case WishPart::chemistry:
        return chemistry(wish, text, understood);
    case WishPart::charger:
        if (says_none(text)) {
            understood = "none";
            return {};
        }
        return in(amperes, "A", "10 A", [&](auto const& t) { return put(wish.charger, t, charger_limits); });
    case WishPart::drop:
        return in(shares, "%", "3 %", [&](auto const& t) { return put(wish.drop, t, drop_limits); });
    case WishPart::stock:
        return stock(wish, text, understood);
    case WishPart::parts:
        break;
    }
    return {};
}

inline std::string help_with(WishPart part) {
    return part == WishPart::parts ? std::string() : fmt::format("correct `{}`", name(part));
}

inline bool is_needed(WishPart part) {
    return part == WishPart::system || part == WishPart::motor || part == WishPart::run || part == WishPart::runtime;
}

inline std::string WishWords::*words_of(WishPart part) {
    switch (part) {
    case WishPart::system:
        return &WishWords::system;
    case WishPart::motor:
        return &WishWords::motor;
    case WishPart::run:
        return &WishWords::run;
    case WishPart::runtime:
        return &WishWords::runtime;
    case WishPart::throttle:
        return &WishWords::throttle;
    case WishPart::battery:
        return &WishWords::battery;
    case WishPart::chemistry:
        return &WishWords::chemistry;
    case WishPart::charger:
        return &WishWords::charger;
    case WishPart::drop:
        return &WishWords::drop;
    case WishPart::stock:
        return &WishWords::stock;
    case WishPart::parts:
        break;
    }
    throw std::out_of_range("`parts` is not a text of a wish");
}

} // namespace internal::typed

BANKWRIGHT_INLINE std::string& WishWords::of(WishPart part) { return this->*internal::typed::words_of(part); }
BANKWRIGHT_INLINE std::string const& WishWords::of(WishPart part) const {
    return this->*internal::typed::words_of(part);
}

BANKWRIGHT_INLINE ReadWish read_wish(WishWords const& words) {
    using namespace internal::typed;
    ReadWish out;
    Wish wish;
    for (std::size_t p = 0; p < wish_part_names.size(); ++p) {
        auto const part = static_cast<WishPart>(p);
        if (part == WishPart::parts) continue;
        auto const& text = words.of(part);
        if (tokens(text).empty()) {
            if (is_needed(part)) out.problems.push_back({part, "is not stated", fmt::format("state `{}`", name(part))});
            continue;
        }
        std::string understood;
        if (auto problem = take(wish, part, text, understood); !problem.empty())
            out.problems.push_back({part, std::move(problem), help_with(part)});
    }
    if (wish.chemistry && wish.battery && wish.battery->chemistry && wish.battery->chemistry != wish.chemistry)
        out.problems.push_back({WishPart::chemistry,
                                fmt::format("is {}, and the battery asked for is {}", label_name(*wish.chemistry),
                                            label_name(*wish.battery->chemistry)),
                                "leave one of the two out"});
    if (out.problems.empty()) out.wish = std::move(wish);
    return out;
}

BANKWRIGHT_INLINE ReadAnswer read_answer(WishPart part, std::string_view text) {
    using namespace internal::typed;
    ReadAnswer out;
    Wish wish;
    if (tokens(text).empty())
        out.problem = "nothing was said";
    else
        out.problem = take(wish, part, text, out.understood);
    if (!out.problem.empty()) out.help = help_with(part);
    return out;
}

} // namespace bankwright
