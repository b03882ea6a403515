#include "kept_log.hpp"

#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/config/file_rules.hpp"
#include "bankwright/config/read_log.hpp"
#include "bankwright/config/write_log.hpp"
#include "input.hpp"
#include "refusal.hpp"

#include <filesystem>
#include <string>
#include <system_error>
#include <utility>

using namespace bankwright;

std::optional<Outcome> read_kept_log(KeptLog& kept, std::string const& name, Bank const& bank, bool may_be_new,
                                     bool as_text, bool color) {
    std::error_code error;
    if (may_be_new && !std::filesystem::exists(name, error)) {
        kept.is_new = true;
        return std::nullopt;
    }
    ReadLimits const limits;
    auto input = read_input(name, limits.bytes);
    if (!input.trouble.empty()) return unusable(name, input.trouble);
    auto read = read_log(input.text, bank, limits);
    for (std::size_t e = 0; e < read.log.entries.size(); ++e)
        if (auto const problem = unfit_answer(read.log.entries[e]); !problem.empty()) {
            auto const& entry = read.log.entries[e];
            Finding finding{.rule = std::string(file_bad_value.id),
                            .message = "[[read]] " + std::to_string(e + 1) + " reads \"" + written(entry.reads) +
                                       "\", where " + std::string(problem),
                            .help = "write what the meter showed there",
                            .key = "reads"};
            finding.region = read.regions[e];
            read.findings.push_back(std::move(finding));
        }
    if (!read.findings.empty()) // an answer left out would be another log
        return refused({.file = name, .text = std::move(input.text), .findings = std::move(read.findings)}, as_text,
                       color);
    kept.log = std::move(read.log);
    return std::nullopt;
}

void begin_log(HookupLog& log, Bank const& bank, HookupOptions const& options) {
    log.name = bank.name;
    log.marks = part_marks(bank);
    log.of_reading = options.of_reading;
    log.digits = options.digits;
    log.resolution = options.resolution;
}
