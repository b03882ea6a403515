#include "folders.hpp"

#include "bankwright/config/keys.hpp"
#include "bankwright/config/read_limits.hpp"

#include <utility>

using namespace bankwright;

namespace {

// "a/b" -> "a" -> ""
std::string above(std::string const& folder) {
    auto const slash = folder.rfind('/');
    return slash == std::string::npos ? std::string() : folder.substr(0, slash);
}

std::string joined(std::string const& folder, std::string_view name) {
    return (folder.empty() ? folder : folder + "/") + std::string(name);
}

} // namespace

Tree& Folders::tree(std::string const& root) { return trees_.try_emplace(root, root).first->second; }

std::vector<std::string> Folders::files_read() const {
    std::vector<std::string> all;
    for (auto const& [root, tree] : trees_) {
        auto names = tree.files();
        all.insert(all.end(), names.begin(), names.end());
    }
    return all;
}

PartListSource Folders::part_lists_for(BankFile const& file) {
    return [this, file](std::string const& path) -> PartListText {
        if (file.tree.empty()) return {{}, {}, "cannot be looked for: standard input has no folder"};
        auto& around = tree(file.tree);
        auto const folder = around.folder_of(file.name);
        if (!folder) return {{}, {}, "cannot be looked for: the bank file lies outside `" + file.tree + "`"};
        return around.part_list(*folder, path, ReadLimits{}.bytes);
    };
}

FolderSettings* Folders::settings_for(BankFile const& file) {
    if (file.tree.empty()) return nullptr;
    auto const slash = file.name.rfind('/');
    auto const written =
        file.tree + '\0' + (slash == std::string::npos ? std::string() : file.name.substr(0, slash + 1));
    auto const [at, is_new] = folders_.try_emplace(written);
    if (is_new) at->second = tree(file.tree).folder_of(file.name);
    return at->second ? settings_in(file.tree, *at->second) : nullptr;
}

FolderSettings* Folders::settings_in(std::string const& root, std::string const& folder) {
    auto const [at, is_new] = settings_.try_emplace(root + '\0' + folder);
    auto& known = at->second;
    if (is_new) {
        auto const& found = tree(root).text(joined(folder, settings_file_name), ReadLimits{}.bytes);
        if (!found.is_missing) {
            known.emplace();
            known->verdict.file = found.file;
            known->verdict.text = found.input.text;
            known->trouble = found.input.trouble;
            known->readable = known->trouble.empty();
            if (known->readable) {
                auto read = read_settings(found.input.text);
                known->settings = std::move(read.settings);
                known->readable = read.readable;
                known->verdict.findings = std::move(read.findings);
            }
        }
    }
    if (known) return &*known;
    return folder.empty() ? nullptr : settings_in(root, above(folder));
}
