// The devices' bodies, once, for bankwright::compiled.
#include "bankwright/devices/battery_nominal_inl.hpp"
#include "bankwright/devices/battery_resistance_inl.hpp"
#include "bankwright/devices/battery_voltage_inl.hpp"
#include "bankwright/devices/conductor_resistance_inl.hpp"
