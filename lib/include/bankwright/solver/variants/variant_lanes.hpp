// Updates of rank one and two, several variants side by side: the small systems in lanes, then each variant's voltages
// along the nodes. The method and its letters are in variants.hpp.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/variants/base_inverse.hpp"
#include "bankwright/solver/variants/variant_terms.hpp"

namespace bankwright::solver {

// A block of variants, each of two terms; one that has fewer is filled up with terms of nothing, between one node and
// itself.
struct VariantBlock {
    VariantTerm terms[lanes][2];
    double* volts[lanes]; // where each row of volts goes: `nodes` rounded up to 8
    double error[lanes];  // [V] the bound, NaN where there is none
};

void update_block(BaseInverse const& base, VariantBlock& block, int used, InstructionSet set);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/variants/variant_lanes_inl.hpp"
#endif
