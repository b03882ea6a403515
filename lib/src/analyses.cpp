// The compiled twin of analyses/.
#include "bankwright/analyses/bank_in_time_inl.hpp"
#include "bankwright/analyses/batteries_alike_inl.hpp"
#include "bankwright/analyses/charge_course_inl.hpp"
#include "bankwright/analyses/charge_rates_inl.hpp"
#include "bankwright/analyses/discharge_inl.hpp"
#include "bankwright/analyses/operating_point_inl.hpp"
#include "bankwright/analyses/tolerance_inl.hpp"
#include "bankwright/analyses/recharge_inl.hpp"
