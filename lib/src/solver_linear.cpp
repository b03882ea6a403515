// The bodies of solver/linear/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/solver/linear/conductance_rows_inl.hpp"
#include "bankwright/solver/linear/elimination_plan_inl.hpp"
#include "bankwright/solver/linear/multigrid_inl.hpp"
#include "bankwright/solver/linear/pack_network_inl.hpp"
#include "bankwright/solver/linear/sparse_network_inl.hpp"
#include "bankwright/solver/linear/star_mesh_inl.hpp"

template class bankwright::solver::StarMeshOf<double>;
template class bankwright::solver::StarMeshOf<long double>;
