// A TOML document as the reader wants it: plain values in the author's order, each with its place in the text.
// Nothing here knows what a bank is, and nothing but document_inl.hpp knows which parser is behind it.
#pragma once

#include "bankwright/devices/date.hpp"
#include "bankwright/findings/position.hpp"
#include "bankwright/linkage.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct DocumentEntry;

struct DocumentValue {
    enum class Kind { text, integer, number, boolean, date, time, array, table };
    Kind kind = Kind::table;
    std::string text;                   // text
    std::int64_t integer = 0;           // integer
    double number = 0.0;                // number
    bool boolean = false;               // boolean
    Date date;                          // date; `time` is any other date or time, and is only named
    std::vector<DocumentValue> items;   // array
    std::vector<DocumentEntry> entries; // table, in the author's order
    Region region;                      // a [table]'s is its header
};

struct DocumentEntry {
    std::string key;
    Region region; // from the key through the value; a [table]'s is its header
    DocumentValue value;
};

// What stopped the parser, or a key that stands twice.
struct DocumentProblem {
    std::string message;
    Region region;
    std::string repeats;    // the key that stands twice; empty: something else is wrong
    bool is_header = false; // it stands in a [header]
};

struct Document {
    DocumentValue root;
    std::vector<DocumentProblem> duplicates; // keys written twice; the later one is left out of `root`
    std::optional<DocumentProblem> error;    // root is then empty
};

// The text must be UTF-8 within the nesting limit (text_check.hpp). Never throws for what is in it.
Document parse_document(std::string_view text);

// The entry of that name in a table; null where there is none.
inline DocumentEntry const* find_entry(DocumentValue const& table, std::string_view key) {
    for (auto const& entry : table.entries) // as in find_key()
        if (entry.key.size() == key.size() && (key.empty() || entry.key[0] == key[0]) && entry.key == key)
            return &entry;
    return nullptr;
}

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/document_inl.hpp"
#endif
