// The compiled twin of the hook-up and what it is made of.
#include "bankwright/analyses/hookup_equalising_inl.hpp"
#include "bankwright/analyses/hookup_inl.hpp"
#include "bankwright/analyses/hookup_meter_inl.hpp"
#include "bankwright/analyses/hookup_mistakes_inl.hpp"
#include "bankwright/analyses/hookup_order_inl.hpp"
#include "bankwright/analyses/hookup_probes_inl.hpp"
#include "bankwright/analyses/last_devices_inl.hpp"
#include "bankwright/analyses/partial_bank_inl.hpp"
