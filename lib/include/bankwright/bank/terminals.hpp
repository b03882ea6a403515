// Which terminals does a part have, and how are they called?
#pragma once

#include "bankwright/bank/bank.hpp"

#include <string>
#include <utility>
#include <vector>

namespace bankwright {

inline std::vector<std::string> terminals_of(Battery const& b) { return {b.id + "+", b.id + "-"}; }
inline std::vector<std::string> terminals_of(Run const&) { return {}; }
inline std::vector<std::string> terminals_of(ProtectiveDevice const& d) { return {d.id + ".line", d.id + ".load"}; }
inline std::vector<std::string> terminals_of(Switch const& s) { return {s.id + ".1", s.id + ".2"}; }
inline std::vector<std::string> terminals_of(Shunt const& s) { return {s.id + ".1", s.id + ".2"}; }
inline std::vector<std::string> terminals_of(Relay const& r) { return {r.id + ".1", r.id + ".2"}; }
inline std::vector<std::string> terminals_of(Selector const& s) { return {s.id + ".1", s.id + ".2", s.id + ".common"}; }
inline std::vector<std::string> terminals_of(Converter const& c) {
    return {c.id + ".in+", c.id + ".in-", c.id + ".out+", c.id + ".out-"};
}
inline std::vector<std::string> terminals_of(Busbar const& b) { return {b.id}; }
inline std::vector<std::string> terminals_of(Connector const& c) {
    return {c.id + "+", c.id + "-", c.id + ".plug+", c.id + ".plug-"};
}
inline std::vector<std::string> terminals_of(Motor const& m) { return {m.id + "+", m.id + "-"}; }
inline std::vector<std::string> terminals_of(Load const& l) { return {l.id + "+", l.id + "-"}; }
inline std::vector<std::string> terminals_of(Charger const& c) {
    std::vector<std::string> names;
    for (int output = 1; output <= c.outputs.value_or(1); ++output) {
        auto const stem = c.id + "." + std::to_string(output);
        names.push_back(stem + "+");
        names.push_back(stem + "-");
    }
    return names;
}

// Devices that sit straight on a post: line terminal and post.
inline std::vector<std::pair<std::string, std::string>> seats(Bank const& bank) {
    std::vector<std::pair<std::string, std::string>> all;
    for (auto const* devices : {&bank.breakers, &bank.fuses})
        for (auto const& device : *devices)
            if (device.on) all.emplace_back(device.id + ".line", *device.on);
    return all;
}

// Every terminal of the bank, part by part.
inline std::vector<std::string> terminals_of(Bank const& bank) {
    std::vector<std::string> all;
    for_each_part(bank, [&](PartKind, auto const& part) {
        for (auto& name : terminals_of(part))
            all.push_back(std::move(name));
    });
    return all;
}

} // namespace bankwright
