#pragma once

#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/analyses/tolerance/tolerance_spreads.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/monte_carlo.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>
#include <string>
#include <utility>

namespace bankwright {

namespace internal {

inline std::size_t bent_loads(Bank const& bank) { // whose current bends with the voltage
    auto const powers =
        std::count_if(bank.loads.begin(), bank.loads.end(), [](Load const& l) { return l.power.has_value(); });
    return bank.motors.size() + bank.chargers.size() + 2 * bank.converters.size() + static_cast<std::size_t>(powers);
}

// [ns] of one sample, roughly: measured with 1 to 64 motors, and with 3 to 200 parts.
inline double cost_of_sample(Bank const& bank) {
    auto const bent = static_cast<double>(bent_loads(bank));
    return 4.0 * static_cast<double>(part_count(bank)) + 2.0 * bent * bent * bent;
}

class ToleranceStudy {
public:
    ToleranceStudy(Bank const& bank, ToleranceOptions const& options)
        : bank_(bank), options_(options), network_(build(bank, options.moment)) {}

    ToleranceResult run() {
        auto const solution = solver::solve(network_.circuit);
        if (solution.status != solver::Status::solved) return {};
        plan_ = solver::compile(network_.circuit);
        stated_ = solver::parameters_of(plan_, network_.circuit);
        spread_.center = stated_;
        spread_.relative.assign(stated_.size(), 0.0);
        vary_parts();
        choose_gauges();
        result_.solved = true;
        result_.samples = options_.samples;
        // Of a bank without a number, or without anything to read, nothing can spread: all that there is reads 0.
        if (!stated_.empty() && !gauges_.empty()) {
            gather();
            find_worst();
        }
        say_what_floats(solution.island);
        return std::move(result_);
    }

private:
    void vary(int parameter, double least, double most, std::string const& part, char const* key) {
        if (parameter < 0 || !(most > least)) return;
        auto const p = as_index(parameter);
        spread_.center[p] = 0.5 * (least + most);
        spread_.relative[p] = std::abs(0.5 * (most - least) / spread_.center[p]);
        varied_.push_back(parameter);
        result_.varied.push_back({part, key, least, most});
    }

    void vary_resistance(Element const& element, double spread, std::string const& part,
                         char const* key = "resistance") {
        if (element.is != Element::Is::branch) return;
        auto const parameter = plan_.layout.resistance[as_index(element.index)];
        auto const ohms = stated_[as_index(parameter)];
        vary(parameter, ohms * (1.0 - spread), ohms * (1.0 + spread), part, key);
    }

    void vary_parts() {
        SpreadsOfBank const spreads(bank_, options_.spreads);
        for (auto const& battery : bank_.batteries) {
            auto const& element = part_of(network_, battery.id).elements.front();
            vary_resistance(element, spreads.of_resistance(battery), battery.id);
            auto const range = emf_range(battery, spreads, bank_.system.ambient);
            vary(plan_.layout.emf[as_index(element.index)], range.low, range.high, battery.id, "emf");
        }
        for (auto const* runs : {&bank_.jumpers, &bank_.cables})
            for (auto const& run : *runs)
                vary_all(run.conductor.id, spreads.of_conductor(run.conductor));
        for (auto const* devices : {&bank_.breakers, &bank_.fuses})
            for (auto const& device : *devices)
                vary_all(device.id, spreads.of_device(device));
        for (auto const& device : bank_.switches)
            vary_all(device.id, spreads.of_device(device));
        for (auto const& shunt : bank_.shunts)
            vary_all(shunt.id, spreads.of_device(shunt));
        for (auto const& connector : bank_.connectors) {
            auto const& poles = part_of(network_, connector.id).elements;
            for (std::size_t i = 0; i < poles.size(); ++i)
                vary_resistance(poles[i], spreads.of_contact(connector), connector.id,
                                i == 0 ? "positive contact" : "negative contact");
        }
    }

    void vary_all(std::string const& id, double spread) {
        for (auto const& element : part_of(network_, id).elements)
            vary_resistance(element, spread, id);
    }

