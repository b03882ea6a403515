// The log of a hook-up on the disk: read, begun, and what is refused of it.
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/hookup_log.hpp"
#include "outcome.hpp"

#include <optional>
#include <string>

struct KeptLog {
    bankwright::HookupLog log;
    bool is_new = false; // there is no such file yet
};

// What is wrong with it, with the place in the file, if anything is; that there is none only where `may_be_new` is
// false.
std::optional<Outcome> read_kept_log(KeptLog& kept, std::string const& name, bankwright::Bank const& bank,
                                     bool may_be_new, bool as_text, bool color);

// The bank's marks, and the meter as it was said on the command line.
void begin_log(bankwright::HookupLog& log, bankwright::Bank const& bank, bankwright::HookupOptions const& options);
