// What is a part called, and how are its terminals called, before anything else of it is known?
#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/config/document.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/reader/read_report.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

// One entry of a section that holds parts.
struct Candidate {
    PartKind kind;
    DocumentEntry const* entry;
    bool is_usable = true; // its name is good and its own, and it is a table

    Subject subject() const {
        return {entry->key, fmt::format("{} {}", name(kind), in_backquotes(entry->key)), entry->region};
    }
};

using Names = std::map<std::string, Candidate const*>; // the first part of each name

// Letters, digits and `_`; `-` only between them: a trailing one would read as a terminal's sign.
inline bool is_id(std::string_view id) {
    auto const is_inner = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
    };
    return !id.empty() && id.front() != '-' && id.back() != '-' && std::all_of(id.begin(), id.end(), is_inner);
}

// "bow" of "bow.plug+"
inline std::string_view stem(std::string_view terminal) {
    auto const dot = terminal.find('.');
    if (dot != std::string_view::npos) return terminal.substr(0, dot);
    if (!terminal.empty() && (terminal.back() == '+' || terminal.back() == '-')) terminal.remove_suffix(1);
    return terminal;
}

inline constexpr int most_outputs = static_cast<int>(find_key(section_spec(PartKind::charger), "outputs")->range.most);

template <class Part>
std::vector<std::string> terminals_of_a(Part part, std::string const& id) {
    part.id = id;
    return bankwright::terminals_of(part);
}

// The terminals of a part of which only kind and name are known; of a charger also its number of outputs.
inline std::vector<std::string> terminals_of(PartKind kind, std::string const& id, int outputs) {
    switch (kind) {
    case PartKind::battery:
        return terminals_of_a(Battery(), id);
    case PartKind::jumper:
    case PartKind::cable:
        return {};
    case PartKind::breaker:
    case PartKind::fuse:
        return terminals_of_a(ProtectiveDevice(), id);
    case PartKind::switch_:
        return terminals_of_a(Switch(), id);
    case PartKind::shunt:
        return terminals_of_a(Shunt(), id);
    case PartKind::relay:
        return terminals_of_a(Relay(), id);
    case PartKind::selector:
        return terminals_of_a(Selector(), id);
    case PartKind::converter:
        return terminals_of_a(Converter(), id);
    case PartKind::busbar:
        return terminals_of_a(Busbar(), id);
    case PartKind::connector:
        return terminals_of_a(Connector(), id);
    case PartKind::motor:
        return terminals_of_a(Motor(), id);
    case PartKind::load:
        return terminals_of_a(Load(), id);
    case PartKind::charger: {
        Charger charger;
        charger.outputs = outputs;
        return terminals_of_a(std::move(charger), id);
    }
    }
    return {};
}

} // namespace bankwright::internal::reader
