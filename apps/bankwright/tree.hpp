// What stands beside the bank files of one folder: part lists and settings. Nothing outside it is read, whatever a file
// names, and nothing through a link.
#pragma once

#include "bankwright/config/part_list.hpp"
#include "input.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

// Each file is read once, however many bank files use it.
class Tree {
public:
    // Throws nothing for a folder that is not there: then nothing is in it.
    explicit Tree(std::string root);

    // The folder of a file, from the root: "" for the root itself; none if it lies outside.
    std::optional<std::string> folder_of(std::string const& file) const;

    // A part list as a bank file in `folder` (from folder_of) names it.
    bankwright::PartListText part_list(std::string const& folder, std::string const& path, std::size_t limit);

    // A file by its path from the root. `missing` if there is none of that name.
    struct Text {
        std::string file; // to be opened from the current folder
        Input input;
        bool is_missing = false;
    };
    Text const& text(std::string const& path, std::size_t limit);

    // What was found of all that was asked for, to be opened from the current folder.
    std::vector<std::string> files() const;

private:
    std::string root_;  // as it was given
    std::string place_; // the same without links
    std::map<std::string, Text> texts_;
};
