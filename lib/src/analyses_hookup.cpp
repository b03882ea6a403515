// The bodies of analyses/hookup/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/analyses/hookup/dead_checks_inl.hpp"
#include "bankwright/analyses/hookup/hookup_equalizing_inl.hpp"
#include "bankwright/analyses/hookup/hookup_meter_inl.hpp"
#include "bankwright/analyses/hookup/hookup_mistakes_inl.hpp"
#include "bankwright/analyses/hookup/hookup_order_inl.hpp"
#include "bankwright/analyses/hookup/hookup_probes_inl.hpp"
#include "bankwright/analyses/hookup/last_devices_inl.hpp"
#include "bankwright/analyses/hookup/partial_bank_inl.hpp"
