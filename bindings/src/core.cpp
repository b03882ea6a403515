// The private half of the Python package: the text of a bank file in, the command's JSON documents out.
#include "bankwright/bankwright.hpp"

#include <pybind11/pybind11.h>

#include <string>
#include <utility>

namespace {

using namespace bankwright;

std::string findings_of(Inspection seen, std::string text, std::string file) {
    return findings_json({{.file = std::move(file),
                           .text = std::move(text),
                           .arrangement = std::move(seen.arrangement),
                           .findings = std::move(seen.findings)}});
}

std::string check_text(std::string text, std::string file) {
    auto seen = inspect(text);
    return findings_of(std::move(seen), std::move(text), std::move(file));
}

// The solution, or the findings where the text does not say what is to be solved.
std::string solve_text(std::string text, std::string file) {
    auto seen = inspect(text);
    if (!seen.as_written) return findings_of(std::move(seen), std::move(text), std::move(file));
    Solved solved{.file = std::move(file),
                  .arrangement = seen.arrangement,
                  .point = operating_point(seen.bank),
                  .counts = count(seen.findings),
                  .findings = {}};
    say_unsolved(seen.bank, solved.point, solved.findings);
    locate(solved.findings, seen.map);
    return solution_json(solved);
}

} // namespace

PYBIND11_MODULE(_core, module) {
    namespace py = pybind11;
    module.attr("version") = BANKWRIGHT_VERSION;
    module.def("check", &check_text, py::arg("text"), py::arg("file"), py::call_guard<py::gil_scoped_release>());
    module.def("solve", &solve_text, py::arg("text"), py::arg("file"), py::call_guard<py::gil_scoped_release>());
}
