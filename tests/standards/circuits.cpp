#include "standards/circuits.hpp"

#include "bankwright/config/reader/toml.hpp"

#include <filesystem>
#include <stdexcept>

namespace standards {
namespace {

namespace solver = bankwright::solver;

int node_named(NamedCircuit& named, std::string const& name) {
    return named.nodes.emplace(name, static_cast<int>(named.nodes.size())).first->second;
}

// A number, or the sum of several in series.
double total(toml::node const& cell, std::string const& where) {
    if (auto const number = cell.value<double>()) return *number;
    auto const* several = cell.as_array();
    if (!several) throw std::runtime_error(where + ": a number or a list of numbers is wanted");
    double sum = 0.0;
    for (auto const& part : *several)
        sum += total(part, where);
    return sum;
}

void add_rows(NamedCircuit& named, toml::array const* rows, bool is_load, std::string const& where) {
    if (!rows) return;
    for (auto const& node : *rows) {
        auto const* row = node.as_array();
        if (!row || row->size() < 4) throw std::runtime_error(where + ": a row is name, from, to and numbers");
        auto const word = [&](std::size_t i) { return (*row)[i].value<std::string>().value(); };
        int const from = node_named(named, word(1)), to = node_named(named, word(2));
        double const first = total((*row)[3], where);
        auto& circuit = named.circuit;
        auto const index = is_load ? circuit.loads.size() : circuit.branches.size();
        if (is_load)
            circuit.loads.push_back({from, to, solver::ConstantCurrent{first}});
        else
            circuit.branches.push_back({from, to, first, row->size() > 4 ? total((*row)[4], where) : 0.0});
        if (!named.paths.emplace(word(0), Path{is_load, index}).second)
            throw std::runtime_error(where + ": two paths of the name " + word(0));
    }
}

} // namespace

std::map<std::string, NamedCircuit> read_circuits(std::string const& folder) {
    std::map<std::string, NamedCircuit> all;
    for (auto const& entry : std::filesystem::directory_iterator(folder)) {
        auto const path = entry.path() / "cases.toml";
        if (!std::filesystem::exists(path)) continue;
        auto const file = toml::parse_file(path.string());
        auto const* circuits = file["circuits"].as_table();
        if (!circuits) continue;
        for (auto const& [name, node] : *circuits) {
            auto const key = entry.path().filename().string() + "/" + std::string(name.str());
            auto const& table = *node.as_table();
            NamedCircuit named;
            node_named(named, "0");
            add_rows(named, table["branches"].as_array(), false, key);
            add_rows(named, table["current_sources"].as_array(), true, key);
            named.circuit.nodes = static_cast<int>(named.nodes.size());
            all.emplace(key, std::move(named));
        }
    }
    return all;
}

} // namespace standards
