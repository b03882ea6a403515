// KLU of SuiteSparse: ordered and factored once, then refactored with the same pattern and pivots.
#include "bench/contenders.hpp"

#include <algorithm>
#include <map>
#include <utility>

#ifdef BENCH_HAS_KLU
#include <klu.h>

namespace bench {

namespace {

class Klu : public Contender {
public:
    explicit Klu(BatchPlan const& plan) : plan_(plan), row_(rows_by_node(plan)), right_(row_.size() - 1) {
        klu_defaults(&common_);
        std::map<std::pair<int, int>, int> entry; // column, row: as the columns are stored
        each_term([&](int row, int column, double, double) { entry[{column, row}] = 0; }, nullptr);
        int last = -1;
        for (auto& [where, place] : entry) {
            for (; last < where.first; ++last)
                first_.push_back(static_cast<int>(rows_.size()));
            place = static_cast<int>(rows_.size());
            rows_.push_back(where.second);
        }
        first_.push_back(static_cast<int>(rows_.size()));
        values_.resize(rows_.size());
        each_term([&](int row, int column, double, double) { place_.push_back(entry[{column, row}]); }, nullptr);
        symbolic_ = klu_analyze(size(), first_.data(), rows_.data(), &common_);
    }
    ~Klu() override {
        klu_free_numeric(&numeric_, &common_);
        klu_free_symbolic(&symbolic_, &common_);
    }
    void solve(double const* parameters, std::size_t count, double* volts) override {
        for (std::size_t i = 0; i < count; ++i) {
            double const* p = parameters + i * static_cast<std::size_t>(plan_.parameters());
            std::fill(values_.begin(), values_.end(), 0.0);
            std::fill(right_.begin(), right_.end(), 0.0);
            auto place = place_.begin();
            each_term([&](int, int, double sign, double g) { values_[static_cast<std::size_t>(*place++)] += sign * g; },
                      p);
            right_[at(row_[at(plan_.pattern.loads[0].plus)])] -= p[plan_.layout.load[0]];
            if (numeric_ == nullptr)
                numeric_ = klu_factor(first_.data(), rows_.data(), values_.data(), symbolic_, &common_);
            else
                klu_refactor(first_.data(), rows_.data(), values_.data(), symbolic_, numeric_, &common_);
            klu_solve(symbolic_, numeric_, size(), 1, right_.data(), &common_);
            for (std::size_t n = 0; n < row_.size(); ++n)
                volts[i * row_.size() + n] = row_[n] < 0 ? 0.0 : right_[at(row_[n])];
        }
    }

private:
    static std::size_t at(int i) { return static_cast<std::size_t>(i); }
    int size() const { return static_cast<int>(right_.size()); }

    // Every term of the matrix in a fixed order; the right-hand side of the sources on the way.
    template <class Add>
    void each_term(Add add, double const* p) {
        for (std::size_t b = 0; b < plan_.pattern.branches.size(); ++b) {
            int const from = row_[at(plan_.pattern.branches[b].from)], to = row_[at(plan_.pattern.branches[b].to)];
            double const g = p ? 1.0 / p[plan_.layout.resistance[b]] : 0.0;
            if (from >= 0) add(from, from, 1.0, g);
            if (to >= 0) add(to, to, 1.0, g);
            if (from >= 0 && to >= 0) add(from, to, -1.0, g), add(to, from, -1.0, g);
            if (!p || plan_.layout.emf[b] < 0) continue;
            double const amps = g * p[plan_.layout.emf[b]];
            if (from >= 0) right_[at(from)] -= amps;
            if (to >= 0) right_[at(to)] += amps;
        }
    }

    BatchPlan const& plan_;
    std::vector<int> row_, first_, rows_, place_;
    std::vector<double> values_, right_;
    klu_common common_{};
    klu_symbolic* symbolic_ = nullptr;
    klu_numeric* numeric_ = nullptr;
};

} // namespace

std::unique_ptr<Contender> make_klu(BatchPlan const& plan, std::string_view name) {
    return name == "klu-refactor" ? std::make_unique<Klu>(plan) : nullptr;
}

} // namespace bench

#else

std::unique_ptr<bench::Contender> bench::make_klu(BatchPlan const&, std::string_view) { return nullptr; }

#endif
