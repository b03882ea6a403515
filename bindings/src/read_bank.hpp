// A bank as Python holds it: its text, read and checked once, and never changed.
#pragma once

#include "bankwright/network/moment.hpp"
#include "bankwright/rules/inspect.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bankwright::python {

using PartLists = std::map<std::string, std::string>; // by the path that stands in `parts`: the text there

struct ReadBank {
    ReadBank(std::string text, std::string file, PartLists part_lists);

    PartLists part_lists;
    Inspection seen; // its file is the name that answers bear

    Inspection inspect_for(CheckOptions const& rules) const;
    Bank const& whole() const; // throws Refused unless all of it could be understood
};

// The bank cannot be used as written; the text is the JSON document "findings".
struct Refused {
    std::string findings;
};

// What the loads do, as Python says it: "as_described" with a throttle or not, "rest", or a current [A].
struct MomentWords {
    std::optional<double> throttle; // 0..1
    std::optional<double> current;  // [A]
    bool rest = false;
};
Moment moment_of(MomentWords const& words);

} // namespace bankwright::python
