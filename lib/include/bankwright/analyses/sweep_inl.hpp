// Bodies of sweep.hpp.
#pragma once

#include "bankwright/analyses/sweep.hpp"
#include "bankwright/analyses/sweep/measure_reader.hpp"
#include "bankwright/analyses/sweep/swept_keys.hpp"
#include "bankwright/analyses/sweep/swept_parameters.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/share_out.hpp"

#include <algorithm>
#include <exception>
#include <limits>
#include <mutex>
#include <stdexcept>

namespace bankwright {

namespace internal::sweeping {

inline std::size_t bank_count(std::vector<SweptKey> const& keys) {
    for (auto const& key : keys)
        if (key.values.size() != keys.front().values.size())
            throw std::invalid_argument(named(key) + " has " + std::to_string(key.values.size()) + " values, " +
                                        named(keys.front()) + " has " + std::to_string(keys.front().values.size()) +
                                        "; each needs one a bank");
    return keys.empty() ? 1 : keys.front().values.size();
}

// A dead battery's emf is a parameter all the same.
inline void keep_every_emf(Network& network) {
    for (auto const& part : network.parts) {
        if (part.kind != PartKind::battery || part.elements.front().index < 0) continue;
        auto& branch = network.circuit.branches[static_cast<std::size_t>(part.elements.front().index)];
        if (branch.emf == 0.0) branch.emf = std::numeric_limits<double>::denorm_min();
    }
}

class Sweep {
public:
    Sweep(Bank const& bank, std::vector<SweptKey> const& keys, std::vector<Measure> const& measures,
          SweepOptions const& options)
        : bank_(bank), keys_(keys), options_(options), answers_(measures.size(), bank_count(keys)) {
        for (auto const& key : keys_)
            specs_.push_back(&spec_of(bank_, key));
        if (answers_.banks() == 0) return;
        refuse_outside_ranges(0, 1);
        for (auto const& key : keys_)
            set(bank_, key, key.values[0]);
        network_ = build(bank_, options_.moment);
        choose(measures);
        keep_every_emf(network_);
        plan_ = solver::compile(network_.circuit, wanted_);
        choose_columns();
    }

    SweepAnswers run() {
        if (answers_.banks() == 0) return std::move(answers_);
        std::mutex guard;
        std::string trouble; // the first, whoever met it: only workers' own threads may throw no further
        solver::share_out((answers_.banks() + wide - 1) / wide, options_.threads,
                          [&](std::size_t first, std::size_t last) {
                              try {
                                  work(first, last);
                              } catch (std::exception const& e) {
                                  std::lock_guard const lock(guard);
                                  if (trouble.empty()) trouble = e.what();
                              }
                          });
        if (!trouble.empty()) throw std::invalid_argument(trouble);
        return std::move(answers_);
    }

private:
    struct Column {
        int parameter;
        double const* values;
    };

    void refuse_outside_ranges(std::size_t first, std::size_t last) const {
        for (std::size_t k = 0; k < keys_.size(); ++k)
            refuse_outside(specs_[k]->range, keys_[k], first, last);
    }

    void choose(std::vector<Measure> const& measures) {
        auto const topology = solver::topology(network_.circuit);
        for (auto const& measure : measures) {
            readers_.push_back(reader_of(measure, network_, topology));
            for (int const node : {readers_.back().high, readers_.back().low})
                if (node >= 0 && std::find(wanted_.begin(), wanted_.end(), node) == wanted_.end())
                    wanted_.push_back(node);
        }
    }

    void choose_columns() {
        for (auto const& key : keys_) {
            auto const parameters = key.part == "system"
                                        ? std::vector<int>{}
                                        : direct_parameters(part_of(network_, key.part), key.key, bank_, plan_);
            direct_ = direct_ && !parameters.empty();
            for (int const parameter : parameters)
                columns_.push_back({parameter, key.values.data()});
        }
    }

    void fill_directly(solver::Block& block, std::size_t begin, std::size_t used) const {
        auto const resistances = static_cast<int>(plan_.pattern.branches.size());
        for (auto const& column : columns_) {
            std::copy_n(column.values + begin, used, block.parameter(column.parameter));
            bool above_zero = true;
            for (std::size_t lane = 0; lane < used; ++lane)
                above_zero &= column.values[begin + lane] > 0.0;
            if (column.parameter < resistances && !above_zero)
                throw std::invalid_argument("a swept resistance is not above 0 ohm");
        }
    }

    void fill_by_physics(solver::Block& block, Parameters& derived, std::size_t begin, std::size_t used) const {
        for (std::size_t lane = 0; lane < used; ++lane) {
            auto const& values = derived.of(begin + lane);
            for (int p = 0; p < plan_.parameters(); ++p)
                block.parameter(p)[lane] = values[static_cast<std::size_t>(p)];
        }
    }

    void work(std::size_t first, std::size_t last) {
        solver::Block block(plan_);
        auto const fixed = solver::parameters_of(plan_, network_.circuit);
        for (int p = 0; p < plan_.parameters(); ++p)
            std::fill_n(block.parameter(p), wide, fixed[static_cast<std::size_t>(p)]);
        Parameters derived(bank_, options_.moment, keys_, plan_);
        auto const banks = answers_.banks();
        for (std::size_t b = first; b < last && !(options_.stop && *options_.stop); ++b) {
            std::size_t const begin = b * wide, used = std::min(wide, banks - begin);
            refuse_outside_ranges(begin, begin + used);
            if (direct_)
                fill_directly(block, begin, used);
            else
                fill_by_physics(block, derived, begin, used);
            block.solve(static_cast<int>(used));
            for (std::size_t m = 0; m < readers_.size(); ++m)
                readers_[m].read(block, static_cast<int>(used), answers_.data() + m * banks + begin);
        }
    }

    Bank bank_; // as the first of the swept ones
    std::vector<SweptKey> const& keys_;
    SweepOptions options_;
    SweepAnswers answers_;
    std::vector<KeySpec const*> specs_;
    Network network_;
    std::vector<Reader> readers_;
    std::vector<int> wanted_;
    solver::BatchPlan plan_;
    std::vector<Column> columns_;
    bool direct_ = true; // every key is a parameter of the solver itself
};

} // namespace internal::sweeping

BANKWRIGHT_INLINE SweepAnswers::SweepAnswers(std::size_t measures, std::size_t banks)
    : banks_(banks), size_(measures * banks), values_(new double[measures * banks]) {}

BANKWRIGHT_INLINE SweepAnswers sweep(Bank const& bank, std::vector<SweptKey> const& keys,
                                     std::vector<Measure> const& measures, SweepOptions const& options) {
    refuse_unfit(options.moment);
    refuse_unfit_threads(options.threads);
    return internal::sweeping::Sweep(bank, keys, measures, options).run();
}

} // namespace bankwright
