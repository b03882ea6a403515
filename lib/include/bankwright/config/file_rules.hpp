// What can be wrong with the file itself, before anything is asked of the bank in it?
#pragma once

#include "bankwright/findings/rule_info.hpp"

#include <array>

namespace bankwright {

inline constexpr RuleInfo file_syntax{
    .id = "file/syntax",
    .level = Level::error,
    .since = "0.1.0",
    .what = "text that is not TOML 1.0 in UTF-8",
    .why = "the parser stops there, so nothing of the bank can be checked",
    .fix = "correct the text at the place shown: a missing quote, bracket, comma or equals sign, most often",
    .source = "TOML 1.0.0 [read]; the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_unknown_key{
    .id = "file/unknown-key",
    .level = Level::error,
    .since = "0.1.0",
    .what = "a section or a key that a bank file does not have",
    .why = "a misspelled key would be ignored silently, and the bank checked without what it was meant to say",
    .fix = "spell it as the table of keys does; `bankwright schema` prints every key",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_missing_key{
    .id = "file/missing-key",
    .level = Level::error,
    .since = "0.1.0",
    .what = "a part that lacks a key without which nothing can be computed for it",
    .why = "a guess in its place could pass a bank that is dangerous",
    .fix = "read the value from the part's label or measure it, and write it down",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_bad_value{
    .id = "file/bad-value",
    .level = Level::error,
    .since = "0.1.0",
    .what = "a value of the wrong kind, out of its range, or not among the words allowed",
    .why = "no real part has such a value, so whatever were computed from it would be wrong",
    .fix = "correct the value; the message says what is allowed",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_bad_unit{
    .id = "file/bad-unit",
    .level = Level::error,
    .since = "0.1.0",
    .what = "a quantity without a unit, with an unknown unit, or with the unit of another quantity",
    .why = "feet read as meters or milliohms as ohms change every number by a factor of three or a thousand",
    .fix = "write the value as text with its unit, such as \"36 V\", \"4.2 mohm\", \"17 ft\", \"6 AWG\"",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_unknown_terminal{
    .id = "file/unknown-terminal",
    .level = Level::error,
    .since = "0.1.0",
    .what = "a conductor landed on a terminal that no part of the bank has",
    .why = "the conductor would hang loose, and the bank that is checked would not be the bank that is wired",
    .fix = "name a terminal of a part in the file: A+ of a battery, CB.line of a breaker, bow.plug+ of a connector",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_duplicate_id{
    .id = "file/duplicate-id",
    .level = Level::error,
    .since = "0.1.0",
    .what = "one name given to two parts, or one key written twice",
    .why = "nobody, person or program, can tell which of the two a conductor or a finding means",
    .fix = "give each part a name of its own",
    .source = "TOML 1.0.0: keys are unique [read]; the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_too_large{
    .id = "file/too-large",
    .level = Level::error,
    .since = "0.1.0",
    .what = "a file, a name, a nesting or a number of parts beyond what any bank on a small boat needs",
    .why = "it is most likely not a bank file, and reading on would only cost time and memory",
    .fix = "describe one bank in one file; a program that embeds the library can raise the limits",
    .source = "bankwright's own limits",
};

inline constexpr RuleInfo file_not_a_bank{
    .id = "file/not-a-bank",
    .level = Level::error,
    .since = "0.1.0",
    .what = "a part list, a file of readings or a settings file where a bank file is meant",
    .why = "there is no bank in it, so nothing at all would be checked, and that would look like a clean result",
    .fix = "name the bank files that use it; in a folder they are found, and what else belongs there is ignored",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_no_part_list{
    .id = "file/no-part-list",
    .level = Level::error,
    .since = "0.1.0",
    .what = "an entry of `parts` that leads to no part list: the file is missing, is not one, or lies outside the "
            "folder that is checked",
    .why = "the parts that take their keys from it cannot be checked; and a bank file from somebody else must not make "
           "the program read whatever it likes",
    .fix = "name a part list beside or above the bank file, inside the folder given to the command, by its own path: "
           "not absolute, not through a link",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_no_version{
    .id = "file/no-version",
    .level = Level::note,
    .since = "0.1.0",
    .what = "a bank file that does not say which version of the format it is written in",
    .why = "it is read as version 1, the only one; should there be another, nobody could tell which was meant",
    .fix = "write `bankwright = 1` as its first line",
    .source = "the format of a bank file is bankwright's own",
};

inline constexpr RuleInfo file_accept_without_reason{
    .id = "file/accept-without-reason",
    .level = Level::warning,
    .since = "0.1.0",
    .what = "a finding accepted without saying why",
    .why = "the next person to look at the boat cannot tell a judgment from a shrug",
    .fix = "add `reason = \"...\"` to that [[accept]]: what makes it safe here, and who looked",
    .source = "common practice, no single source",
};

inline constexpr RuleInfo file_accept_unused{
    .id = "file/accept-unused",
    .level = Level::warning,
    .since = "0.1.0",
    .what = "an accepted finding that no longer occurs",
    .why = "left in place it would hide the same fault when it comes back",
    .fix = "remove that [[accept]]",
    .source = "common practice, no single source",
};

inline constexpr std::array file_rules{
    file_syntax,           file_unknown_key,           file_missing_key,  file_bad_value,  file_bad_unit,
    file_unknown_terminal, file_duplicate_id,          file_too_large,    file_not_a_bank, file_no_part_list,
    file_no_version,       file_accept_without_reason, file_accept_unused};

} // namespace bankwright
