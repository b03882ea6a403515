// How long until the chargers have filled the bank, and through which stages?
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/chapters/course.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/recharge_words.hpp"
#include "bankwright/reports/source_cautions.hpp"
#include "bankwright/units/print.hpp"

#include <cstddef>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

inline std::string filled_in(RechargeResult const& run) {
    return run.end == RechargeEnd::time ? "more than " + print(run.duration) : charge_words::lasting(run);
}

inline void charging_chapter(Html& html, BankReport const& report) {
    if (report.bank.chargers.empty()) return;
    html.folded_chapter("charging", "How long it charges");
    if (!report.charge_from_empty) {
        html.paragraph(sentence(report.no_charge)).close();
        return;
    }
    auto const& run = *report.charge_from_empty;
    if (!charges(run.end)) {
        html.paragraph(sentence(charge_words::ending(run) + ".")).close();
        return;
    }
    html.open("p").element("strong", filled_in(run));
    html.prose(std::string(" from empty, chargers plugged in and every motor and load off.") +
               (report.charge_as_described && charges(report.charge_as_described->end)
                    ? " From the charge in the file: " + filled_in(*report.charge_as_described) + "."
                    : ""));
    html.close();
    std::vector<std::string> said;
    for (auto const& output : run.outputs)
        said.push_back(charge_words::stages(output) + ".");
    for (auto const& gone : run.dropped_out)
        said.push_back(sentence(run_words::drop_out(gone) + ": its voltage is too high."));
    for (std::size_t b = 0; b < run.batteries.size(); ++b)
        if (!run.batteries[b].full)
            said.push_back(fmt::format("`{}` is at {:.0f} % at the end, not full.", report.bank.batteries[b].id,
                                       run.batteries[b].charge.in_percent()));
    if (!report.hookup) // else its sheet says so
        for (auto const& line : sources_at_work(report.bank))
            said.push_back(sentence(line + "."));
    html.items(said);
    charge_course(html, report.bank, run.samples, "Charge of the batteries on the charger");
    html.close();
}

} // namespace bankwright::page
