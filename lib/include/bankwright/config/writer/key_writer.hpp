// The keys of one part, as they stand in a file.
#pragma once

#include "bankwright/config/fields.hpp"
#include "bankwright/config/schema/key_words.hpp"
#include "bankwright/units/print.hpp"

#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::writing {

// A TOML basic string.
inline std::string toml_string(std::string_view text) {
    std::string out = "\"";
    for (char const c : text) {
        auto const byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\')
            out += fmt::format("\\{}", c);
        else if (byte < 0x20 || byte == 0x7F)
            out += fmt::format("\\u{:04X}", byte);
        else
            out += c;
    }
    return out + "\"";
}

inline std::string key_of(std::string_view name) {
    bool is_bare = !name.empty();
    for (char const c : name)
        is_bare = is_bare &&
                  ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-');
    return is_bare ? std::string(name) : toml_string(name);
}

// Collects `key = value` for every member that is set.
class KeyWriter {
public:
    explicit KeyWriter(SectionSpec const& section) : section_(section) {}
    // With the tolerances of one part.
    KeyWriter(SectionSpec const& section, std::vector<Tolerance> const& tolerances, std::string_view part)
        : section_(section), tolerances_(&tolerances), part_(part) {}

    template <class T>
    void operator()(std::string_view name, std::optional<T> const& member) {
        if (member) (*this)(name, *member);
    }
    void operator()(std::string_view name, TwoWords<std::optional<bool> const> member) {
        if (member.is_first) add(name, toml_string(member.words[*member.is_first ? 0 : 1]));
    }
    template <class T>
    void operator()(std::string_view name, T const& member) {
        if constexpr (std::is_same_v<T, bool>)
            add(name, member ? "true" : "false");
        else if constexpr (std::is_same_v<T, int>)
            add(name, fmt::format("{}", member));
        else if constexpr (std::is_same_v<T, std::string>)
            add(name, toml_string(member));
        else if constexpr (std::is_same_v<T, Date>)
            add(name, fmt::format("{:04}-{:02}-{:02}", member.year, member.month, member.day));
        else if constexpr (std::is_same_v<T, std::vector<TripLimit>>)
            add(name, trips(member));
        else if constexpr (std::is_same_v<T, std::vector<WireSize>>)
            add(name, sizes(member));
        else if constexpr (std::is_same_v<T, Dimensions>)
            add(name, toml_string(print_exact(member)));
        else if constexpr (std::is_same_v<T, Price>)
            add(name, toml_string(print(member)));
        else if constexpr (std::is_enum_v<T>)
            add(name, toml_string(find_key(section_, name)->choices[static_cast<std::size_t>(member)]));
        else if (std::isfinite(internal::key_words::in_si(member)))
            add(name, toml_string(print_exact(member) + tolerance_of(name)));
        else
            throw std::invalid_argument(fmt::format("`{}` is infinite or not a number", name));
    }

    std::string inline_table() const {
        return lines_.empty() ? "{}" : fmt::format("{{ {} }}", fmt::join(lines_, ", "));
    }
    std::string lines() const { return fmt::format("{}\n", fmt::join(lines_, "\n")); }
    std::vector<std::string> const& each() const { return lines_; } // `key = value`

private:
    static std::string trips(std::vector<TripLimit> const& points) {
        std::vector<std::string> rows;
        for (auto const& point : points)
            rows.push_back(fmt::format("[\"{}\", \"{}\", \"{}\"]", print_exact(Ratio::of(point.multiple)),
                                       print_exact(point.at_least), print_exact(point.at_most)));
        return fmt::format("[{}]", fmt::join(rows, ", "));
    }

    static std::string sizes(std::vector<WireSize> const& all) {
        std::vector<std::string> texts;
        for (auto const& size : all)
            texts.push_back(toml_string(print_exact(size)));
        return fmt::format("[{}]", fmt::join(texts, ", "));
    }

    std::string tolerance_of(std::string_view name) const {
        if (tolerances_)
            for (auto const& tolerance : *tolerances_)
                if (tolerance.part == part_ && tolerance.key == name) return " +/- " + print_exact(tolerance.spread);
        return {};
    }

    void add(std::string_view name, std::string_view value) { lines_.push_back(fmt::format("{} = {}", name, value)); }

    SectionSpec const& section_;
    std::vector<Tolerance> const* tolerances_ = nullptr;
    std::string_view part_;
    std::vector<std::string> lines_;
};

} // namespace bankwright::internal::writing
