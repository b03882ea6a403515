// An update of any rank, with loads at their ports: the general case of variants.hpp, one variant at a time.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/variant.hpp"
#include "bankwright/solver/variants/base_inverse.hpp"
#include "bankwright/solver/variants/variant_terms.hpp"

#include <cstddef>
#include <vector>

namespace bankwright::solver {

// `loads`: the numbers of those whose current depends on their voltage. `volts` takes the circuit's nodes. Not
// `updated` where the loads have no answer, or stand too near to where they have none for the bound to mean anything.
VariantAnswer update_with_ports(BaseInverse const& base, Circuit const& circuit, std::vector<std::size_t> const& loads,
                                VariantTerm const* terms, int count, int max_iterations, double* volts);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/variants/variant_ports_inl.hpp"
#endif
