// A text beside the bank file that a finding may point into: a part list.
#pragma once

#include <string>

namespace bankwright {

struct SourceText {
    std::string file; // as findings name it
    std::string text;
};

} // namespace bankwright
