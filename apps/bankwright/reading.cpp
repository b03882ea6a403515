#include "reading.hpp"

#include "input.hpp"

#include "bankwright/bank/locate.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/findings/order.hpp"
#include "bankwright/rules/run.hpp"

#include <iterator>
#include <utility>

using namespace bankwright;

Judged judge(std::string const& file) {
    ReadLimits const limits;
    auto input = read_input(file, limits.bytes);
    Judged judged;
    judged.verdict.file = file;
    judged.trouble = std::move(input.trouble);
    if (!judged.trouble.empty()) return judged;

    auto read = bankwright::read(input.text, limits);
    auto& findings = judged.verdict.findings;
    findings = std::move(read.findings);
    judged.readable = read.readable;
    if (read.readable) {
        auto checked = check(read.bank);
        judged.verdict.arrangement = std::move(checked.arrangement);
        std::move(checked.findings.begin(), checked.findings.end(), std::back_inserter(findings));
    }
    locate(findings, read.map);
    order(findings);
    judged.bank = std::move(read.bank);
    judged.verdict.text = std::move(input.text);
    return judged;
}
