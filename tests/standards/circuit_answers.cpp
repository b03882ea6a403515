#include "standards/circuit_answers.hpp"

#include "bankwright/solver/solve.hpp"
#include "standards/circuits.hpp"

#include <functional>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace standards {
namespace {

using namespace bankwright::solver;

NamedCircuit const& circuit_of(Case const& c) {
    static auto const all = read_circuits(BANKWRIGHT_SOURCE_DIR "/tests/standards");
    return all.at(c.source + "/" + c.word("circuit"));
}

Solution solved(Circuit const& circuit) {
    auto solution = solve(circuit);
    if (solution.status != Status::solved) throw std::runtime_error("a circuit of a book is not solved");
    return solution;
}

// "a + b - c" in parts with their signs; a name may hold spaces.
std::vector<std::pair<double, std::string>> parts_of(std::string const& text) {
    std::vector<std::pair<double, std::string>> parts{{1.0, ""}};
    std::istringstream words(text);
    for (std::string word; words >> word;) {
        auto& name = parts.back().second;
        if (word == "+" || word == "-")
            parts.emplace_back(word == "+" ? 1.0 : -1.0, "");
        else
            name += (name.empty() ? "" : " ") + word;
    }
    return parts;
}

template <class Of>
double combined(std::string const& text, Of const& of) {
    double sum = 0.0;
    for (auto const& [sign, name] : parts_of(text))
        sum += sign * of(name);
    return sum;
}

// The answer of a path, from its current and, if it is no current source, its branch.
template <class Of>
double of_paths(Case const& c, Of const& of) {
    auto const& named = circuit_of(c);
    auto const solution = solved(named.circuit);
    return combined(c.word("of"), [&](std::string const& name) {
        auto const path = named.paths.at(name);
        if (path.is_load) return of(solution.load_amps[path.index], Branch{});
        return of(solution.branch_amps[path.index], named.circuit.branches[path.index]);
    });
}

double voltage(NamedCircuit const& named, Circuit const& circuit, std::string const& of) {
    auto const solution = solved(circuit);
    return combined(
        of, [&](std::string const& name) { return solution.volts[static_cast<std::size_t>(named.nodes.at(name))]; });
}

// The two nodes of "a - b".
std::pair<int, int> between(NamedCircuit const& named, std::string const& of) {
    auto const parts = parts_of(of);
    if (parts.size() != 2 || parts[1].first > 0.0) throw std::out_of_range("`of` is two nodes: a - b");
    return {named.nodes.at(parts[0].second), named.nodes.at(parts[1].second)};
}

using Answers = std::map<std::string, std::function<double(Case const&)>>;

Answers const answers{
    {"current", [](Case const& c) { return of_paths(c, [](double amps, Branch const&) { return amps; }); }},
    {"voltage", [](Case const& c) { return voltage(circuit_of(c), circuit_of(c).circuit, c.word("of")); }},
    // across and in a resistor of a path, or all of its resistors
    {"drop",
     [](Case const& c) {
         return of_paths(c, [&](double amps, Branch const& b) { return amps * c.number("ohms", b.resistance); });
     }},
    {"heat",
     [](Case const& c) {
         return of_paths(c, [&](double amps, Branch const& b) { return amps * amps * c.number("ohms", b.resistance); });
     }},
    // by the sources of a path, into the circuit
    {"power_given",
     [](Case const& c) { return of_paths(c, [](double amps, Branch const& b) { return amps * b.emf; }); }},
    // seen from two nodes with every source at rest: what one ampere makes there
    {"resistance",
     [](Case const& c) {
         auto still = circuit_of(c).circuit;
         for (Branch& b : still.branches)
             b.emf = 0.0;
         auto const [plus, minus] = between(circuit_of(c), c.word("of"));
         still.loads = {{minus, plus, ConstantCurrent{1.0}}};
         return voltage(circuit_of(c), still, c.word("of"));
     }},
    {"short_circuit_current",
     [](Case const& c) {
         auto shorted = circuit_of(c).circuit;
         auto const [plus, minus] = between(circuit_of(c), c.word("of"));
         shorted.joins = {{plus, minus}};
         return solved(shorted).join_amps[0];
     }},
    // the most that two nodes can give, from the share that is reached of a power far beyond it
    {"most_power",
     [](Case const& c) {
         double const beyond = 100.0 * c.value;
         auto asked = circuit_of(c).circuit;
         auto const [plus, minus] = between(circuit_of(c), c.word("of"));
         asked.loads = {{plus, minus, ConstantPower{beyond}}};
         auto const solution = solve(asked);
         return solution.status == Status::no_operating_point ? solution.reachable_share * beyond : beyond;
     }},
};

} // namespace

double circuit_answer(Case const& one) {
    double const milli = one.unit.size() > 1 && one.unit[0] == 'm' ? 1e3 : 1.0;
    return milli * answers.at(one.quantity)(one);
}

} // namespace standards
