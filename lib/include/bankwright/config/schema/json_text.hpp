// JSON text, built member by member: as much as a schema needs.
#pragma once

#include <string>
#include <string_view>

#include <fmt/format.h>

namespace bankwright {

// Opens and closes objects and arrays; indents; sets commas. A name is empty inside an array.
class JsonText {
public:
    void open(std::string_view name, char bracket) {
        begin(name);
        text_ += bracket;
        closing_ += bracket == '{' ? '}' : ']';
        is_first_ = true;
    }
    void close() {
        char const bracket = closing_.back();
        closing_.pop_back();
        if (!is_first_) new_line();
        text_ += bracket;
        is_first_ = false;
    }
    void text(std::string_view name, std::string_view value) { raw(name, quoted(value)); }
    // A number, true or false, or a value that is JSON already.
    void raw(std::string_view name, std::string_view value) {
        begin(name);
        text_ += value;
    }
    template <class Texts>
    void texts(std::string_view name, Texts const& values) {
        std::string all;
        for (std::string_view const value : values)
            all += (all.empty() ? "" : ", ") + quoted(value);
        raw(name, "[" + all + "]");
    }
    std::string take() { return std::move(text_) + "\n"; }

private:
    static std::string quoted(std::string_view value) {
        std::string out = "\"";
        for (char const c : value) {
            if (c == '"' || c == '\\') out += '\\';
            if (static_cast<unsigned char>(c) < 0x20)
                out += fmt::format("\\u{:04x}", static_cast<unsigned>(c));
            else
                out += c;
        }
        return out + "\"";
    }
    void begin(std::string_view name) {
        if (!closing_.empty()) {
            if (!is_first_) text_ += ',';
            new_line();
        }
        is_first_ = false;
        if (!name.empty()) text_ += quoted(name) + ": ";
    }
    void new_line() { text_ += "\n" + std::string(2 * closing_.size(), ' '); }

    std::string text_;
    std::string closing_; // what is open, outermost first
    bool is_first_ = true;
};

} // namespace bankwright
