// `bankwright report FILE -o report.html`: everything about one bank on one page, for a phone, a desk and a printer.
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/page/bank_report.hpp"
#include "command.hpp"

#include <string>
#include <vector>

struct ReportCommand {
    static constexpr char name[] = "report";
    static constexpr char about[] = "Everything about it on one page for a phone, a desk and a printer: HTML";

    std::string file; // "-": standard input
    OutputFile output;
    bankwright::Moment moment;
    bankwright::HookupOptions hookup;
    std::vector<bankwright::page::Chapter> only; // empty: all
    std::string log;                             // of a hook-up; empty: none

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;

private:
    std::string read_chapter(std::string const& typed);
};
