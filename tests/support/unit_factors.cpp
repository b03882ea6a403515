// Prints, for every spelling of every unit that is read, a tab, and the SI value that is read from "1 spelling";
// temperatures at two points, every gauge as the area of its wire. For comparison with another program's table.
#include "bankwright/units/parse.hpp"
#include "bankwright/units/unit_spelling.hpp"

#include <fmt/format.h>

using namespace bankwright;

int main() {
    for (auto const* table : every_unit_table) {
        if (table == &temperature_units || table == &gauge_units) continue;
        for (auto const& spelling : unit_spellings(*table)) {
            auto const read = parsing::number_in(*table, "1 " + spelling);
            if (!read.value) return 1;
            fmt::print("{}\t{}\t{}\n", table->noun, spelling, *read.value);
        }
    }
    for (auto const& spelling : unit_spellings(temperature_units))
        for (std::string_view const degrees : {"77", "300.5"})
            fmt::print("{}\t{} {}\t{}\n", temperature_units.noun, degrees, spelling,
                       parse<Temperature>(fmt::format("{} {}", degrees, spelling)).value->value());
    for (std::string_view const gauge : {"4/0", "3/0", "2/0", "1/0"})
        fmt::print("{}\t{}\t{}\n", gauge_units.noun, gauge,
                   parse<WireSize>(fmt::format("{} AWG", gauge)).value->area().value());
    for (int gauge = 1; gauge <= 30; ++gauge)
        fmt::print("{}\t{}\t{}\n", gauge_units.noun, gauge,
                   parse<WireSize>(fmt::format("{} AWG", gauge)).value->area().value());
}
