// The JSON document "labels".
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/labels.hpp"

#include <string>

namespace bankwright {

std::string labels_json(Labels const& labels);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/labels_json_inl.hpp"
#endif
