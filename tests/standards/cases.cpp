#include "standards/cases.hpp"

#include "bankwright/config/reader/toml.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <set>
#include <stdexcept>

namespace standards {
namespace {

std::string required(toml::table const& table, std::string const& key, std::string const& where) {
    auto const text = table[key].value<std::string>();
    if (!text || text->empty()) throw std::runtime_error(where + ": `" + key + "` is missing or empty");
    return *text;
}

Tolerance tolerance_of(toml::table const& group, std::string const& where) {
    Tolerance tolerance;
    if (auto const within = group["within"].value<double>()) {
        tolerance.within = *within;
        return tolerance;
    }
    if (group["within"].value<std::string>() == "printed") return tolerance; // each value has its own
    auto const* how = group["within"].as_table();
    if (!how || how->empty()) throw std::runtime_error(where + ": `within` is missing");
    for (auto const& [key, node] : *how) {
        auto const share = node.value<double>();
        if (!share) throw std::runtime_error(where + ": `within` holds numbers");
        if (key.str() == "relative")
            tolerance.below = tolerance.above = *share;
        else if (key.str() == "below")
            tolerance.below = *share;
        else if (key.str() == "above")
            tolerance.above = *share;
        else if (key.str() == "away")
            tolerance.away = *share;
        else
            throw std::runtime_error(where + ": `within` knows no such key");
    }
    return tolerance;
}

void fill(Case& one, std::string const& column, toml::node const& cell) {
    if (auto const yes = cell.value_exact<bool>())
        one.numbers[column] = *yes ? 1.0 : 0.0;
    else if (auto const number = cell.value<double>())
        one.numbers[column] = *number;
    else if (auto const word = cell.value<std::string>())
        one.words[column] = *word;
}

// A value written as it is printed, "2.50": half a unit of its last digit is what it says.
void read_as_printed(Case& one) {
    std::string const text = one.word("value");
    one.words.erase("value");
    one.value = std::stod(text);
    auto const point = text.find('.');
    auto const decimals = point == std::string::npos ? 0.0 : static_cast<double>(text.size() - point - 1);
    one.tolerance.within = 0.5 * std::pow(10.0, -decimals);
}

// A group says its quantity and unit once, or has a column for them.
void take(std::string& what, std::string const& name, Case& one, std::string const& where) {
    if (auto const found = one.words.find(name); found != one.words.end()) {
        what = found->second;
        one.words.erase(found);
    }
    if (what.empty()) throw std::runtime_error(where + ": `" + name + "` is missing or empty");
}

std::vector<Case> read_file(std::filesystem::path const& path) {
    auto const file = toml::parse_file(path.string());
    std::string const where = path.parent_path().filename().string();
    auto const* source = file["source"].as_table();
    if (!source) throw std::runtime_error(where + ": [source] is missing");
    required(*source, "document", where);
    required(*source, "edition", where);

    std::vector<Case> cases;
    auto const* groups = file["group"].as_array();
    if (!groups) throw std::runtime_error(where + ": there is no [[group]]");
    for (auto const& node : *groups) {
        auto const& group = *node.as_table();
        Case common;
        common.kind = required(file, "kind", where);
        common.source = where;
        common.quantity = group["quantity"].value_or(std::string{});
        common.unit = group["unit"].value_or(std::string{});
        if (auto const circuit = group["circuit"].value<std::string>()) common.words["circuit"] = *circuit;
        common.clause = required(group, "clause", where);
        common.mark = required(group, "mark", where);
        common.why = required(group, "why", where);
        common.tolerance = tolerance_of(group, where);
        auto const& columns = *group["columns"].as_array();
        for (auto const& row : *group["rows"].as_array()) {
            auto const& cells = *row.as_array();
            if (cells.size() != columns.size()) throw std::runtime_error(where + ": a row of another length");
            auto one = common;
            for (std::size_t i = 0; i < columns.size(); ++i)
                fill(one, *columns[i].value<std::string>(), cells[i]);
            take(one.quantity, "quantity", one, where);
            take(one.unit, "unit", one, where);
            bool const printed = group["within"].value<std::string>() == "printed";
            if (printed != (one.words.count("value") == 1))
                throw std::runtime_error(where + ": a value in quotes goes with `within = \"printed\"`");
            if (printed)
                read_as_printed(one);
            else
                one.value = one.number("value");
            cases.push_back(one);
        }
    }
    return cases;
}

} // namespace

double Case::number(std::string const& name) const { return numbers.at(name); }
double Case::number(std::string const& name, double otherwise) const {
    auto const found = numbers.find(name);
    return found == numbers.end() ? otherwise : found->second;
}
std::string const& Case::word(std::string const& name) const { return words.at(name); }

std::string Case::describe() const {
    std::string text = source + ", " + clause + ": " + quantity;
    for (auto const& [name, word] : words)
        text += " " + name + "=" + word;
    for (auto const& [name, number] : numbers)
        text += " " + name + "=" + std::to_string(number);
    return text + " [" + unit + "] (" + mark + "; " + why + ")";
}

std::vector<Case> read_cases(std::string const& folder) {
    std::set<std::filesystem::path> files;
    for (auto const& entry : std::filesystem::directory_iterator(folder))
        if (std::filesystem::exists(entry.path() / "cases.toml")) files.insert(entry.path() / "cases.toml");
    std::vector<Case> all;
    for (auto const& file : files) {
        auto const cases = read_file(file);
        all.insert(all.end(), cases.begin(), cases.end());
    }
    return all;
}

Deviation deviation(Case const& one, double answer) {
    auto const off = answer - one.value;
    auto const size = std::abs(one.value);
    auto const print = 1e-12 * std::max(1.0, size); // of binary arithmetic, not of the source
    auto const allowed = one.tolerance.within + print + size * (off < 0.0 ? one.tolerance.below : one.tolerance.above);
    if (!std::isfinite(answer)) return {HUGE_VAL, HUGE_VAL};
    if (one.tolerance.away > 0.0) return {0.0, one.tolerance.away / std::abs(off)};
    return {size > 0.0 ? std::abs(off) / size : 0.0, std::abs(off) / allowed};
}

std::string table(std::vector<Case> const& cases, std::vector<Deviation> const& deviations) {
    struct Tally {
        int checked = 0;
        Deviation worst;
        std::string why; // of the case farthest from its value
    };
    std::map<std::string, Tally> tallies;
    for (std::size_t i = 0; i < cases.size(); ++i) {
        auto& tally = tallies[cases[i].source];
        ++tally.checked;
        if (deviations[i].of_value > tally.worst.of_value || tally.why.empty()) tally.why = cases[i].why;
        tally.worst.of_value = std::max(tally.worst.of_value, deviations[i].of_value);
        tally.worst.of_tolerance = std::max(tally.worst.of_tolerance, deviations[i].of_tolerance);
    }
    std::string text;
    for (auto const& [source, tally] : tallies) {
        char numbers[80];
        std::snprintf(numbers, sizeof numbers, " | %d | %.2f %% | %.0f %% | ", tally.checked,
                      100.0 * tally.worst.of_value, 100.0 * tally.worst.of_tolerance);
        text += "| " + source + numbers + tally.why + " |\n";
    }
    return text;
}

} // namespace standards
