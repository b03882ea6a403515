#include "bankwright/text/decimal_inl.hpp"
#include "bankwright/text/source_excerpt_inl.hpp"
