// How do swept values reach the solver: as its parameters themselves, or through the physics of their parts?
#pragma once

#include "bankwright/analyses/sweep/swept_keys.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/batch.hpp"

#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright::internal::sweeping {

// A bank's parameters, bank after bank: the parts that sweeping touches are turned into branches anew.
class Parameters {
public:
    Parameters(Bank const& bank, Moment const& moment, std::vector<SweptKey> const& keys, solver::BatchPlan const& plan)
        : bank_(bank), moment_(moment), keys_(keys), plan_(plan), values_(parameters_of(plan, plan.pattern)) {}

    // Of bank `number`. Throws std::invalid_argument where it is wired otherwise than the pattern.
    std::vector<double> const& of(std::size_t number) {
        for (auto const& key : keys_)
            set(bank_, key, key.values[number]);
        try {
            values_ = parameters_of(plan_, build(bank_, moment_).circuit);
        } catch (std::invalid_argument const&) {
            throw std::invalid_argument("bank " + std::to_string(number) +
                                        " is wired otherwise than the first: a resistance of 0 ohm joins, any other "
                                        "does not; sweep above 0 ohm");
        }
        return values_;
    }

private:
    Bank bank_;
    Moment moment_;
    std::vector<SweptKey> const& keys_;
    solver::BatchPlan const& plan_;
    std::vector<double> values_;
};

// The parameters that are the swept value itself; empty where the value works through the part's physics.
inline std::vector<int> direct_parameters(NetworkPart const& part, std::string_view key, Bank const& bank,
                                          solver::BatchPlan const& plan) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    bool const is_resistance = key == "resistance" || (part.kind == PartKind::connector && key == "contact");
    std::vector<int> found;
    for (auto const& element : part.elements) {
        if (element.is == Element::Is::branch && is_resistance) {
            found.push_back(plan.layout.resistance[at(element.index)]);
        } else if (element.is == Element::Is::branch && part.kind == PartKind::battery && key == "emf" &&
                   plan.layout.emf[at(element.index)] >= 0) {
            // Its resistance may still follow from its charge, but not from its emf.
            found.push_back(plan.layout.emf[at(element.index)]);
        } else if (element.is == Element::Is::load && part.kind == PartKind::load &&
                   (key == "current" || key == "power")) {
            found.push_back(plan.layout.load[at(element.index)]);
        }
    }
    // A load has one of three keys: another one than the bank's own makes another load of it.
    if (part.kind == PartKind::load)
        for (auto const& load : bank.loads)
            if (load.id == part.id &&
                int{load.current.has_value()} + int{load.power.has_value()} + int{load.resistance.has_value()} != 1)
                throw std::invalid_argument("`" + load.id + "` would have more than one of current, power, resistance");
    return found;
}

} // namespace bankwright::internal::sweeping
