// The private half of the Python package: answers.hpp as Python sees it. All else is Python.
#include "answers.hpp"
#include "arrays.hpp"
#include "bankwright/analyses/sweep.hpp"
#include "bankwright/version.hpp"
#include "interruptible.hpp"
#include "physics.hpp"

#include <atomic>
#include <exception>
#include <memory>
#include <stdexcept>
#include <tuple>

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

namespace py = pybind11;

namespace bankwright::python {

namespace {

void raise(char const* name, char const* what) {
    PyErr_SetString(py::module_::import("bankwright.errors").attr(name).ptr(), what);
}

// One to one: bankwright/errors.py says which is which.
void translate(std::exception_ptr caught) {
    try {
        if (caught) std::rethrow_exception(caught);
    } catch (Refused const& refused) {
        auto const errors = py::module_::import("bankwright.errors");
        auto const unreadable = errors.attr("unreadable")(refused.findings);
        PyErr_SetObject(errors.attr("Unreadable").ptr(), unreadable.ptr());
    } catch (std::invalid_argument const& e) {
        raise("Unsuitable", e.what());
    } catch (std::out_of_range const& e) {
        raise("UnknownName", e.what());
    } catch (std::length_error const& e) {
        raise("TooLarge", e.what());
    }
}

// The work without the interpreter's lock, and its arrays with it.
template <class Work>
auto unlocked(Work work) {
    py::gil_scoped_release const release;
    return work();
}

py::tuple as_tuple(Course&& course, std::size_t batteries) {
    auto const samples = static_cast<py::ssize_t>(course.seconds.size());
    auto const wide = static_cast<py::ssize_t>(batteries);
    return py::make_tuple(course.document, array_of(std::move(course.seconds), {samples}),
                          array_of(std::move(course.charge), {samples, wide}),
                          array_of(std::move(course.amperes), {samples, wide}),
                          array_of(std::move(course.volts), {samples, wide}));
}

py::list section_list() {
    py::list sections;
    for (auto const& section : sections_answer()) {
        py::list keys;
        for (auto const& key : section.keys)
            keys.append(py::make_tuple(key.name, key.kind, key.unit, key.example, key.meaning, key.if_absent,
                                       py::tuple(py::cast(key.choices))));
        sections.append(py::make_tuple(section.name, section.part, section.meaning, section.terminals, keys));
    }
    return sections;
}

// A TOML document as plain Python: texts, numbers, dates, lists, dicts. A time of day, which no bank file holds, is
// None.
py::object as_python(DocumentValue const& value) {
    using Kind = DocumentValue::Kind;
    switch (value.kind) {
    case Kind::text:
        return py::str(value.text);
    case Kind::integer:
        return py::int_(value.integer);
    case Kind::number:
        return py::float_(value.number);
    case Kind::boolean:
        return py::bool_(value.boolean);
    case Kind::date:
        return py::module_::import("datetime").attr("date")(value.date.year, value.date.month, value.date.day);
    case Kind::time:
        return py::none();
    case Kind::array: {
        py::list items;
        for (auto const& item : value.items)
            items.append(as_python(item));
        return items;
    }
    case Kind::table:
        break;
    }
    py::dict table;
    for (auto const& entry : value.entries)
        table[py::str(entry.key)] = as_python(entry.value);
    return table;
}

using Optional = std::optional<double>;

// keys: (part, key, values [SI]); measures: ("terminal" | "voltage" | "current", name).
using KeyArray = std::tuple<std::string, std::string, py::array_t<double, py::array::c_style | py::array::forcecast>>;

// Work that is left to itself when it is interrupted keeps its bank.
using SharedBank = std::shared_ptr<ReadBank>;

py::array_t<double> sweep_answer(ReadBank const& read, std::vector<KeyArray> const& arrays,
                                 std::vector<std::pair<std::string, std::string>> const& asked, py::ssize_t banks,
                                 Optional throttle, Optional current, bool rest, int threads) {
    std::vector<SweptKey> keys;
    for (auto const& [part, key, values] : arrays) {
        if (values.ndim() != 1 || values.size() != banks)
            throw std::invalid_argument("`" + part + "." + key + "` needs one value a bank");
        keys.push_back({part, key, {values.data(), static_cast<std::size_t>(values.size())}});
    }
    std::vector<Measure> measures;
    for (auto const& [kind, name] : asked)
        measures.push_back({kind == "terminal"  ? Measure::terminal
                            : kind == "voltage" ? Measure::voltage
                                                : Measure::current,
                            name});
    std::atomic<bool> stop = false; // the arrays are Python's: an interrupted sweep is waited for
    SweepOptions const options{moment_of({throttle, current, rest}), threads, &stop};
    auto answers = interruptible([&] { return sweep(read.whole(), keys, measures, options); },
                                 [&](std::thread& worker) {
                                     py::gil_scoped_release const release;
                                     stop = true;
                                     worker.join();
                                 });
    return array_of(std::move(answers), {static_cast<py::ssize_t>(measures.size()), banks});
}

void add_answers(py::class_<ReadBank, SharedBank>& bank) {
    auto const no_lock = py::call_guard<py::gil_scoped_release>();
    bank.def(
            "check",
            [](ReadBank const& read, std::vector<std::string> only, std::vector<std::string> skip) {
                return check_answer(read, {std::move(only), std::move(skip)});
            },
            py::arg("only"), py::arg("skip"), no_lock)
        .def(
            "solve",
            [](ReadBank const& read, Optional throttle, Optional current, bool rest) {
                auto r = unlocked([&] { return solve_answer(read, {throttle, current, rest}); });
                auto const terminals = static_cast<py::ssize_t>(r.volts.size());
                auto const parts = static_cast<py::ssize_t>(r.amperes.size());
                return py::make_tuple(r.document, array_of(std::move(r.volts), {terminals}),
                                      array_of(std::move(r.amperes), {parts}), array_of(std::move(r.across), {parts}),
                                      array_of(std::move(r.watts), {parts}));
            },
            py::arg("throttle"), py::arg("current"), py::arg("rest"))
        .def(
            "discharge",
            [](SharedBank const& read, Optional throttle, Optional current, Optional longest, Optional rest,
               std::vector<std::pair<double, double>> const& legs, bool repeat) {
                DischargeWords const words{{throttle, current, false}, longest, rest, legs, repeat};
                return as_tuple(interruptible([read, words] { return discharge_answer(*read, words); }),
                                read->seen.bank.batteries.size());
            },
            py::arg("throttle"), py::arg("current"), py::arg("longest"), py::arg("rest"), py::arg("legs"),
            py::arg("repeat"))
        .def(
            "recharge",
            [](SharedBank const& read, Optional charge, Optional longest) {
                return as_tuple(interruptible([=] { return recharge_answer(*read, charge, longest); }),
                                read->seen.bank.batteries.size());
            },
            py::arg("charge"), py::arg("longest"))
        .def(
            "hookup",
            [](SharedBank const& read, Optional of_reading, std::optional<int> digits, Optional resolution,
               Optional charge_within) {
                MeterWords const words{of_reading, digits, resolution, charge_within};
                return interruptible([=] { return hookup_answer(*read, words); });
            },
            py::arg("of_reading"), py::arg("digits"), py::arg("resolution"), py::arg("charge_within"))
        .def(
            "judged",
            [](SharedBank const& read, Optional of_reading, std::optional<int> digits, Optional resolution,
               Optional charge_within, std::string const& log, std::string const& file) {
                MeterWords const words{of_reading, digits, resolution, charge_within};
                auto const a = interruptible([=] { return judged_answer(*read, words, log, file); });
                return py::make_tuple(a.document, a.text);
            },
            py::arg("of_reading"), py::arg("digits"), py::arg("resolution"), py::arg("charge_within"), py::arg("log"),
            py::arg("file"))
        .def("short_circuit",
             [](SharedBank const& read) { return interruptible([read] { return short_circuit_answer(*read); }); })
        .def(
            "seen_from",
            [](ReadBank const& read, std::string const& plus, std::string const& minus) -> py::object {
                auto const source = unlocked([&] { return seen_from_answer(read, plus, minus); });
                if (!source) return py::none();
                return py::make_tuple(source->volts, source->ohms, source->short_amps);
            },
            py::arg("plus"), py::arg("minus"))
        .def(
            "size",
            [](SharedBank const& read, Optional runtime, Optional ambient, bool metric, bool keep_strings) {
                SizeWords const words{runtime, ambient, metric, keep_strings};
                auto const a = interruptible([=] { return size_answer(*read, words); });
                return py::make_tuple(a.document, a.text, a.cut_list, a.bank);
            },
            py::arg("runtime"), py::arg("ambient"), py::arg("metric"), py::arg("keep_strings"))
        .def(
            "trace",
            [](SharedBank const& read, std::string const& readings, std::string const& file) {
                auto const a = interruptible([=] { return trace_answer(*read, readings, file); });
                return py::make_tuple(a.document, a.text);
            },
            py::arg("readings"), py::arg("file"))
        .def(
            "draw",
            [](ReadBank const& read, Optional throttle, Optional current, bool rest, bool readings, bool findings,
               std::string const& prefix) {
                return drawing_answer(read, {throttle, current, rest}, readings, findings, prefix);
            },
            py::arg("throttle"), py::arg("current"), py::arg("rest"), py::arg("readings"), py::arg("findings"),
            py::arg("prefix"), no_lock)
        .def(
            "report",
            [](SharedBank const& read, Optional throttle, Optional current, bool rest) {
                return interruptible([=] { return report_answer(*read, {throttle, current, rest}); });
            },
            py::arg("throttle"), py::arg("current"), py::arg("rest"))
        .def("sweep", &sweep_answer, py::arg("keys"), py::arg("measures"), py::arg("banks"), py::arg("throttle"),
             py::arg("current"), py::arg("rest"), py::arg("threads"))
        .def(
            "tolerance",
            [](SharedBank const& read, Optional throttle, Optional current, bool rest, std::size_t samples,
               std::uint64_t seed, int threads, std::size_t checked) {
                SampleWords const words{samples, seed, threads, checked};
                return interruptible([=] { return tolerance_answer(*read, {throttle, current, rest}, words); });
            },
            py::arg("throttle"), py::arg("current"), py::arg("rest"), py::arg("samples"), py::arg("seed"),
            py::arg("threads"), py::arg("checked"))
        .def("written", &written_answer, no_lock);
}

// A function whose first argument is a word. py::vectorize takes what it does not spread by value only.
template <class... Numbers>
auto vectorized_but_for_the_word(double (*function)(std::string const&, Numbers...)) {
    return py::vectorize([function](std::string word, Numbers... numbers) { return function(word, numbers...); });
}

// Each function is spread over its arrays, whose shapes broadcast; words are the same for all.
void add_physics(py::module_& module) {
    using py::arg;
    using py::vectorize;
    module.def("thinnest_gauge", vectorize(&physics::thinnest_gauge), arg("area"));
    module.def("ampacity", vectorize(&physics::ampacity), arg("area"), arg("insulation"), arg("ambient"),
               arg("engine_space"), arg("bundle"));
    module.def("wire_resistance", vectorize(&physics::wire_resistance), arg("area"), arg("length"), arg("temperature"),
               arg("tinned"));
    module.def("wire_temperature", vectorize(&physics::wire_temperature), arg("area"), arg("current"),
               arg("insulation"), arg("ambient"), arg("engine_space"), arg("bundle"));
    module.def("voltage_drop", vectorize(&physics::voltage_drop), arg("area"), arg("length"), arg("current"),
               arg("insulation"), arg("ambient"), arg("tinned"));
    module.def("withstand", vectorize(&physics::withstand), arg("area"), arg("insulation"));
    module.def("withstand_time", vectorize(&physics::withstand_time), arg("area"), arg("current"), arg("insulation"));
    module.def("trip_classes", &physics::trip_classes);
    module.def("trip_at_least", vectorized_but_for_the_word(&physics::trip_at_least), arg("trip_class"), arg("rating"),
               arg("current"));
    module.def("trip_at_most", vectorized_but_for_the_word(&physics::trip_at_most), arg("trip_class"), arg("rating"),
               arg("current"));
    module.def("rested_voltage", vectorized_but_for_the_word(&physics::rested_voltage), arg("chemistry"), arg("charge"),
               arg("nominal"), arg("temperature"));
    module.def("charge_at_voltage", vectorized_but_for_the_word(&physics::charge_at_voltage), arg("chemistry"),
               arg("voltage"), arg("nominal"), arg("temperature"));
    module.def("specific_gravity", vectorize(&physics::specific_gravity), arg("charge"), arg("temperature"));
    module.def("gravity_at_80", vectorize(&physics::gravity_at_80), arg("gravity"), arg("temperature"));
    module.def("freezing_point", vectorize(&physics::freezing_point), arg("gravity"));
    module.def("usual_exponent", &physics::usual_exponent, arg("chemistry"));
    module.def("exponent", vectorize(&physics::exponent), arg("capacity"), arg("hours"), arg("reserve"));
    module.def("usable_capacity", vectorize(&physics::usable_capacity), arg("current"), arg("capacity"), arg("hours"),
               arg("exponent"), arg("share"));
    module.def("capacity_ratio", vectorized_but_for_the_word(&physics::capacity_ratio), arg("chemistry"),
               arg("temperature"));
    module.def("motor_current", vectorize(&physics::motor_current), arg("voltage"), arg("rated_voltage"),
               arg("rated_current"), arg("winding"), arg("throttle"));
}

} // namespace

} // namespace bankwright::python

