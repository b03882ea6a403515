// From a bank to the text of its file, in one canonical form: what a program makes can be kept, compared and read
// again.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <map>
#include <string>
#include <vector>

namespace bankwright {

// read(write(bank)).bank == bank for every bank that a file can hold, to the last bit, and write(read(text).bank) is
// the same for every text of the same bank. Sections stand in a fixed order, parts in the author's; models are
// resolved, comments gone. Strings must be UTF-8. Throws std::invalid_argument for a quantity that is infinite or no
// number: no file can hold it.
std::string write(Bank const& bank);

// What people want to read beside the keys: lines of comment above all, under the header of a section, and behind a
// part, by its id. None may hold a line end.
struct WriteNotes {
    std::vector<std::string> head;
    std::map<std::string, std::vector<std::string>> sections;
    std::map<std::string, std::string> parts;
};

// The same bank for people: what several parts have in common stands once, as a model. read() gives the same bank.
std::string write(Bank const& bank, WriteNotes const& notes);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/write_inl.hpp"
#endif
