// What does a battery show over its whole charge, worked out once for a run through time?
#pragma once

#include "bankwright/devices/battery.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/numeric/piecewise_polynomial.hpp"

#include <vector>

namespace bankwright {

// The degree that a collapsing weak cell asks for: a cubic in its charge, times its charge.
using OpenCircuitCurve = numeric::PiecewisePolynomial<4>;

// [V] over the state of charge [1], from -deep_charge of its chemistry to 1: open_circuit_voltage() of
// devices/battery_voltage.hpp, but for rounding. Throws std::invalid_argument naming the missing key.
OpenCircuitCurve open_circuit_curve(Battery const&, Temperature ambient);

// Of two batteries that lie in one place: is it the same curve?
bool share_open_circuit_curve(Battery const&, Battery const&);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/open_circuit_curve_inl.hpp"
#endif
