// Which terminals may a conductor be landed on, and what was meant by a name that is none of them?
#pragma once

#include "bankwright/config/reader/read_names.hpp"
#include "bankwright/config/reader/read_report.hpp"

#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

class Terminals {
public:
    void add(std::string terminal) {
        if (known_.insert(terminal).second) all_.push_back(std::move(terminal));
    }
    // Lets every terminal of a part pass, since its kind is not known.
    void excuse(std::string const& id) { excused_.insert(id); }

    bool allows(std::string const& terminal) const {
        return known_.count(terminal) || excused_.count(std::string(stem(terminal)));
    }

    std::string hint(std::string const& terminal, Names const& ids, Report& report) const {
        auto const part = ids.find(std::string(stem(terminal)));
        if (part == ids.end())
            return help_with(report.nearest(terminal, all_),
                             "name a terminal of a part in this file: `A+` of a battery, `CB.line` of a breaker");
        std::vector<std::string_view> names;
        for (auto const& name : all_)
            if (stem(name) == part->first) names.push_back(name);
        if (names.empty())
            return fmt::format("{} is a {}: it has no terminals of its own; name what it is landed on",
                               in_backquotes(part->first), name(part->second->kind));
        return fmt::format("the terminals of {} are {}", part->first, listed(names, " and "));
    }

private:
    std::vector<std::string> all_; // in the author's order
    std::unordered_set<std::string> known_;
    std::unordered_set<std::string> excused_;
};

} // namespace bankwright::internal::reader