    void choose_gauges() {
        auto const add = [&](std::string const& id, char const* unit, solver::Gauge gauge) {
            Spreading answer;
            answer.part = id;
            answer.unit = unit;
            result_.answers.push_back(std::move(answer));
            gauges_.push_back(gauge);
        };
        auto const span = [&](std::string const& id) {
            add(id, "V", {solver::Gauge::span_volts, node_of(network_, id + "+"), node_of(network_, id + "-")});
        };
        for (auto const& motor : bank_.motors)
            span(motor.id);
        for (auto const& load : bank_.loads)
            span(load.id);
        for (auto const& battery : bank_.batteries)
            add(battery.id, "A", {solver::Gauge::branch_amps, part_of(network_, battery.id).elements.front().index});
    }

    void say_what_floats(std::vector<int> const& island) {
        constexpr double none = std::numeric_limits<double>::quiet_NaN();
        for (std::size_t g = 0; g < gauges_.size(); ++g) {
            auto const& gauge = gauges_[g];
            if (gauge.kind != solver::Gauge::span_volts) continue;
            if (island[as_index(gauge.number)] == 0 && island[as_index(gauge.other)] == 0) continue;
            auto& answer = result_.answers[g];
            answer = {answer.part, answer.unit, none, none, none, none, none, none, none, {}};
        }
    }

    void gather() {
        solver::MonteCarloOptions options;
        options.seed = options_.seed;
        options.threads = options_.threads;
        auto const statistics = solver::monte_carlo(plan_, spread_, gauges_, options_.samples, options);
        for (std::size_t g = 0; g < gauges_.size(); ++g) {
            auto& answer = result_.answers[g];
            answer.mean = statistics[g].mean;
            answer.deviation = statistics[g].deviation;
            answer.least = statistics[g].least;
            answer.most = statistics[g].most;
            result_.unanswered = options_.samples - statistics[g].count;
        }
    }

    using Rows = std::vector<double>;

    void add_row(Rows& rows, std::vector<double> const& parameters) const {
        rows.insert(rows.end(), parameters.begin(), parameters.end());
    }

    // What every gauge shows for every row: gauge by gauge within a row.
    Rows readings(Rows const& rows) const {
        auto const width = stated_.size();
        auto const count = rows.size() / width;
        auto const nodes = plan_.wanted.size();
        std::vector<double> volts(count * nodes);
        solver::solve_rows(plan_, rows.data(), count, volts.data());
        std::vector<std::size_t> at(as_index(plan_.pattern.nodes), 0);
        for (std::size_t i = 0; i < nodes; ++i)
            at[as_index(plan_.wanted[i])] = i;
        Rows shown;
        for (std::size_t row = 0; row < count; ++row) {
            auto const volts_at = [&](int node) { return volts[row * nodes + at[as_index(node)]]; };
            auto const value = [&](int parameter) { return rows[row * width + as_index(parameter)]; };
            for (auto const& gauge : gauges_) {
                if (gauge.kind == solver::Gauge::span_volts) {
                    shown.push_back(volts_at(gauge.number) - volts_at(gauge.other));
                    continue;
                }
                auto const b = as_index(gauge.number);
                auto const& branch = plan_.pattern.branches[b];
                auto const emf = plan_.layout.emf[b] < 0 ? 0.0 : value(plan_.layout.emf[b]);
                shown.push_back((volts_at(branch.from) - volts_at(branch.to) + emf) /
                                value(plan_.layout.resistance[b]));
            }
        }
        return shown;
    }

    double end_of(int parameter, bool high) const {
        auto const p = as_index(parameter);
        return spread_.center[p] * (1.0 + (high ? 1.0 : -1.0) * spread_.relative[p]);
    }

