// A message is words and, between backquotes, names of parts and terminals: which is which?
#pragma once

#include <string>
#include <string_view>

namespace bankwright {

// Calls visit(piece, is_name) for each, in order. Two names that are joined by " -J1- ", as the message of a loop has
// them, come joined by arrows.
template <class Visit>
void for_each_piece(std::string_view message, Visit&& visit) {
    constexpr std::string_view arrow = " \u2192 ";
    bool is_name = false;
    for (std::size_t at = 0;; is_name = !is_name) {
        auto const end = message.find('`', at);
        auto const piece = message.substr(at, end == std::string_view::npos ? end : end - at);
        if (!is_name && piece.size() > 4 && piece.substr(0, 2) == " -" && piece.substr(piece.size() - 2) == "- ") {
            visit(arrow, false);
            visit(piece.substr(2, piece.size() - 4), false);
            visit(arrow, false);
        } else if (!piece.empty()) {
            visit(piece, is_name);
        }
        if (end == std::string_view::npos) return;
        at = end + 1;
    }
}

// The message where names need no marks.
inline std::string without_quotes(std::string_view message) {
    std::string text;
    for_each_piece(message, [&](std::string_view piece, bool) { text += piece; });
    return text;
}

} // namespace bankwright
