// All of bankwright, in the order of its road; each header also stands alone.
// Written by tests/structure/make_umbrella.py from the headers that exist.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/version.hpp"

#include "bankwright/numeric/interpolate.hpp"

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/level.hpp"
#include "bankwright/findings/position.hpp"
#include "bankwright/findings/rule_info.hpp"

#include "bankwright/solver/balance.hpp"
#include "bankwright/solver/branch_currents.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/elimination_plan.hpp"
#include "bankwright/solver/forest_currents.hpp"
#include "bankwright/solver/join_currents.hpp"
#include "bankwright/solver/linear_network.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/solve.hpp"
#include "bankwright/solver/sparse_network.hpp"
#include "bankwright/solver/star_mesh.hpp"
#include "bankwright/solver/topology.hpp"
#include "bankwright/solver/union_find.hpp"
#include "bankwright/solver/validate.hpp"

#include "bankwright/tables/internal_resistance.hpp"
#include "bankwright/tables/open_circuit_voltage.hpp"
#include "bankwright/tables/source.hpp"
#include "bankwright/tables/wire_resistance.hpp"

#include "bankwright/devices/battery.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/charger.hpp"
#include "bankwright/devices/chemistry.hpp"
#include "bankwright/devices/conductor.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/devices/date.hpp"
#include "bankwright/devices/joining.hpp"
#include "bankwright/devices/load.hpp"
#include "bankwright/devices/motor.hpp"
#include "bankwright/devices/protection.hpp"

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/part_kind.hpp"
#include "bankwright/bank/source_map.hpp"
#include "bankwright/bank/terminals.hpp"

#include "bankwright/network/build.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/network/reference.hpp"
#include "bankwright/network/to_branches.hpp"

#include "bankwright/analyses/operating_point.hpp"
