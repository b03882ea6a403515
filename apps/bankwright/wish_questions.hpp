// The questions that `plan` asks at a terminal: one line each, the usual answer offered, `?`, `back` and `quit`
// understood.
#pragma once

#include "bankwright/planning/wish_words.hpp"

#include <cstddef>
#include <optional>
#include <string>

// Somebody sits at both ends: questions go to standard error, so that a file may go to standard output.
bool can_ask();

// What was answered; none where the asker was told to quit, or has gone. With a problem: it is told, and what it is
// about is asked again, the other answers standing.
std::optional<bankwright::WishWords> ask_for_wish(bankwright::WishWords answers = {},
                                                  std::optional<bankwright::WishProblem> const& problem = {});

// Which of several banks; its place among them. None where the asker was told to quit.
std::optional<std::size_t> ask_which(std::size_t count, std::string const& side_by_side);

// A name for the file.
std::optional<std::string> ask_for_file();
