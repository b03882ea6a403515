// The compiled twin of analyses/.
#include "bankwright/analyses/discharge_inl.hpp"
#include "bankwright/analyses/discharging_bank_inl.hpp"
#include "bankwright/analyses/operating_point_inl.hpp"
