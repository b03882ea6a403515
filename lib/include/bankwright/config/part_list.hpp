// Where does the reader get the part lists that a bank file names? From its caller: the library reads no files.
#pragma once

#include <functional>
#include <string>

namespace bankwright {

struct PartListText {
    std::string file; // how findings shall name it: a path that the user can open
    std::string text;
    std::string trouble; // why there is no text, going on after "part list `parts.toml` "; empty if there is one
};

// Asked once for each entry of `parts`, with the path as it stands there: relative to the bank file, never absolute,
// but it may hold `..`, and what it leads to may be a link. Whoever answers decides what may be read.
using PartListSource = std::function<PartListText(std::string const& path)>;

} // namespace bankwright
