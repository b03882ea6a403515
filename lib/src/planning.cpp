// The bodies of planning/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/planning/comparison_inl.hpp"
#include "bankwright/planning/layout_inl.hpp"
#include "bankwright/planning/part_stock_inl.hpp"
#include "bankwright/planning/plan_file_inl.hpp"
#include "bankwright/planning/plan_inl.hpp"
#include "bankwright/planning/usual_parts_inl.hpp"
#include "bankwright/planning/wish_inl.hpp"
#include "bankwright/planning/wish_words_inl.hpp"
