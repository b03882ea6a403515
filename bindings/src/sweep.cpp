#include "sweep.hpp"

#include "bankwright/config/keys.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/to_branches.hpp"
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/share_out.hpp"
#include "sweep_fields.hpp"
#include "sweep_reader.hpp"

#include <algorithm>
#include <limits>
#include <mutex>
#include <stdexcept>

namespace bankwright::python {

namespace {

std::string named(SweptKey const& key) { return "`" + key.part + "." + key.key + "`"; }

// The part of that name with its section's keys.
KeySpec const& spec_of(Bank const& bank, SweptKey const& key) {
    SectionSpec const* section = key.part == "system" ? &system_section : nullptr;
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        if (id_of(part) == key.part) section = &section_spec(kind);
    });
    if (!section) throw std::out_of_range("the bank has no part `" + key.part + "`");
    auto const* const spec = find_key(*section, key.key);
    if (!spec) throw std::out_of_range("there is no key " + named(key));
    if (!is_quantity(spec->kind)) throw std::invalid_argument(named(key) + " is no quantity: it cannot be swept");
    return *spec;
}

void refuse_outside(Range const& range, SweptKey const& key, std::size_t first, std::size_t last) {
    bool sound = true; // without a branch a value: nearly always all are
    for (std::size_t bank = first; bank < last; ++bank)
        sound &= range.holds(key.values[bank]);
    for (std::size_t bank = first; !sound && bank < last; ++bank)
        if (!range.holds(key.values[bank]))
            throw std::invalid_argument(named(key) + " is out of its range in bank " + std::to_string(bank) + ": " +
                                        std::to_string(key.values[bank]) + " in SI");
}

void set(Bank& bank, SweptKey const& key, double value) {
    if (key.part == "system") {
        set_in_si(bank.system, key.key, value);
        return;
    }
    for_each_part(bank, [&](PartKind, auto& part) {
        if (id_of(part) == key.part) set_in_si(part, key.key, value);
    });
}

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
std::vector<int> direct_parameters(NetworkPart const& part, std::string_view key, Bank const& bank,
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

} // namespace

Numbers sweep(ReadBank const& read, MomentWords const& words, std::vector<SweptKey> const& keys, std::size_t banks,
              std::vector<Measure> const& measures, int threads) {
    Bank bank = read.whole();
    auto const moment = moment_of(words);
    std::vector<KeySpec const*> specs;
    for (auto const& key : keys)
        specs.push_back(&spec_of(bank, key));
    Numbers answers(measures.size() * banks);
    if (banks == 0) return answers;
    for (std::size_t k = 0; k < keys.size(); ++k) {
        refuse_outside(specs[k]->range, keys[k], 0, 1);
        set(bank, keys[k], keys[k].values[0]);
    }
    auto network = build(bank, moment);
    auto const topology = solver::topology(network.circuit);
    std::vector<Reader> readers;
    std::vector<int> wanted;
    for (auto const& measure : measures) {
        readers.push_back(reader_of(measure, network, topology));
        for (int node : {readers.back().high, readers.back().low})
            if (node >= 0 && std::find(wanted.begin(), wanted.end(), node) == wanted.end()) wanted.push_back(node);
    }
    for (auto& branch : network.circuit.branches) // a dead battery's emf is a parameter all the same
        for (auto const& part : network.parts)
            if (part.kind == PartKind::battery && part.elements.front().index >= 0 &&
                &network.circuit.branches[static_cast<std::size_t>(part.elements.front().index)] == &branch &&
                branch.emf == 0.0)
                branch.emf = std::numeric_limits<double>::denorm_min();
    auto const plan = solver::compile(network.circuit, wanted);
    auto const fixed = solver::parameters_of(plan, network.circuit);

    struct Column {
        int parameter;
        double const* values;
    };
    std::vector<Column> columns;
    bool direct = true;
    for (auto const& key : keys) {
        auto const parameters = key.part == "system"
                                    ? std::vector<int>{}
                                    : direct_parameters(part_of(network, key.part), key.key, bank, plan);
        direct = direct && !parameters.empty();
        for (int parameter : parameters)
            columns.push_back({parameter, key.values});
    }

    std::mutex guard;
    std::string trouble;
    auto const resistances = static_cast<int>(plan.pattern.branches.size());
    solver::share_out((banks + wide - 1) / wide, threads, [&](std::size_t first, std::size_t last) {
        try {
            solver::Block block(plan);
            for (int p = 0; p < plan.parameters(); ++p)
                std::fill_n(block.parameter(p), wide, fixed[static_cast<std::size_t>(p)]);
            Parameters derived(bank, moment, keys, plan);
            for (std::size_t b = first; b < last; ++b) {
                std::size_t const begin = b * wide, used = std::min(wide, banks - begin);
                for (std::size_t k = 0; k < keys.size(); ++k)
                    refuse_outside(specs[k]->range, keys[k], begin, begin + used);
                if (direct) {
                    for (auto const& column : columns) {
                        std::copy_n(column.values + begin, used, block.parameter(column.parameter));
                        bool above_zero = true;
                        for (std::size_t lane = 0; lane < used; ++lane)
                            above_zero &= column.values[begin + lane] > 0.0;
                        if (column.parameter < resistances && !above_zero)
                            throw std::invalid_argument("a swept resistance is not above 0 ohm");
                    }
                } else {
                    for (std::size_t lane = 0; lane < used; ++lane) {
                        auto const& values = derived.of(begin + lane);
                        for (int p = 0; p < plan.parameters(); ++p)
                            block.parameter(p)[lane] = values[static_cast<std::size_t>(p)];
                    }
                }
                block.solve(static_cast<int>(used));
                for (std::size_t m = 0; m < readers.size(); ++m)
                    readers[m].read(block, static_cast<int>(used), answers.data() + m * banks + begin);
            }
        } catch (std::exception const& e) {
            std::lock_guard const lock(guard);
            if (trouble.empty()) trouble = e.what();
        }
    });
    if (!trouble.empty()) throw std::invalid_argument(trouble);
    return answers;
}

} // namespace bankwright::python
