// What do the voltages become when a few branches of a circuit are other ones: a link on another post, missing, worse,
// a battery turned? Many such questions at one circuit, each by a small update of its inverse.
//
// Method. A branch that goes, comes or changes its resistance adds the current i = dg u + df between two nodes, u their
// voltage, dg the change of its conductance and df that of its source current: a change of rank one for each pair of
// nodes, k in all (a link moved to another post is two, a battery turned is one with dg = 0). With Z between the pairs
//     (1 + dg Z) i = dg u0 + df,   V = V0 - Z i
// a k by k system (Woodbury's formula). Loads that depend on their voltage see V0 and Z of their ports changed likewise
// and settle there (port_loads.hpp).
//
// Where the circuit falls apart the small determinant is zero, and nearly so where all but nothing holds it together.
// So each answer carries a bound of its rounding error, a running analysis of these very steps, to first order; where
// that is not small enough, or a branch joins islands, the changed circuit is solved afresh.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/variant.hpp"

#include <cstddef>
#include <memory>

namespace bankwright::solver {

class Variants {
public:
    explicit Variants(Circuit base, VariantOptions options = {});
    ~Variants();
    Variants(Variants&&) noexcept;
    Variants& operator=(Variants&&) noexcept;

    // The same wiring without emfs and loads, 1 A in at the node `red` and out at `black`, both on one island: what an
    // emf anywhere does to the voltage between them, by reciprocity. Made without solving anything.
    Variants answering(int red, int black) const;

    // Doubles in a row of volts: the nodes, then some that mean nothing.
    int width() const;

    // `count` variants of `each` changes, one after the other; `volts` holds a row, `answers` an entry for each. [V] as
    // in Solution::volts, NaN unless solved. Safe on several threads at once. Throws std::invalid_argument for a
    // branch that the base does not have, or that a variant changes twice.
    void solve(Change const* changes, std::size_t each, std::size_t count, double* volts, VariantAnswer* answers) const;

    Circuit circuit(Change const* changes, std::size_t each) const; // the base with the changes; throws likewise

private:
    struct Base;
    explicit Variants(std::unique_ptr<Base> base);
    std::unique_ptr<Base> base_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/variants_inl.hpp"
#endif
