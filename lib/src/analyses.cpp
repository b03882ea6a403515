// The compiled twin of analyses/.
#include "bankwright/analyses/operating_point_inl.hpp"
