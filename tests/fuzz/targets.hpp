// What the fuzzer, and the replay of what it found, feed with bytes. Each holds a promise: it aborts where that is
// broken.
#pragma once

#include "bankwright/bankwright.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>
#include <string_view>
#include <vector>

namespace fuzz {

using namespace bankwright;

inline void demand(bool kept, char const* promise) {
    if (kept) return;
    std::fprintf(stderr, "broken: %s\n", promise);
    std::abort();
}

// Small enough that no time is spent on what is refused for its size anyway.
inline ReadLimits limits() {
    ReadLimits limits;
    limits.parts = 60;
    return limits;
}

inline bool is_listed(std::string_view rule) {
    auto const all = all_rules();
    return std::any_of(all.begin(), all.end(), [&](RuleInfo const* info) { return info->id == rule; });
}

inline void mind(Findings const& findings) {
    for (auto const& finding : findings) {
        demand(!finding.rule.empty() && !finding.message.empty(), "a finding has a rule and a message");
        demand(finding.region.has_value(), "what is wrong in a text has a place in it");
        demand(is_listed(finding.rule), "a finding's rule is in the catalog");
    }
}

// Any text: findings with places, never a crash; checked and drawn as far as it is a bank.
inline void read_bank(std::string_view text) {
    auto const seen = inspect(text, {}, limits());
    if (!seen.readable) demand(!seen.findings.empty(), "a text that cannot be read has a finding");
    for (auto const& finding : seen.findings)
        demand(is_listed(finding.rule), "a finding's rule is in the catalog");
}

// write(read(x)) is read back as the same bank, and written the same again.
inline void round_trip(std::string_view text) {
    auto const first = read(text, limits());
    mind(first.findings);
    if (!first.readable || !first.findings.empty()) return;
    auto const written = write(first.bank);
    auto const again = read(written, limits());
    demand(again.bank == first.bank, "what is written is read back as the same bank");
    demand(write(again.bank) == written, "the canonical form is stable");
}

// A quantity, in every reading of it: what parses prints, and the exact print parses to the same value.
inline void quantity(std::string_view text) {
    auto const both_ways = [&](auto kind) {
        using Q = decltype(kind);
        auto const parsed = parse<Q>(text);
        demand(parsed.value.has_value() == parsed.problem.empty(), "a quantity either has a value or a problem");
        if (!parsed.value) return;
        auto const exact = print_exact(*parsed.value);
        if (exact.empty()) return;
        auto const again = parse<Q>(exact);
        demand(again.value && *again.value == *parsed.value, "an exact print is read back as the same value");
        demand(!print(*parsed.value).empty(), "a value can be printed");
    };
    both_ways(Voltage{});
    both_ways(Current{});
    both_ways(Resistance{});
    both_ways(Charge{});
    both_ways(Length{});
    both_ways(Duration{});
    both_ways(Mass{});
    both_ways(Temperature{});
    both_ways(StateOfCharge{});
    both_ways(WireSize{});
}

inline void duty(std::string_view text) {
    auto const read = read_duty(text, limits());
    mind(read.findings);
    if (!read.readable) demand(!read.findings.empty(), "a text that cannot be read has a finding");
}

// Readings of a bank of every kind of part: what is taken has terminals and parts of the bank.
inline void readings(std::string_view text) {
    static Bank const bank =
        read("bankwright = 1\n[batteries]\nA = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"90 Ah\" }\n"
             "B = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"90 Ah\" }\n[jumpers]\n"
             "J1 = { from = \"A+\", to = \"B-\", resistance = \"1 mohm\" }\n[cables]\n"
             "p = { from = \"B+\", to = \"CB.line\", resistance = \"1 mohm\" }\n"
             "m = { from = \"CB.load\", to = \"L+\", resistance = \"1 mohm\" }\n"
             "n = { from = \"L-\", to = \"A-\", resistance = \"1 mohm\" }\n[breakers]\nCB = { rating = \"60 A\" }\n"
             "[loads]\nL = { current = \"20 A\" }\n")
            .bank;
    auto const read = read_readings(text, bank, limits());
    mind(read.findings);
    if (!read.readable) demand(!read.findings.empty(), "a text that cannot be read has a finding");
    auto const posts = terminals_of(bank);
    auto const known = [&](std::string const& name) {
        return std::find(posts.begin(), posts.end(), name) != posts.end();
    };
    for (auto const& one : read.sheet.volts)
        demand(known(one.red) && known(one.black), "a reading that is taken stands between terminals of the bank");
}

inline void settings(std::string_view text) { mind(read_settings(text, limits()).findings); }

// What programs are given is JSON, whatever stood in the file.
inline void json(std::string_view text) {
    auto seen = inspect(text, {}, limits());
    Verdicts verdicts(1);
    verdicts[0].file = std::string(text.substr(0, 40));
    verdicts[0].text = std::string(text);
    verdicts[0].arrangement = seen.arrangement;
    verdicts[0].findings = std::move(seen.findings);
    for (auto const& out : {findings_json(verdicts), findings_sarif(verdicts, all_rules())})
        demand(!out.empty() && out.front() == '{' && out.find('\0') == std::string::npos, "a document is an object");
    for (auto const c : findings_text(verdicts, {}))
        demand(c == '\n' || (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F),
               "no control character reaches a terminal");
}

// Circuits of any shape with values over many decades: an answer that balances, or a status that says why there is
// none.
inline void solve(std::string_view bytes) {
    std::uint64_t seed = 0;
    std::memcpy(&seed, bytes.data(), std::min(bytes.size(), sizeof seed));
    random_circuits::Dice dice(seed);
    random_circuits::Recipe recipe;
    auto const take = [&](std::size_t at) {
        return at < bytes.size() ? static_cast<double>(static_cast<unsigned char>(bytes[at])) / 255.0 : 0.5;
    };
    recipe.max_nodes = 2 + static_cast<int>(40 * take(8));
    recipe.low_ohms = std::pow(10.0, -9.0 * take(9));
    recipe.high_ohms = std::pow(10.0, 9.0 * take(10));
    recipe.max_emf = std::pow(10.0, -3.0 + 6.0 * take(11));
    recipe.join_share = 0.6 * take(12);
    recipe.max_loads = static_cast<int>(8 * take(13));
    auto circuit = random_circuits::circuit(dice, recipe);
    for (std::size_t i = 0; i < circuit.loads.size(); ++i) {
        auto const kind = 14 + 2 * i < bytes.size() ? static_cast<unsigned char>(bytes[14 + 2 * i]) % 4 : 0;
        auto const value = std::pow(10.0, -3.0 + 7.0 * take(15 + 2 * i));
        if (kind == 1) circuit.loads[i].law = solver::ConstantPower{value};
        if (kind == 2) circuit.loads[i].law = solver::SquareLaw{value, take(16) * 0.1, take(17)};
        if (kind == 3) circuit.loads[i].law = solver::LimitedSource{1.0 + value, 0.1 + value};
    }
    auto const solution = solver::solve(circuit);
    demand(solution.status != solver::Status::bad_circuit, "a valid circuit is not called bad");
    if (solution.status != solver::Status::solved) return;
    double scale = 1e-9;
    for (auto const* currents : {&solution.branch_amps, &solution.join_amps, &solution.load_amps})
        for (auto const amps : *currents) {
            demand(std::isfinite(amps), "a solved current is a number");
            scale = std::max(scale, std::abs(amps));
        }
    for (auto const volts : solution.volts)
        demand(std::isfinite(volts), "a solved voltage is a number");
    demand(std::isfinite(solution.residual) && solution.residual <= 1e-6 * scale, "a solution balances at every node");
}

struct Target {
    char const* name;
    void (*run)(std::string_view);
};
inline constexpr Target targets[] = {
    {"read_bank", read_bank}, {"round_trip", round_trip}, {"quantity", quantity}, {"duty", duty},
    {"readings", readings},   {"settings", settings},     {"json", json},         {"solve", solve},
};

} // namespace fuzz
