// Sensitivities against ngspice's own .sens, which knows nothing of adjoint networks as we write them.
#include "bankwright/solver/sensitivities.hpp"
#include "support/bank_networks.hpp"

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <string>

#include <doctest/doctest.h>
#include <stdio.h> // popen, which is POSIX

using namespace bankwright::solver;

namespace {

std::string netlist(Circuit const& c, int node) {
    auto const name = [&](int n) { return n == c.reference ? std::string("0") : "n" + std::to_string(n); };
    auto const exact = [](double x) {
        std::array<char, 32> text{};
        std::snprintf(text.data(), text.size(), "%.17g", x);
        return std::string(text.data());
    };
    std::string text = "bank\n";
    for (std::size_t b = 0; b < c.branches.size(); ++b) {
        Branch const& branch = c.branches[b];
        std::string const k = std::to_string(b), inner = branch.emf == 0.0 ? name(branch.from) : "t" + k;
        if (branch.emf != 0.0)
            text += "ve" + k + " " + inner + " " + name(branch.from) + " " + exact(branch.emf) + "\n";
        text += "r" + k + " " + inner + " " + name(branch.to) + " " + exact(branch.resistance) + "\n";
    }
    Load const& load = c.loads[0];
    text += "il " + name(load.plus) + " " + name(load.minus) + " " +
            exact(std::get<ConstantCurrent>(load.law).amperes) + "\n";
    return text + ".options reltol=1e-9 abstol=1e-12 vntol=1e-10\n.control\nset numdgt=15\nsens v(" + name(node) +
           ")\nprint all\nquit\n.endc\n.end\n";
}

// By vector name what ngspice prints, piped into it; empty if there is no ngspice.
std::map<std::string, double> asked_of_ngspice(std::string const& text) {
    char path[] = "/tmp/bankwright-sens-XXXXXX";
    int const file = mkstemp(path);
    REQUIRE(file >= 0);
    std::FILE* const out = fdopen(file, "w");
    std::fputs(text.c_str(), out);
    std::fclose(out);
    std::FILE* const pipe = popen((std::string("ngspice -b ") + path + " 2>/dev/null").c_str(), "r");
    REQUIRE(pipe);
    std::map<std::string, double> found;
    std::array<char, 256> line{};
    while (std::fgets(line.data(), static_cast<int>(line.size()), pipe)) {
        std::array<char, 64> name{};
        double value = 0.0;
        if (std::sscanf(line.data(), "%63s = %lf", name.data(), &value) == 2) found[name.data()] = value;
    }
    pclose(pipe);
    std::remove(path);
    return found;
}

} // namespace

// Its differences go by one part in a million or so; they agreed to 2e-6.
TEST_CASE("what moves a bank's output voltage is the same in ngspice") {
    if (std::system("ngspice -v >/dev/null 2>&1") != 0) {
        MESSAGE("skipped: no ngspice here");
        return;
    }
    Circuit const bank = bank_networks::bank(3, 4);
    int const node = bank.loads[0].plus;
    auto const theirs = asked_of_ngspice(netlist(bank, node));
    auto const found = sensitivities(bank, {{Gauge::node_volts, node}});
    REQUIRE(found.status == Status::solved);
    auto const& ours = found.gauges[0];
    double largest = 0.0, worst = 0.0;
    for (std::size_t b = 0; b < bank.branches.size(); ++b)
        largest = std::max(largest, std::abs(ours.to_resistance[b]));
    for (std::size_t b = 0; b < bank.branches.size(); ++b) {
        REQUIRE(theirs.count("r" + std::to_string(b)) == 1);
        worst = std::max(worst, std::abs(ours.to_resistance[b] - theirs.at("r" + std::to_string(b))) / largest);
        if (bank.branches[b].emf == 0.0) continue;
        REQUIRE(theirs.count("ve" + std::to_string(b)) == 1);
        worst = std::max(worst, std::abs(ours.to_emf[b] - theirs.at("ve" + std::to_string(b))));
    }
    worst = std::max(worst, std::abs(ours.to_load[0][0] - theirs.at("il")) * 100.0);
    MESSAGE("worst ", worst);
    CHECK(worst < 1e-5);
}