    // One value at a time to its two ends, then all of them to the ends that push an answer farthest up, and down.
    void find_worst() {
        Rows rows;
        add_row(rows, stated_);
        for (auto const parameter : varied_)
            for (bool const high : {false, true}) {
                auto one = spread_.center;
                one[as_index(parameter)] = end_of(parameter, high);
                add_row(rows, one);
            }
        auto const shown = readings(rows);
        auto const gauges = gauges_.size();
        for (std::size_t g = 0; g < gauges; ++g) {
            auto& answer = result_.answers[g];
            answer.as_stated = shown[g];
            // An end at which more is asked than there is has no answer.
            auto const end_or_stated = [&](std::size_t row) {
                auto const value = shown[row * gauges + g];
                return std::isfinite(value) ? value : answer.as_stated;
            };
            Corner up(varied_.size());
            double squares = 0.0;
            for (std::size_t v = 0; v < varied_.size(); ++v) {
                auto const swing = end_or_stated(2 + 2 * v) - end_or_stated(1 + 2 * v);
                answer.influences.push_back({result_.varied[v].part, result_.varied[v].key, swing, 0.0});
                squares += swing * swing;
                up[v] = swing > 0.0;
            }
            for (auto& influence : answer.influences)
                if (squares > 0.0) influence.share = influence.swing * influence.swing / squares;
            // What differs by rounding alone stays in the bank's order.
            auto const rank = [](Influence const& one) { return std::llround(one.share * 1e9); };
            std::stable_sort(answer.influences.begin(), answer.influences.end(),
                             [&](Influence const& a, Influence const& b) { return rank(a) > rank(b); });
            auto down = up;
            down.flip();
            // The samples come first: a corner without an answer compares as false.
            answer.worst_most = std::max(answer.most, farthest(g, std::move(up), 1.0));
            answer.worst_least = std::min(answer.least, farthest(g, std::move(down), -1.0));
        }
    }

    using Corner = std::vector<bool>; // by varied value: at its most

    Rows row_of(Corner const& corner) const {
        auto row = spread_.center;
        for (std::size_t v = 0; v < corner.size(); ++v)
            row[as_index(varied_[v])] = end_of(varied_[v], corner[v]);
        return row;
    }

    // The answer at the corner from which no single value's other end leads farther (`sign` 1: up, -1: down). Which way
    // a value pushes may turn on the way: the resistance of a battery that is charged at the center, and gives at the
    // corner. Each round goes farther, so that it ends.
    double farthest(std::size_t gauge, Corner corner, double sign) {
        auto const gauges = gauges_.size();
        auto reached = readings(row_of(corner))[gauge];
        while (rows_left_ > varied_.size()) {
            rows_left_ -= varied_.size();
            Rows rows;
            for (std::size_t v = 0; v < corner.size(); ++v) {
                auto other = corner;
                other[v] = !other[v];
                add_row(rows, row_of(other));
            }
            auto const shown = readings(rows);
            auto const gain = [&](std::size_t v) { return sign * (shown[v * gauges + gauge] - reached); };
            auto const least = 1e-12 * (1.0 + std::abs(reached)); // rounding is no gain
            auto all = corner;
            std::size_t best = corner.size();
            for (std::size_t v = 0; v < corner.size(); ++v) {
                if (!(gain(v) > least)) continue;
                all[v] = !all[v];
                if (best == corner.size() || gain(v) > gain(best)) best = v;
            }
            if (best == corner.size()) break;
            auto const together = readings(row_of(all))[gauge];
            if (sign * (together - reached) >= gain(best)) {
                corner = std::move(all);
                reached = together;
            } else {
                corner[best] = !corner[best];
                reached = shown[best * gauges + gauge];
            }
        }
        return reached;
    }

