// Bodies of hookup_questions.hpp.
#pragma once

#include "bankwright/analyses/hookup/hookup_questions.hpp"
#include "bankwright/graph/as_index.hpp"

#include <utility>

namespace bankwright {

namespace internal::hookup_asking {

inline bool is_dead_work(HookupStep const& step) {
    return step.action == HookupAction::fit || (step.action == HookupAction::land && step.dead);
}

inline LogWhen when(DeadCheckKind kind) {
    switch (kind) {
    case DeadCheckKind::run:
        return LogWhen::run;
    case DeadCheckKind::loop:
        return LogWhen::loop;
    case DeadCheckKind::apart:
        return LogWhen::apart;
    case DeadCheckKind::load:
        return LogWhen::load;
    case DeadCheckKind::hull:
        return LogWhen::hull;
    }
    return LogWhen::run;
}

} // namespace internal::hookup_asking

BANKWRIGHT_INLINE std::vector<HookupQuestion> hookup_questions(Bank const& bank, HookupResult const& result) {
    using namespace internal::hookup_asking;
    std::vector<HookupQuestion> questions;
    for (std::size_t b = 0; b < result.batteries.size(); ++b)
        questions.push_back({LogWhen::alone, bank.batteries[b].id, b});
    bool checked = false;
    auto const check = [&] {
        if (std::exchange(checked, true)) return;
        for (std::size_t d = 0; d < result.dead.size(); ++d)
            questions.push_back({when(result.dead[d].kind), result.dead[d].part, d});
    };
    for (std::size_t s = 0; s < result.steps.size(); ++s) {
        auto const& step = result.steps[s];
        if (!is_dead_work(step)) check();
        if (step.before) questions.push_back({LogWhen::before, step.part, s});
        questions.push_back({step.after ? LogWhen::after : LogWhen::done, step.part, s});
    }
    check();
    return questions;
}

BANKWRIGHT_INLINE int connection_of(PartialBank const& partial, std::string const& part) {
    auto const& all = partial.connections();
    for (std::size_t c = 0; c < all.size(); ++c)
        if (all[c].part == part) return static_cast<int>(c);
    return -1;
}

BANKWRIGHT_INLINE MeterReading const* right_reading(HookupQuestion const& question, HookupResult const& result) {
    auto const of = [](std::optional<MeterReading> const& reading) { return reading ? &*reading : nullptr; };
    switch (question.when) {
    case LogWhen::alone:
        return &result.batteries[question.index];
    case LogWhen::before:
        return of(result.steps[question.index].before);
    case LogWhen::after:
        return of(result.steps[question.index].after);
    default:
        return nullptr;
    }
}

BANKWRIGHT_INLINE std::vector<QuestionState> question_states(std::vector<HookupQuestion> const& questions,
                                                             HookupResult const& result, PartialBank const& partial) {
    std::vector<QuestionState> states;
    Made made(partial.connections().size(), 0);
    for (auto const& question : questions) {
        bool const is_of_step =
            question.when == LogWhen::before || question.when == LogWhen::after || question.when == LogWhen::done;
        int const connection = is_of_step ? connection_of(partial, question.part) : -1;
        if (connection >= 0 && question.when != LogWhen::before) {
            auto const action = result.steps[question.index].action;
            if (action != HookupAction::read) made[as_index(connection)] = action != HookupAction::open;
        }
        states.push_back({made, question.when == LogWhen::before ? connection : -1});
    }
    return states;
}

} // namespace bankwright
