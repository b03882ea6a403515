#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/sizing_text.hpp"
#include "bankwright/reports/sizing_words.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::sizing_text {

using sizing_words::Table;

inline std::string verdict(Sized const& sized) {
    auto const& left = sized.chosen().left;
    if (left.empty()) return "this bank passes every rule with these sizes";
    return fmt::format("{} that no size cures", counted(static_cast<int>(left.size()), "finding"));
}

inline std::string headline(Sized const& sized) {
    return fmt::format("{}: {}{}", terminal_safe(sized.file), sized.arrangement ? *sized.arrangement + ": " : "",
                       verdict(sized));
}

inline std::vector<std::string> left(Sized const& sized) {
    std::vector<std::string> lines;
    for (auto const& finding : sized.chosen().left)
        lines.push_back(
            fmt::format("{}: {} [{}]: {}", name(finding.level), finding.message, finding.rule, finding.help));
    return lines;
}

inline std::string markdown_cell(std::string const& text) {
    std::string out;
    for (auto const c : text) {
        if (c == '|' || c == '\\' || c == '<' || c == '`' || c == '*' || c == '_' || c == '[') out += '\\';
        out += c == '\n' ? ' ' : c;
    }
    return out;
}

inline std::string markdown_table(Table const& one) {
    std::string out;
    for (std::size_t r = 0; r < one.rows.size(); ++r) {
        for (auto const& cell : one.rows[r])
            out += "| " + markdown_cell(cell) + ' ';
        out += "|\n";
        if (r > 0) continue;
        for (auto const align : one.aligned)
            out += align == Align::left ? "|---" : "|--:";
        out += "|\n";
    }
    return out;
}

inline std::string csv_cell(std::string const& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string out = "\"";
    for (auto const c : text)
        out += c == '"' ? "\"\"" : std::string(1, c);
    return out + '"';
}

} // namespace internal::sizing_text

BANKWRIGHT_INLINE std::string sizing_text(Sized const& sized) {
    using namespace internal::sizing_text;
    using namespace sizing_words;
    auto out = headline(sized) + "\n";
    if (auto const line = run_time(sized); !line.empty()) out += line + "\n";
    auto const sizes = groups(sized);
    out += "\n" + table(sizes.rows, sizes.aligned);
    if (auto const lines = left(sized); !lines.empty()) out += fmt::format("\n{}\n", fmt::join(lines, "\n"));
    if (auto const lines = no_less(sized.chosen()); !lines.empty())
        out += fmt::format("\nwhy no less:\n  {}\n", fmt::join(lines, "\n  "));
    out += "\nto cut and to buy:\n";
    for (auto const& one : cut_tables(sized.cuts))
        out.append("\n").append(table(one.rows, one.aligned));
    for (auto const& id : sized.cuts.not_cut)
        out += fmt::format("`{}` has no size or no length in the file, and is not in the list\n", id);
    return out + "\n" + assumed + "\n" + assumed_line(sized.assumed) + std::string(disconnect_caution) + "\n";
}

BANKWRIGHT_INLINE std::string sizing_markdown(Sized const& sized) {
    using namespace internal::sizing_text;
    using namespace sizing_words;
    auto out = fmt::format("# {}\n\n", markdown_cell(headline(sized)));
    if (auto const line = run_time(sized); !line.empty()) out += line + ".\n\n";
    out += "## What is enough\n\n" + markdown_table(groups(sized));
    for (auto const& line : left(sized))
        out += "\n* " + markdown_cell(line);
    if (auto const lines = no_less(sized.chosen()); !lines.empty()) {
        out += "\n## Why no less\n\n";
        for (auto const& line : lines)
            out += "* " + markdown_cell(line) + "\n";
    }
    for (auto const& one : cut_tables(sized.cuts))
        out += fmt::format("\n## To cut and to buy: {}\n\n{}", one.title, markdown_table(one));
    out += "\n" + std::string(assumed) + ".\n\n";
    if (auto const line = assumed_line(sized.assumed); !line.empty())
        out += markdown_cell(line.substr(0, line.size() - 1)) + ".\n\n";
    return out + std::string(disconnect_caution) + ".\n";
}

BANKWRIGHT_INLINE std::string cut_list_csv(Sized const& sized) {
    using namespace internal::sizing_text;
    using namespace sizing_words;
    auto const& list = sized.cuts;
    std::vector<Row> rows{{"kind", "item", "detail", "count", "amount", "unit"}};
    auto const meters = [](Length value) { return fmt::format("{:.4f}", value.value()); };
    for (auto const& total : list.wire)
        rows.push_back({"conductor", print(total.size), terminal_safe(total.color), std::to_string(total.pieces),
                        meters(total.length), "m"});
    for (auto const& cut : list.cuts)
        rows.push_back(
            {"cut", cut.id, fmt::format("{}, {} to {}", print(cut.size), cut.from, cut.to), "1", meters(cut.cut), "m"});
    for (auto const& end : list.ends)
        rows.push_back(
            {"end", end.what, fmt::format("{}, {}", print(end.size), end.on), std::to_string(end.count), "", ""});
    for (auto const& article : list.articles)
        rows.push_back({"part", article.what, article.detail, std::to_string(article.parts.size()), "", ""});
    for (auto const& battery : list.batteries)
        rows.push_back({"part", "battery", battery.what, std::to_string(battery.count),
                        battery.each ? fmt::format("{:.2f}", battery.each->value() * battery.count) : "",
                        battery.each ? "kg" : ""});
    rows.push_back({"part", "heat-shrink", "", "", meters(list.heat_shrink), "m"});
    rows.push_back({"part", "No. 10 screw", "pilot hole 1/8 in", std::to_string(list.screws), "", ""});
    rows.push_back({"hole", "plug and receptacle", "about 1 in", std::to_string(list.receptacle_holes), "", ""});
    std::string out;
    for (auto const& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            out.append(i > 0 ? "," : "").append(csv_cell(row[i]));
        out += "\r\n";
    }
    return out;
}

} // namespace bankwright