    Bank const& bank_;
    ToleranceOptions options_;
    Network network_;
    solver::BatchPlan plan_;
    std::vector<double> stated_; // parameters as the file says
    solver::Spread spread_;
    std::vector<int> varied_; // parameters
    std::vector<solver::Gauge> gauges_;
    ToleranceResult result_;
    // Banks to solve in search of corners, about half a second's work. Beyond them, with hundreds of batteries or
    // dozens of motors, the corner that the center points to is kept, or the samples.
    std::size_t rows_left_ = static_cast<std::size_t>(std::min(1e6, 5e8 / cost_of_sample(bank_)));
};

} // namespace internal

BANKWRIGHT_INLINE void refuse_unfit(Spreads const& spreads) {
    auto const judge = [](std::string_view name, Spread spread) { refuse_if(spread_problem(spread), name, spread); };
    judge("spread of resistance", spreads.resistance);
    judge("spread of charge", spreads.charge);
    judge("spread of capacity", spreads.capacity);
    judge("spread of conductor", spreads.conductor);
    judge("spread of joint", spreads.joint);
    judge("spread of contact", spreads.contact);
}

BANKWRIGHT_INLINE void refuse_unfit(ToleranceOptions const& options) {
    refuse_unfit(options.moment);
    refuse_unfit(options.spreads);
    refuse_unfit_samples(options.samples, 1, option_limits::most_samples);
    refuse_unfit_threads(options.threads);
}

BANKWRIGHT_INLINE std::size_t usual_samples(Bank const& bank) {
    constexpr double work = 5e8; // [ns]
    return static_cast<std::size_t>(std::clamp(work / internal::cost_of_sample(bank), 200.0, 1e5));
}

BANKWRIGHT_INLINE std::optional<std::string> too_many_to_vary(Bank const& bank) {
    constexpr std::size_t most = 128;
    auto const found = internal::bent_loads(bank);
    if (found <= most) return std::nullopt;
    return std::to_string(found) + " motors, chargers and loads of constant power are too many to vary; at most " +
           std::to_string(most) + " are";
}

BANKWRIGHT_INLINE ToleranceResult tolerance(Bank const& bank, ToleranceOptions const& options) {
    refuse_unfit(options);
    if (auto const problem = too_many_to_vary(bank)) throw std::invalid_argument(*problem);
    return internal::ToleranceStudy(bank, options).run();
}

BANKWRIGHT_INLINE Bank sample_bank(Bank const& bank, Spreads const& usual, std::uint64_t seed, std::uint64_t number) {
    refuse_unfit(usual);
    std::seed_seq both{static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32),
                       static_cast<std::uint32_t>(number), static_cast<std::uint32_t>(number >> 32)};
    std::mt19937_64 random(both);
    // -1 to 1, from the raw bits, so that every standard library gives the same.
    auto const draw = [&] { return static_cast<double>(random() >> 11) * 0x1p-52 - 1.0; };
    SpreadsOfBank const spreads(bank, usual);
    auto const ambient = bank.system.ambient;
    auto drawn = bank;
    auto const worn = Health::of(1.0 - unknown_wear * 0.5 * (1.0 + draw())); // batteries of one bank age together
    for (auto& battery : drawn.batteries) {
        auto const resistance = internal_resistance(battery, ambient);
        auto const points = spreads.of_charge(battery) * draw();
        auto const emf = spreads.of_emf(battery) * draw();
        if (battery.emf)
            battery.emf = *battery.emf * (1.0 + emf);
        else
            battery.charge = StateOfCharge::of(
                std::clamp(battery.charge.value_or(StateOfCharge::of(1.0)).value() + points, 0.0, 1.0));
        battery.resistance = resistance * (1.0 + spreads.of_resistance(battery) * draw());
        auto const capacity = 1.0 + spreads.of_capacity(battery) * draw();
        auto const bent = draw();
        if (!battery.capacity) continue;
        battery.capacity = *battery.capacity * capacity;
        if (!battery.health && !has_weak_cell(battery)) battery.health = worn;
        if (battery.reserve) battery.reserve = *battery.reserve * capacity;
        if (battery.reserve || !battery.chemistry) continue;
        auto const range = usual_exponent(*battery.chemistry);
        battery.reserve = reserve_at_exponent(
            battery, range.usual + bent * (bent < 0.0 ? range.usual - range.low : range.high - range.usual));
    }
    for (auto* runs : {&drawn.jumpers, &drawn.cables})
        for (auto& run : *runs)
            run.conductor.resistance = resistance(run.conductor, ambient, bank.system.joint) *
                                       (1.0 + spreads.of_conductor(run.conductor) * draw());
    auto const device = [&](auto& one) {
        auto const factor = 1.0 + spreads.of_device(one) * draw();
        if (one.resistance) one.resistance = *one.resistance * factor;
    };
    for (auto* devices : {&drawn.breakers, &drawn.fuses})
        for (auto& one : *devices)
            device(one);
    for (auto& one : drawn.switches)
        device(one);
    for (auto& one : drawn.shunts)
        device(one);
    for (auto& connector : drawn.connectors) {
        auto const factor = 1.0 + spreads.of_contact(connector) * draw();
        if (connector.contact) connector.contact = *connector.contact * factor;
    }
    return drawn;
}

} // namespace bankwright
