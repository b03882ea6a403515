// Where does a published number come from, and how sure is it? Every generated table carries one of these.
#pragma once

#include <string_view>

namespace bankwright {

struct Source {
    std::string_view document;
    std::string_view clause;
    std::string_view edition;
    std::string_view confidence; // read, quoted: where, recalled, derived, common practice
};

} // namespace bankwright
