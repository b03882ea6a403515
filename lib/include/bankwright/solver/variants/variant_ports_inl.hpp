// Bodies of variant_ports.hpp. The bound is that of variant_lanes_inl.hpp, in norms.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/loads/port_loads.hpp"
#include "bankwright/solver/loads/ports.hpp"
#include "bankwright/solver/variants/variant_ports.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <Eigen/Dense>

namespace bankwright::solver {

namespace internal {

// The small system of a variant, factorized: extra currents for any voltages between the pairs of its terms.
class SmallSystem {
public:
    SmallSystem(BaseInverse const& base, VariantTerm const* terms, int count) : base_(base), terms_(terms) {
        Eigen::MatrixXd m = Eigen::MatrixXd::Identity(count, count);
        wrong_ = Eigen::MatrixXd::Zero(count, count);
        for (int i = 0; i < count; ++i)
            for (int j = 0; j < count; ++j) {
                double const mutual = between(terms[i].a, terms[i].b, terms[j].a, terms[j].b);
                m(i, j) += terms[i].siemens * mutual;
                wrong_(i, j) =
                    3.0 * std::abs(terms[i].siemens) * (eps * reach(i, j) + base.wide_epsilon * (ends(i) + ends(j))) +
                    2.0 * eps * (1.0 + std::abs(terms[i].siemens) * reach(i, j));
            }
        inverse_ = count > 0 ? Eigen::MatrixXd(m.partialPivLu().inverse()) : m;
    }

    // [ohm] the fall from a to b for one ampere taken out at c and brought back at d.
    double between(int a, int b, int c, int d) const {
        double const* const from_a = base_.row(base_.across, a);
        double const* const from_b = base_.row(base_.across, b);
        return 0.5 * ((from_a[d] - from_a[c]) + (from_b[c] - from_b[d]));
    }

    // [A] by term: (1 + dg Z)^-1 (dg u + df).
    Eigen::VectorXd currents(Eigen::VectorXd const& drops, bool with_sources) const {
        Eigen::VectorXd right(drops.size());
        for (Eigen::Index i = 0; i < drops.size(); ++i)
            right[i] = terms_[i].siemens * drops[i] + (with_sources ? terms_[i].amps : 0.0);
        return inverse_ * right;
    }

    // [V] for any node, NaN if the system is not known well enough.
    double bound(Eigen::VectorXd const& amps, double largest) const {
        auto const count = amps.size();
        Eigen::MatrixXd const size = inverse_.cwiseAbs();
        if (count > 0 && !((size * wrong_).rowwise().sum().maxCoeff() < 0.1))
            return std::numeric_limits<double>::quiet_NaN();
        Eigen::VectorXd off = wrong_ * amps.cwiseAbs();
        for (Eigen::Index i = 0; i < count; ++i)
            off[i] += 4.0 * eps * (std::abs(terms_[i].siemens) * largest + std::abs(terms_[i].amps));
        off = size * off;
        double volts = 4.0 * eps * largest;
        for (Eigen::Index i = 0; i < count; ++i)
            volts += off[i] * base_.row(base_.across, terms_[i].a)[terms_[i].b] +
                     (4.0 + static_cast<double>(count)) * eps * std::abs(amps[i]) * ends(static_cast<int>(i));
        return volts;
    }

private:
    static constexpr double eps = 0.5 * std::numeric_limits<double>::epsilon();
    double ends(int i) const { return base_.own->data()[terms_[i].a] + base_.own->data()[terms_[i].b]; }
    double reach(int i, int j) const { // [ohm] what is added up for Z between two terms
        double const* const from_a = base_.row(base_.across, terms_[i].a);
        double const* const from_b = base_.row(base_.across, terms_[i].b);
        return 0.5 * (from_a[terms_[j].a] + from_a[terms_[j].b] + from_b[terms_[j].a] + from_b[terms_[j].b]);
    }

    BaseInverse const& base_;
    VariantTerm const* terms_;
    Eigen::MatrixXd inverse_, wrong_;
};

} // namespace internal

BANKWRIGHT_INLINE VariantAnswer update_with_ports(BaseInverse const& base, Circuit const& circuit,
                                                  std::vector<std::size_t> const& loads, VariantTerm const* terms,
                                                  int count, int max_iterations, double* volts) {
    internal::SmallSystem const small(base, terms, count);
    auto const ports = static_cast<Eigen::Index>(loads.size());
    auto const load = [&](Eigen::Index p) -> Load const& { return circuit.loads[loads[static_cast<std::size_t>(p)]]; };
    std::copy_n(base.volts.data(), base.nodes, volts);
    auto const drops = [&] {
        Eigen::VectorXd u(count);
        for (int i = 0; i < count; ++i)
            u[i] = volts[terms[i].a] - volts[terms[i].b];
        return u;
    };
    auto const take = [&](double amps, int a, int b) { // drawn at a, brought back at b
        for (int n = 0; n < base.nodes; ++n)
            volts[n] -= amps * (base.row(base.ohms, a)[n] - base.row(base.ohms, b)[n]);
    };
    double largest = base.largest, slack = 1.0, at_ports = 0.0;
    if (ports > 0) {
        Eigen::VectorXd const at_rest = small.currents(drops(), true);
        Ports seen;
        seen.ohms.resize(loads.size() * loads.size());
        Eigen::MatrixXd across(count, ports); // [V] that one ampere of a load takes between a term's nodes, with minus
        for (int i = 0; i < count; ++i)
            for (Eigen::Index p = 0; p < ports; ++p)
                across(i, p) = -small.between(terms[i].a, terms[i].b, load(p).plus, load(p).minus);
        for (Eigen::Index p = 0; p < ports; ++p) {
            seen.laws.push_back(load(p).law);
            seen.open_volts.push_back(volts[load(p).plus] - volts[load(p).minus] + across.col(p).dot(at_rest));
            Eigen::VectorXd const answer = small.currents(across.col(p), false);
            for (Eigen::Index q = 0; q < ports; ++q)
                seen.ohms[static_cast<std::size_t>(q * ports + p)] =
                    small.between(load(q).plus, load(q).minus, load(p).plus, load(p).minus) - across.col(q).dot(answer);
        }
        for (std::size_t p = 0; p < loads.size(); ++p) // reciprocity, which rounding blurs
            for (std::size_t q = 0; q < p; ++q)
                seen.ohms[p * loads.size() + q] = seen.ohms[q * loads.size() + p] =
                    0.5 * (seen.ohm(p, q) + seen.ohm(q, p));
        at_ports = small.bound(at_rest, largest);
        PortCurrents const found = port_currents(seen, max_iterations);
        if (found.status != Status::solved || !(found.slack > 1e-3)) return {};
        slack = std::min(1.0, found.slack);
        for (Eigen::Index p = 0; p < ports; ++p) {
            double const amps = found.amps[static_cast<std::size_t>(p)];
            largest = std::max(largest, std::abs(amps) * base.row(base.across, load(p).plus)[load(p).minus]);
            take(amps, load(p).plus, load(p).minus);
        }
    }
    Eigen::VectorXd const amps = small.currents(drops(), true);
    for (int i = 0; i < count; ++i)
        take(amps[i], terms[i].a, terms[i].b);
    double const error = small.bound(amps, largest);
    return {Status::solved, true, error + static_cast<double>(ports) * (error + at_ports) / slack};
}

} // namespace bankwright::solver
