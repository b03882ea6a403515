// The bodies of findings/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/findings/order_inl.hpp"
