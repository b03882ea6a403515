// Columns of text that line up.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace bankwright {

using Row = std::vector<std::string>;

enum class Align { left, right };

// Every row as one line; two blanks between columns, none at a line's end. Cells hold printable ASCII.
inline std::string table(std::vector<Row> const& rows, std::vector<Align> const& aligned) {
    std::vector<std::size_t> widths(aligned.size(), 0);
    for (auto const& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i)
            widths[i] = std::max(widths[i], row[i].size());
    std::string out;
    for (auto const& row : rows) {
        std::string line;
        for (std::size_t i = 0; i < row.size(); ++i) {
            std::string const blanks(widths[i] - row[i].size(), ' ');
            line += (i == 0 ? "" : "  ") + (aligned[i] == Align::left ? row[i] + blanks : blanks + row[i]);
        }
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + '\n';
    }
    return out;
}

} // namespace bankwright
