// A place in the text of a bank file: 1-based lines and columns, columns in code points, end exclusive.
#pragma once

namespace bankwright {

struct Position {
    int line = 0;
    int column = 0;
    friend constexpr bool operator==(Position, Position) = default;
};

struct Region {
    Position begin;
    Position end;
    friend constexpr bool operator==(Region, Region) = default;
};

} // namespace bankwright
