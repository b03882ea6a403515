// What counts for a bank file besides its own text: the nearest settings above it, and the part lists of its tree.
#pragma once

#include "bank_files.hpp"
#include "bankwright/findings/verdict.hpp"
#include "bankwright/rules/settings.hpp"
#include "tree.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

// A settings file that was read: what it asks, and what is wrong with it.
struct FolderSettings {
    bankwright::Settings settings;
    bool readable = true;
    std::string trouble;         // why it could not be read; empty if it could
    bankwright::Verdict verdict; // findings in it; none where nothing is wrong
    bool is_told = false;        // the verdict has been given to the reader: once is enough
};

// One for a whole run: what many bank files share is read once.
class Folders {
public:
    bankwright::PartListSource part_lists_for(BankFile const& file);
    FolderSettings* settings_for(BankFile const& file); // null where there are none
    std::vector<std::string> files_read() const;        // part lists and settings

private:
    Tree& tree(std::string const& root);
    FolderSettings* settings_in(std::string const& root, std::string const& folder);

    std::map<std::string, Tree> trees_;                             // by root
    std::map<std::string, std::optional<std::string>> folders_;     // by root and parent folder as written
    std::map<std::string, std::optional<FolderSettings>> settings_; // by root and folder
};
