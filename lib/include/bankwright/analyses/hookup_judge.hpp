// A hook-up as it happens: is what was read right, may the next step be made, and if not, which mistake explains it and
// what is to be read next?
#pragma once

#include "bankwright/analyses/hookup/hookup_questions.hpp"
#include "bankwright/analyses/hookup/mistake_search.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/hookup_log.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

namespace bankwright {

struct JudgedAnswer {
    std::size_t entry = 0; // the last that was given
    bool is_right = false;
    bool is_over_gap = false; // within its range, and yet more would flow than a battery may carry
};

enum class HookupState { asking, stopped, complete };

struct HookupJudgment {
    HookupState state = HookupState::asking;
    std::vector<std::optional<JudgedAnswer>> answers; // by question
    std::optional<std::size_t> at;                    // the question to be asked, or that stopped
    std::vector<std::size_t> further;                 // entries read since the stop to find its cause
    std::vector<std::size_t> strays;                  // entries that are about nothing on the sheet
    std::vector<std::size_t> left_out;                // questions before the last one answered that nobody answered
    std::optional<MistakeFound> found;                // stopped, and not for too wide a gap
    bool again = false;                               // stopped, and the reading itself is doubted: take it once more
};

// Keeps the sheet, so that each entry more costs little.
class HookupJudge {
public:
    // Throws as hookup() does.
    HookupJudge(Bank const& bank, HookupOptions const& options = {});
    ~HookupJudge();
    HookupJudge(HookupJudge const&) = delete;
    HookupJudge& operator=(HookupJudge const&) = delete;

    HookupResult const& sheet() const;
    std::vector<HookupQuestion> const& questions() const;

    // Entries in the order in which they were given; one about a question that was answered answers it anew. Throws
    // std::invalid_argument for `also` on terminals that the bank does not have, and for volts where an ohmmeter is
    // asked for, or the other way around.
    HookupJudgment judge(std::vector<LogEntry> const& entries) const;

private:
    class Judging;
    class Kept;
    std::unique_ptr<Kept const> kept_;
};

// Why an entry is no answer where the log has it: ohms where volts are read, or the other way around. Empty: it is one.
std::string_view unfit_answer(LogEntry const& entry);

// What the log says of its meter goes before `options`.
HookupOptions hookup_options(HookupLog const& log, HookupOptions options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup_judge_inl.hpp"
#endif
