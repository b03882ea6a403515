// A hook-up at the terminal: one question after the other, each answer on the disk before the next is asked.
#pragma once

#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/reports/logged.hpp"
#include "outcome.hpp"

// Somebody sits at standard input.
bool somebody_answers();

// `logged` has all but the judgment; its log is written after every answer. Says how it went at the end.
Outcome ask_hookup(bankwright::HookupJudge const& judge, bankwright::LoggedHookup logged, bool color);
