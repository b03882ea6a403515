// How is a text report shown: in color or not, short or whole?
#pragma once

#include <string>
#include <string_view>

namespace bankwright {

struct TextStyle {
    bool color = false; // only for a terminal
    bool all = false;   // consequences and accepted findings too
};

enum class Ink { error, warning, note, mark, strong };

// Wraps text in the terminal's own control sequences (ECMA-48, SGR).
inline std::string paint(Ink ink, std::string_view text, TextStyle const& style) {
    if (!style.color) return std::string(text);
    std::string_view code;
    switch (ink) {
    case Ink::error:
        code = "1;31";
        break;
    case Ink::warning:
        code = "1;33";
        break;
    case Ink::note:
        code = "1;36";
        break;
    case Ink::mark:
        code = "32";
        break;
    case Ink::strong:
        code = "1";
        break;
    }
    return "\x1b[" + std::string(code) + "m" + std::string(text) + "\x1b[0m";
}

} // namespace bankwright
