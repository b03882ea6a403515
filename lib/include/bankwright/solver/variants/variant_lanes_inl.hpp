// Bodies of variant_lanes.hpp.
//
// The bound. eps is half an ulp. Given: Z and V0 rounded once, and the resistance R between two nodes, each after a
// wide error w of its terms. Then, term by term to first order,
//     in 1 + dg Z     d = |dg| (eps R + w (Z_a + Z_b)) + 2 eps (1 + |dg| R)
//     in dg u0 + df   d = 4 eps (|dg| V + |df|)
//     in i            d = |(1 + dg Z)^-1| (the second + the first |i|)
//     in V            d R + 4 eps |i| (Z_a + Z_b) + 4 eps V
// with V the largest voltage: a current between two nodes moves no node by more than it moves these two against each
// other.
#pragma once

#include "bankwright/solver/lanes/lane_register.hpp"
#include "bankwright/solver/lanes/run_by.hpp"
#include "bankwright/solver/variants/variant_lanes.hpp"

#include <limits>

namespace bankwright::solver {

namespace internal {

template <int width>
struct VariantKernel {
    using V = typename Register<width>::type;

    // Rows begin at multiples of a register; registers go by reference, not through a call's own convention.
    __attribute__((always_inline)) static V const& load(double const* from) {
        return *reinterpret_cast<V const*>(from);
    }
    struct Size {
        V is;
        __attribute__((always_inline)) explicit Size(V const& v) : is(v < 0.0 ? -v : v) {}
    };

    // What the small system needs, gathered lane by lane.
    struct Gathered {
        alignas(64) double siemens[2][lanes], amps[2][lanes], drop[2][lanes], own[2][lanes], ends[2][lanes];
        alignas(64) double mutual[lanes], spread[lanes], current[2][lanes];
    };

    __attribute__((always_inline)) static void gather(BaseInverse const& base, VariantBlock const& block, int used,
                                                      Gathered& g) {
        double const *const volts = base.volts.data(), *const across = base.across->data(),
                            *const own = base.own->data();
        std::ptrdiff_t const stride = base.stride;
        for (int lane = 0; lane < used; ++lane) {
            VariantTerm const p = block.terms[lane][0], q = block.terms[lane][1];
            double const *const from_a = across + p.a * stride, *const from_b = across + p.b * stride;
            double const aa = from_a[q.a], ab = from_a[q.b], ba = from_b[q.a], bb = from_b[q.b];
            g.mutual[lane] = 0.5 * ((ab - aa) + (ba - bb));
            g.spread[lane] = 0.5 * ((ab + aa) + (ba + bb));
            g.own[0][lane] = from_a[p.b];
            g.own[1][lane] = across[q.a * stride + q.b];
            g.siemens[0][lane] = p.siemens;
            g.siemens[1][lane] = q.siemens;
            g.amps[0][lane] = p.amps;
            g.amps[1][lane] = q.amps;
            g.drop[0][lane] = volts[p.a] - volts[p.b];
            g.drop[1][lane] = volts[q.a] - volts[q.b];
            g.ends[0][lane] = own[p.a] + own[p.b];
            g.ends[1][lane] = own[q.a] + own[q.b];
        }
    }

