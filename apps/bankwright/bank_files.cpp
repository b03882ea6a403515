#include "bank_files.hpp"

#include "bankwright/config/duty_keys.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/text_check.hpp"
#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"
#include "pattern.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>
#include <system_error>

namespace {

namespace fs = std::filesystem;
using bankwright::terminal_safe;

bool is_below(fs::path const& path, fs::path const& folder) {
    return std::mismatch(folder.begin(), folder.end(), path.begin(), path.end()).first == folder.end();
}

// "boats/a.toml" of "./boats//a.toml"; "." stays.
std::string tidy(fs::path const& path) { return path.lexically_normal().generic_string(); }

class Search {
public:
    void look_for(std::string const& argument) {
        std::error_code error;
        auto const status = fs::status(argument, error);
        bool const is_file = argument == "-" || (fs::exists(status) && !fs::is_directory(status));
        if (!is_file && fs::is_directory(status))
            look_in(argument);
        else if (!is_file && is_pattern(argument))
            look_by(argument);
        else
            add(named_file(argument)); // if there is none, reading it will say why
    }

    BankFiles take() { return std::move(found_); }

private:
    // What the folder holds, in the order of its names. Links are not followed: what they lead to is found where it
    // is, or lies outside.
    void walk(fs::path const& folder, std::vector<fs::path>& files) {
        std::error_code error;
        std::vector<fs::directory_entry> entries;
        for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
            entries.push_back(*at);
        if (error) return complain(folder.generic_string(), error.message());
        std::sort(entries.begin(), entries.end(),
                  [](auto const& a, auto const& b) { return a.path().filename() < b.path().filename(); });
        for (auto const& entry : entries) {
            auto const name = entry.path().filename().native();
            if (name.front() == '.') continue; // a tool's own
            auto const status = entry.symlink_status(error);
            if (error) complain(entry.path().generic_string(), error.message());
            if (fs::is_directory(status))
                walk(entry.path(), files);
            else if (fs::is_regular_file(status))
                files.push_back(entry.path());
        }
    }

    void look_in(std::string const& argument) {
        std::vector<fs::path> files;
        walk(argument, files);
        bool any = false;
        for (auto const& file : files) {
            if (!bankwright::same_letters(file.extension().native(), ".toml")) continue;
            any = true;
            add({tidy(file), argument, false});
        }
        if (!any) complain(argument, "holds no .toml file");
    }

    void look_by(std::string const& argument) {
        Pattern const pattern(argument);
        std::vector<fs::path> files;
        std::error_code error;
        if (fs::is_directory(pattern.folder(), error)) walk(pattern.folder(), files);
        bool any = false;
        for (auto const& file : files) {
            auto const name = tidy(file);
            if (!pattern.matches(name)) continue;
            any = true;
            add({name, named_file(name).tree, false});
        }
        if (!any) complain(argument, "matches no file");
    }

    void add(BankFile file) {
        bool const is_new = file.name == "-" || seen_.insert(tidy(file.name)).second;
        if (is_new) found_.files.push_back(std::move(file));
    }

    void complain(std::string const& what, std::string const& why) {
        found_.trouble += "bankwright: " + terminal_safe(what) + ": " + why + "\n";
    }

    BankFiles found_;
    std::set<std::string> seen_;
};

std::string_view first_word(std::string_view line) {
    auto const is_inner = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
    };
    auto const end = std::find_if_not(line.begin(), line.end(), is_inner);
    return line.substr(0, static_cast<std::size_t>(end - line.begin()));
}

} // namespace

BankFiles find_bank_files(std::vector<std::string> const& arguments) {
    Search search;
    for (auto const& argument : arguments)
        search.look_for(argument);
    return search.take();
}

BankFile named_file(std::string const& name) {
    if (name == "-") return {name, {}, true};
    std::error_code error;
    auto const folder = fs::path(name).parent_path();
    auto const place = fs::canonical(folder.empty() ? "." : folder, error);
    auto const here = fs::current_path(error);
    bool const is_somebodys = here.has_relative_path(); // all of a machine is no folder of bank files
    if (!error && is_somebodys && is_below(place, here)) return {name, ".", true};
    return {name, folder.empty() ? "." : folder.native(), true};
}

Resembles what_resembles(std::string_view text, std::string const& name) {
    if (fs::path(name).filename() == bankwright::settings_file_name) return Resembles::companion;
    constexpr std::array<std::string_view, 2> utf16{"\xFF\xFE", "\xFE\xFF"};
    for (auto const mark : utf16) // no TOML is: that wants to be said
        if (text.substr(0, 2) == mark) return Resembles::bank;
    auto kind = Resembles::other;
    text = bankwright::without_mark(text);
    while (!text.empty()) {
        auto line = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(line.size() + 1, text.size()));
        line.remove_prefix(std::min(line.find_first_not_of("[ \t\""), line.size()));
        auto const word = first_word(line);
        if (word == "bankwright" || word == "batteries") return Resembles::bank; // the version may be forgotten
        if (word == bankwright::keys::part_list_version || word == bankwright::duty_version ||
            word == bankwright::keys::readings_version || word == bankwright::keys::log_version)
            kind = Resembles::companion;
    }
    return kind;
}
