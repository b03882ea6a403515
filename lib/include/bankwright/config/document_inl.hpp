// From toml++'s tree to ours: the only file that sees toml++.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/reader/toml.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bankwright {
namespace internal::from_toml {

inline Position position(toml::source_position const& place) {
    return {static_cast<int>(place.line), static_cast<int>(place.column)};
}
inline Region region(toml::source_region const& place) { return {position(place.begin), position(place.end)}; }

inline bool before(Position a, Position b) { return a.line != b.line ? a.line < b.line : a.column < b.column; }

inline void fill(DocumentValue& made, toml::node const& node);

struct Placed {
    Region region; // from the key through the value
    Region value_region;
    std::size_t number; // in toml++'s order
    toml::key const* key;
    toml::node const* node;
};

inline Placed placed(toml::key const& key, toml::node const& node, std::size_t number) {
    auto entry = region(key.source());
    auto value = region(node.source());
    if (before(entry.end, value.begin)) {
        entry.end = value.end;
    } else {
        // The key of a header stands inside it; an implied table has no place but its key's.
        if (!before(entry.begin, value.begin) && !before(value.end, entry.end))
            entry = value;
        else
            value = entry;
    }
    return {entry, value, number, &key, &node};
}

// toml++ sorts a table by key; the author's order is that of the positions.
inline std::vector<DocumentEntry> entries(toml::table const& table) {
    std::vector<Placed> order;
    order.reserve(table.size());
    for (auto const& [key, node] : table)
        order.push_back(placed(key, node, order.size()));
    std::sort(order.begin(), order.end(), [](Placed const& a, Placed const& b) {
        if (before(a.region.begin, b.region.begin)) return true;
        return !before(b.region.begin, a.region.begin) && a.number < b.number;
    });
    std::vector<DocumentEntry> all(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        all[i].key = order[i].key->str();
        all[i].region = order[i].region;
        fill(all[i].value, *order[i].node);
        all[i].value.region = order[i].value_region;
    }
    return all;
}

inline void fill(DocumentValue& made, toml::node const& node) {
    made.region = region(node.source());
    if (auto const* table = node.as_table()) {
        made.entries = entries(*table);
    } else if (auto const* array = node.as_array()) {
        made.kind = DocumentValue::Kind::array;
        made.items.resize(array->size());
        for (std::size_t i = 0; i < made.items.size(); ++i)
            fill(made.items[i], (*array)[i]);
    } else if (auto const* text = node.as_string()) {
        made.kind = DocumentValue::Kind::text;
        made.text = text->get();
    } else if (auto const* integer = node.as_integer()) {
        made.kind = DocumentValue::Kind::integer;
        made.integer = integer->get();
    } else if (auto const* number = node.as_floating_point()) {
        made.kind = DocumentValue::Kind::number;
        made.number = number->get();
    } else if (auto const* boolean = node.as_boolean()) {
        made.kind = DocumentValue::Kind::boolean;
        made.boolean = boolean->get();
    } else if (auto const* date = node.as_date()) {
        made.kind = DocumentValue::Kind::date;
        made.date = {date->get().year, date->get().month, date->get().day};
    } else {
        made.kind = DocumentValue::Kind::time;
    }
}

inline DocumentProblem problem(toml::parse_error const& error) {
    std::string message(error.description());
    if (std::string_view const opening = "Error while parsing "; message.rfind(opening, 0) == 0)
        message = (message[opening.size()] == 'i' ? "in an " : "in a ") + message.substr(opening.size());
    else if (!message.empty() && message.front() >= 'A' && message.front() <= 'Z')
        message.front() = static_cast<char>(message.front() - 'A' + 'a');
    while (!message.empty() && (message.back() == '.' || message.back() == '\n'))
        message.pop_back();
    auto place = region(error.source());
    if (place.begin == place.end) ++place.end.column;
    // A number that does not fit is told where it ends.
    for (std::string_view const why : {"' is not representable", "' could not be interpreted"})
        if (auto const close = message.find(why); close != std::string::npos) {
            auto const number = static_cast<int>(close - message.rfind('\'', close - 1) - 1);
            place.end = place.begin;
            place.begin.column = std::max(1, place.begin.column - number);
        }
    bool const is_header = message.find("in a table header") == 0;
    return {std::move(message), place, {}, is_header};
}

// The name in toml++'s `cannot redefine existing string 'A'`; empty where it says something else.
inline std::string_view redefined_key(std::string_view message) {
    if (message.find("cannot redefine existing") == std::string_view::npos) return {};
    auto const open = message.find('\'');
    auto const close = message.find('\'', open + 1);
    return close == std::string_view::npos ? std::string_view() : message.substr(open + 1, close - open - 1);
}

// The parser stops at a key that stands twice. Where that key begins its line, blanking the line lets it go on, so that
// the rest of the file is read too. Returns the key's place, or none where the line begins with something else.
inline std::optional<Region> blank_line(std::string& text, int line, std::string_view key) {
    std::size_t begin = 0;
    for (int at = 1; at < line; ++at) {
        begin = text.find('\n', begin);
        if (begin == std::string::npos) return std::nullopt;
        ++begin;
    }
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const first = text.find_first_not_of(" \t", begin);
    if (key.empty() || first >= end || text.compare(first, key.size(), key) != 0) return std::nullopt;
    auto const equals = text.find_first_not_of(" \t", first + key.size());
    if (equals >= end || text[equals] != '=') return std::nullopt;
    std::fill(text.begin() + static_cast<std::ptrdiff_t>(begin), text.begin() + static_cast<std::ptrdiff_t>(end), ' ');
    int const column = static_cast<int>(first - begin) + 1;
    return Region{{line, column}, {line, column + static_cast<int>(key.size())}};
}

// Without a name for the text: toml++ keeps one in a function that must not throw, and memory may fail there.
inline std::optional<DocumentProblem> parse(std::string_view text, std::vector<DocumentEntry>& root) {
#if TOML_EXCEPTIONS
    try {
        root = entries(toml::parse(text));
        return std::nullopt;
    } catch (toml::parse_error const& error) {
        return problem(error);
    }
#else
    auto const parsed = toml::parse(text);
    if (!parsed) return problem(parsed.error());
    root = entries(parsed.table());
    return std::nullopt;
#endif
}

} // namespace internal::from_toml

BANKWRIGHT_INLINE Document parse_document(std::string_view given) {
    constexpr std::size_t most_duplicates = 20; // each costs another parse
    Document document;
    std::string text(given);
    while (auto problem = internal::from_toml::parse(text, document.root.entries)) {
        problem->repeats = std::string(internal::from_toml::redefined_key(problem->message));
        auto const place = document.duplicates.size() < most_duplicates
                               ? internal::from_toml::blank_line(text, problem->region.begin.line, problem->repeats)
                               : std::nullopt;
        if (!place) {
            document.error = std::move(problem);
            break;
        }
        problem->region = *place;
        document.duplicates.push_back(std::move(*problem));
    }
    return document;
}

} // namespace bankwright