    __attribute__((always_inline)) static void solve_small(BaseInverse const& base, Gathered& g, double* error) {
        constexpr double eps = 0.5 * std::numeric_limits<double>::epsilon();
        double const w = base.wide_epsilon, largest = base.largest;
        for (int lane = 0; lane < lanes; lane += width) {
            V const s0 = load(g.siemens[0] + lane), s1 = load(g.siemens[1] + lane), f0 = load(g.amps[0] + lane),
                    f1 = load(g.amps[1] + lane);
            V const r0 = load(g.own[0] + lane), r1 = load(g.own[1] + lane), t = load(g.mutual + lane);
            V const m00 = 1.0 + s0 * r0, m01 = s0 * t, m10 = s1 * t, m11 = 1.0 + s1 * r1;
            V const b0 = s0 * load(g.drop[0] + lane) + f0, b1 = s1 * load(g.drop[1] + lane) + f1;
            V const inverse = 1.0 / (m00 * m11 - m01 * m10);
            V const i0 = (m11 * b0 - m01 * b1) * inverse, i1 = (m00 * b1 - m10 * b0) * inverse;
            __builtin_memcpy(g.current[0] + lane, &i0, sizeof i0);
            __builtin_memcpy(g.current[1] + lane, &i1, sizeof i1);

            V const a0 = Size(s0).is, a1 = Size(s1).is, c0 = Size(i0).is, c1 = Size(i1).is;
            V const ends0 = load(g.ends[0] + lane), ends1 = load(g.ends[1] + lane);
            V const across = eps * load(g.spread + lane) + w * (ends0 + ends1);
            V const d00 = a0 * (eps * r0 + w * ends0) + 2.0 * eps * (1.0 + a0 * r0);
            V const d11 = a1 * (eps * r1 + w * ends1) + 2.0 * eps * (1.0 + a1 * r1);
            V const e0 = 4.0 * eps * (a0 * largest + Size(f0).is) + d00 * c0 + 3.0 * a0 * across * c1;
            V const e1 = 4.0 * eps * (a1 * largest + Size(f1).is) + d11 * c1 + 3.0 * a1 * across * c0;
            V const scale = Size(inverse).is;
            V const off0 = (Size(m11).is * e0 + Size(m01).is * e1) * scale;
            V const off1 = (Size(m00).is * e1 + Size(m10).is * e0) * scale;
            // To first order only while the determinant itself is known to a tenth.
            V const unsure = scale * (Size(m11).is * d00 + Size(m00).is * d11 +
                                      3.0 * across * (a0 * Size(m10).is + a1 * Size(m01).is));
            V const bound = off0 * r0 + off1 * r1 + 4.0 * eps * (c0 * ends0 + c1 * ends1) + 4.0 * eps * largest;
            V const none = V{} + std::numeric_limits<double>::quiet_NaN();
            V const sure = unsure < 0.1 ? bound : none;
            __builtin_memcpy(error + lane, &sure, sizeof sure);
        }
    }

    __attribute__((always_inline)) static void spread_out(BaseInverse const& base, VariantBlock const& block, int used,
                                                          Gathered const& g) {
        double const *const volts = base.volts.data(), *const ohms = base.ohms->data();
        std::ptrdiff_t const stride = base.stride;
        std::ptrdiff_t const nodes = base.nodes;
        for (int lane = 0; lane < used; ++lane) {
            VariantTerm const &p = block.terms[lane][0], &q = block.terms[lane][1];
            double const i0 = g.current[0][lane], i1 = g.current[1][lane], both = i0 + i1;
            double const *const pa = ohms + p.a * stride, *const pb = ohms + p.b * stride;
            double const *const qa = ohms + q.a * stride, *const qb = ohms + q.b * stride;
            double* const out = block.volts[lane];
            if (pa == qa) // a moved end: three columns are enough
                for (std::ptrdiff_t n = 0; n < nodes; n += width) {
                    V const v = load(volts + n) - both * load(pa + n) + i0 * load(pb + n) + i1 * load(qb + n);
                    __builtin_memcpy(out + n, &v, sizeof v);
                }
            else
                for (std::ptrdiff_t n = 0; n < nodes; n += width) {
                    V const v =
                        load(volts + n) - i0 * (load(pa + n) - load(pb + n)) - i1 * (load(qa + n) - load(qb + n));
                    __builtin_memcpy(out + n, &v, sizeof v);
                }
        }
    }

    __attribute__((always_inline)) static void update(BaseInverse const& base, VariantBlock& block, int used) {
        Gathered g;
        gather(base, block, used, g);
        for (int lane = used; lane < lanes; ++lane) // what is not used must not trap
            for (int i = 0; i < 2; ++i) {
                g.siemens[i][lane] = g.amps[i][lane] = g.drop[i][lane] = g.own[i][lane] = g.ends[i][lane] = 0.0;
                g.mutual[lane] = g.spread[lane] = 0.0;
            }
        solve_small(base, g, block.error);
        spread_out(base, block, used, g);
    }
};

} // namespace internal

BANKWRIGHT_INLINE void update_block(BaseInverse const& base, VariantBlock& block, int used, InstructionSet set) {
    return run_by(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::VariantKernel<width>::update(with...);
        },
        base, block, used);
}

} // namespace bankwright::solver
