// Solves bank files and prints a line of JSON each: what the solver found, and what the devices gave to it. For the
// tests in tests/reference, which solve the same files by other means.
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/conductor_resistance.hpp"

#include <cmath>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <string>

#include <fmt/format.h>

using namespace bankwright;

namespace {

std::string number(double value) { return std::isfinite(value) ? fmt::format("{:.17g}", value) : "null"; }

// "a": 1, "b": 2
class Members {
public:
    void add(std::string const& name, std::string const& json) {
        text_ += fmt::format("{}\"{}\": {}", text_.empty() ? "" : ", ", name, json);
    }
    std::string object() const { return "{" + text_ + "}"; }

private:
    std::string text_;
};

std::string solve(Bank const& bank) {
    auto const point = operating_point(bank);
    Members terminals, parts, sources, conductors, all;
    for (auto const& terminal : point.terminals)
        terminals.add(terminal.name, terminal.voltage ? number(terminal.voltage->value()) : "null");
    for (auto const& part : point.parts)
        parts.add(part.id, fmt::format(R"({{"current": {}, "voltage": {}, "power": {}}})", number(part.current.value()),
                                       number(part.voltage.value()), number(part.power.value())));
    auto const ambient = bank.system.ambient;
    for (auto const& b : bank.batteries)
        sources.add(b.id, fmt::format("[{}, {}]", number(open_circuit_voltage(b, ambient).value()),
                                      number(internal_resistance(b, ambient).value())));
    for (auto const* section : {&bank.jumpers, &bank.cables})
        for (auto const& run : *section)
            conductors.add(id_of(run), number(resistance(run.conductor, ambient, bank.system.joint).value()));
    all.add("status", fmt::format("\"{}\"", name(point.status)));
    all.add("reference", fmt::format("\"{}\"", point.reference));
    all.add("terminals", terminals.object());
    all.add("parts", parts.object());
    all.add("sources", sources.object());
    all.add("conductors", conductors.object());
    return all.object();
}

} // namespace

int main(int count, char** arguments) {
    for (int i = 1; i < count; ++i) {
        std::ifstream file(arguments[i], std::ios::binary);
        std::string const text{std::istreambuf_iterator<char>(file), {}};
        auto const result = read(text);
        if (!result.readable || bankwright::count(result.findings).error > 0) {
            fmt::print(stderr, "{}: {}\n", arguments[i],
                       result.findings.empty() ? "" : result.findings.front().message);
            return 1;
        }
        fmt::print("{}\n", solve(result.bank));
    }
    return 0;
}
