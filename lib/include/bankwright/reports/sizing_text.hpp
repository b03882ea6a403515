// A sizing for people: what is enough, in both systems of sizes, why no less, and what to cut and buy.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/sized.hpp"

#include <string>

namespace bankwright {

std::string sizing_text(Sized const& sized);
std::string sizing_markdown(Sized const& sized);

// The cut list alone: kind, item, detail, count, length or mass with its unit. RFC 4180.
std::string cut_list_csv(Sized const& sized);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/sizing_text_inl.hpp"
#endif
