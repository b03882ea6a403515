#pragma once

#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/measure.hpp"
#include "bankwright/reports/solution_text.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace bankwright {
namespace internal::solution {

// What the solver's own rounding leaves where nothing flows is no reading: below a billionth of the column's largest it
// is 0.
class Column {
public:
    explicit Column(std::string_view unit) : unit_(unit) {}
    void see(double value) {
        if (std::isfinite(value)) largest_ = std::max(largest_, std::abs(value));
    }
    std::string print(double value) const {
        if (!std::isfinite(value)) return "unknown";
        return measure(std::abs(value) < 1e-9 * largest_ ? 0.0 : value, unit_);
    }

private:
    std::string_view unit_;
    double largest_ = 0.0;
};

inline std::string terminals(OperatingPoint const& point) {
    Column volts("V");
    for (auto const& terminal : point.terminals)
        if (terminal.voltage) volts.see(terminal.voltage->value());
    std::vector<Row> rows{{"terminal", "voltage"}};
    for (auto const& terminal : point.terminals)
        rows.push_back({terminal.name, terminal.voltage ? volts.print(terminal.voltage->value()) : "floating"});
    return table(rows, {Align::left, Align::right});
}

inline std::string parts(OperatingPoint const& point) {
    Column amperes("A"), volts("V"), watts("W");
    for (auto const& part : point.parts) {
        amperes.see(part.current.value());
        volts.see(part.voltage.value());
        watts.see(part.power.value());
    }
    std::vector<Row> rows{{"part", "kind", "current", "voltage", "power"}};
    for (auto const& part : point.parts) {
        rows.push_back({part.id, std::string(name(part.kind)), amperes.print(part.current.value()),
                        volts.print(part.voltage.value()), watts.print(part.power.value())});
    }
    return table(rows, {Align::left, Align::left, Align::right, Align::right, Align::right});
}

// What rounding leaves differs from machine to machine, and says nothing below a billionth.
inline std::string balance(OperatingPoint const& point) {
    constexpr double negligible = 1e-9; // [A], [W]
    auto const within = [](double value, char const* unit) {
        return std::abs(value) < negligible ? fmt::format("1 n{}", unit)
                                            : fmt::format("{:.1g} {}", std::abs(value), unit);
    };
    return fmt::format("currents balance within {} at every node, powers within {}; condition number: {:.1g}\n",
                       within(point.residual.value(), "A"), within(point.imbalance.value(), "W"), point.condition);
}

} // namespace internal::solution

BANKWRIGHT_INLINE std::string solution_text(Solved const& solved, TextStyle const& style) {
    auto const& point = solved.point;
    auto out = fmt::format("{}: {}{}\n", terminal_safe(solved.file),
                           solved.arrangement ? *solved.arrangement + ", " : std::string(), name(point.status));
    for (auto const& finding : solved.findings)
        out.append("\n").append(finding_text(finding, solved.file, solved.text, style));
    if (point.status != solver::Status::solved) return out + errors_first(solved.file, solved.counts);
    out += fmt::format("\nagainst {}:\n\n{}\n{}\n", point.reference, internal::solution::terminals(point),
                       internal::solution::parts(point));
    out += "a battery's current is positive when it discharges, a conductor's from its `from` to its `to`\n";
    out += internal::solution::balance(point);
    return out + assumed_line(solved.assumed) + errors_first(solved.file, solved.counts);
}

} // namespace bankwright
