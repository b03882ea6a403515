// Ours, for hypothesis_goals.py: updates of one base, one solve after the other.
#include "bankwright/solver/solve.hpp"
#include "bankwright/solver/variants.hpp"
#include "bench/hypotheses.hpp"
#include "bench/thread_clock.hpp"

#include <cstddef>
#include <limits>
#include <string_view>

using namespace bankwright::solver;

namespace {

struct Ours {
    bench::Hypotheses hypotheses;
    Variants variants{hypotheses.base};
    std::vector<Change> changes;
    std::vector<VariantAnswer> answers;
    std::vector<double> rows;

    Ours() : answers(hypotheses.moved.size()) {
        for (auto const& m : hypotheses.moved)
            changes.push_back({m.branch, m.now});
        rows.resize(changes.size() * static_cast<std::size_t>(variants.width()));
    }

    void run(std::string_view name) {
        if (name == "update") variants.solve(changes.data(), 1, changes.size(), rows.data(), answers.data());
        if (name == "one by one")
            for (std::size_t i = 0; i < changes.size(); ++i) {
                auto const volts = solve(hypotheses.circuits[i]).volts;
                std::copy(volts.begin(), volts.end(), rows.data() + i * static_cast<std::size_t>(variants.width()));
            }
        if (name == "base") variants = Variants(hypotheses.base);
    }
};

} // namespace

extern "C" {

Ours* hypotheses_open() { return new Ours; }
int hypotheses_count(Ours const* ours) { return static_cast<int>(ours->changes.size()); }
int hypotheses_nodes(Ours const* ours) { return ours->hypotheses.base.nodes; }
int hypotheses_width(Ours const* ours) { return ours->variants.width(); }

// How many an update answered, after a run of "update".
int hypotheses_updated(Ours const* ours) {
    int updated = 0;
    for (auto const& answer : ours->answers)
        updated += answer.updated ? 1 : 0;
    return updated;
}
double hypotheses_error(Ours const* ours) { // [V] largest bound
    double worst = 0.0;
    for (auto const& answer : ours->answers)
        worst = answer.error > worst ? answer.error : worst;
    return worst;
}

double const* hypotheses_rows(Ours const* ours) { return ours->rows.data(); }

// Seconds of this thread for `repeats` runs over all of them.
double hypotheses_run(Ours* ours, char const* name, int repeats) {
    double const begin = bench::processor_seconds();
    for (int i = 0; i < repeats; ++i)
        ours->run(name);
    return bench::processor_seconds() - begin;
}
}
