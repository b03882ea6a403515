// What may be typed after a command, as data: its name, its kind, its help, and where what was typed goes. The command
// line turns it into options of the parser; no command needs to know which parser that is.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

// Reads what was typed. Empty if all is well, else the problem, for the user.
using Reader = std::function<std::string(std::string const& typed)>;

namespace option {

struct Flag {
    std::function<void()> take;
};
struct Text {
    std::string& target;
};
struct FileName { // "" names none
    std::string& target;
};
struct Texts { // as many as there are
    std::vector<std::string>& target;
};
struct Typed { // has a grammar of its own
    Reader read;
};
struct List { // with commas between; `read` gets one at a time
    Reader read;
};
struct Choice {
    std::vector<std::string> words;
    std::string usual;                                 // what help shows as such; empty: none
    std::function<void(std::string const& word)> take; // of the one that was typed
};
template <class Integer>
struct Whole {
    Integer& target;
    Integer least, most;
};
struct Seed { // any whole number
    std::uint64_t& target;
};

using Kind = std::variant<Flag, Text, FileName, Texts, Typed, List, Choice, Whole<int>, Whole<std::size_t>, Seed>;

} // namespace option

struct Option {
    std::string names; // "--format", "--output,-o"; without dashes ("file") its place counts
    option::Kind kind;
    std::string help;
    std::string stands_for{}; // what help shows for a value: "FILE"
    bool is_required = false;
    std::vector<std::string> excludes{}; // names of options above it
};

inline option::Flag flag(bool& target) {
    return {[&target] { target = true; }};
}

// A choice among words that each mean a value.
template <class Target, class Value>
option::Choice choice(Target& target, std::vector<std::pair<std::string, Value>> meanings, std::string usual = {}) {
    std::vector<std::string> words;
    for (auto const& [word, value] : meanings)
        words.push_back(word);
    auto take = [&target, meanings = std::move(meanings)](std::string const& typed) {
        for (auto const& [word, value] : meanings)
            if (word == typed) target = value;
    };
    return {std::move(words), std::move(usual), std::move(take)};
}
