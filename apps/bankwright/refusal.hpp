// What the commands that answer for a whole bank refuse, and in which words.
#pragma once

#include "checked_file.hpp"
#include "outcome.hpp"

#include <optional>
#include <string>

// "bankwright: FILE: what", status 2.
Outcome unusable(std::string const& file, std::string const& what);

// The findings of a file that could not be read whole.
Outcome refused(bankwright::Verdict verdict, bool as_text, bool color);

// Unless the bank could be read, and read whole: what could be understood of it would be another bank.
std::optional<Outcome> refuse_unless_whole(CheckedFile& checked, std::string const& file, bool as_text, bool color);

// What goes into `output` ("a drawing" is `what`) must not go over a file that was read for it; none if it does not.
std::optional<Outcome> refuse_to_write_over(CheckedFile const& checked, std::string const& file,
                                            std::string const& output, std::string const& what);
