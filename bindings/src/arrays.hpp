// A vector, or whatever owns doubles, becomes a NumPy array without a copy: the array owns it, and is not to be written
// to.
#pragma once

#include <memory>
#include <type_traits>
#include <utility>
#include <vector>

#include <pybind11/numpy.h>

namespace bankwright::python {

template <class Doubles>
pybind11::array_t<double> array_of(Doubles&& values, std::vector<pybind11::ssize_t> shape) {
    static_assert(std::is_rvalue_reference_v<Doubles&&>, "it is taken over, not copied");
    auto owned = std::make_unique<Doubles>(std::move(values));
    double const* const data = owned->data();
    pybind11::capsule const owner(owned.release(), [](void* p) { delete static_cast<Doubles*>(p); });
    pybind11::array_t<double> array(std::move(shape), data, owner);
    pybind11::detail::array_proxy(array.ptr())->flags &= ~pybind11::detail::npy_api::NPY_ARRAY_WRITEABLE_;
    return array;
}

} // namespace bankwright::python
