// The circuits that cases.toml files of the kind "circuits" describe, as the solver takes them. README.md says how.
#pragma once

#include "bankwright/solver/circuit.hpp"

#include <map>
#include <string>
#include <vector>

namespace standards {

// What a path of the source became: its ends, and where its current is found.
struct Path {
    bool is_load = false; // a current source
    std::size_t index = 0;
};

struct NamedCircuit {
    bankwright::solver::Circuit circuit;
    std::map<std::string, int> nodes; // "0" is the reference
    std::map<std::string, Path> paths;
};

// By "source/name", from every file below the folder; throws std::runtime_error where one does not add up.
std::map<std::string, NamedCircuit> read_circuits(std::string const& folder);

} // namespace standards
