// Which answers does a hook-up sheet ask for, in its order, and how far is the bank made when each is given?
#pragma once

#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/bank/hookup_log.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace bankwright {

struct HookupQuestion {
    LogWhen when = LogWhen::alone; // never `also`
    std::string part;
    std::size_t index = 0; // in the batteries, the dead checks or the steps of the result, as `when` says
};

// Dead steps, then the ohmmeter, then the rest.
std::vector<HookupQuestion> hookup_questions(Bank const& bank, HookupResult const& result);

// Null for what an ohmmeter answers, and where nothing is read.
MeterReading const* right_reading(HookupQuestion const& question, HookupResult const& result);

// Its number; -1 where the bank has none of that name.
int connection_of(PartialBank const& partial, std::string const& part);

// How far the bank is made when a question is answered.
struct QuestionState {
    Made made;
    int pending = -1; // the connection whose gap is read
};
std::vector<QuestionState> question_states(std::vector<HookupQuestion> const& questions, HookupResult const& result,
                                           PartialBank const& partial);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/hookup_questions_inl.hpp"
#endif