PYBIND11_MODULE(_core, module) {
    using namespace bankwright::python;
    module.attr("version") = BANKWRIGHT_VERSION;
    py::register_local_exception_translator(&translate);

    py::class_<ReadBank, SharedBank> bank(module, "ReadBank");
    bank.def(py::init<std::string, std::string, PartLists>(), py::arg("text"), py::arg("file"), py::arg("part_lists"),
             py::call_guard<py::gil_scoped_release>());
    bank.def_property_readonly("as_written", [](ReadBank const& read) { return read.seen.as_written; });
    bank.def_property_readonly("arrangement", [](ReadBank const& read) { return read.seen.arrangement; });
    bank.def_property_readonly("name", [](ReadBank const& read) { return read.seen.bank.name; });
    add_answers(bank);

    module.attr("most_bytes") = bankwright::ReadLimits{}.bytes;
    module.def("rules", &rules_answer);
    module.def(
        "compare",
        [](std::vector<SharedBank> const& banks) {
            std::vector<std::shared_ptr<ReadBank const>> const held(banks.begin(), banks.end());
            auto const a = interruptible([=] { return compare_answer(held); });
            return py::make_tuple(a.document, a.text);
        },
        py::arg("banks"));
    module.def(
        "plan",
        [](std::map<std::string, std::string> const& wish, std::string const& parts, std::string const& file) {
            auto const a = interruptible([=] { return plan_answer(wish, parts, file); });
            return py::make_tuple(a.document, a.text, a.file);
        },
        py::arg("wish"), py::arg("parts"), py::arg("file"));
    module.def("sections", &section_list);
    module.def(
        "document",
        [](std::string const& text, std::string const& file) {
            auto const read = unlocked([&] { return document_answer(text, file); });
            return as_python(read);
        },
        py::arg("text"), py::arg("file"));
    module.def(
        "quantity",
        [](std::string const& kind, std::string const& text) {
            auto const answer = quantity_answer(kind, text);
            return py::make_tuple(answer.value, answer.problem, answer.unit_is_wrong);
        },
        py::arg("kind"), py::arg("text"));
    module.def("print", &print_answer, py::arg("kind"), py::arg("value"));
    add_physics(module);
}
