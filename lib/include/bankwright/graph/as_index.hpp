// Where in a list does the node, edge or branch of this number stand?
#pragma once

#include <cstddef>

namespace bankwright {

// Nodes, edges and branches are numbered by int, so that -1 can say "none" and differences are no wonders; containers
// count by std::size_t. The number must not be negative.
constexpr std::size_t as_index(int number) { return static_cast<std::size_t>(number); }

} // namespace bankwright
