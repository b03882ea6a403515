// `bankwright report FILE -o report.html`: everything about one bank on one page, for a phone, a desk and a printer.
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/network/moment.hpp"
#include "command.hpp"

#include <string>

struct ReportCommand {
    static constexpr char name[] = "report";
    static constexpr char about[] = "Everything about it on one page for a phone, a desk and a printer: HTML";

    std::string file; // "-": standard input
    OutputFile output;
    bankwright::Moment moment;
    bankwright::HookupOptions hookup;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
