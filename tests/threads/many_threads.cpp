// Every thread reads, checks, solves, discharges, traces, draws and reports every bank; all must say the same.
//   many_threads FILE... -- THREADS ROUNDS
#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/analyses/trace.hpp"
#include "bankwright/config/write.hpp"
#include "bankwright/drawing/svg.hpp"
#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/to_html.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/sarif.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/rules/inspect.hpp"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iterator>
#include <string>
#include <thread>
#include <vector>

using namespace bankwright;

// Everything that the library says of one bank, in one number.
std::size_t all_of(std::string const& text) {
    auto seen = inspect(text);
    Verdicts verdicts(1);
    verdicts[0].file = "bank.toml";
    verdicts[0].text = text;
    verdicts[0].arrangement = seen.arrangement;
    verdicts[0].findings = seen.findings;
    auto said = findings_text(verdicts, {}) + findings_json(verdicts) + findings_sarif(verdicts, all_rules());
    if (seen.as_written) {
        said += write(seen.bank) + drawing::to_svg(seen.bank, {});
        auto const point = operating_point(seen.bank);
        for (auto const& part : point.parts)
            said += std::to_string(part.current.value());
        said += page::to_html(page::report_on(seen.bank, verdicts[0], all_rules(), {}));
        if (!unfit_for_trace(seen.bank)) said += std::to_string(trace(seen.bank, {}).diagnoses.size());
        if (!missing_for_discharge(seen.bank)) said += std::to_string(discharge(seen.bank).runtime.value());
    }
    return std::hash<std::string>()(said);
}

int main(int count, char** words) {
    std::vector<std::string> banks;
    int at = 1;
    for (; at < count && std::string(words[at]) != "--"; ++at) {
        std::ifstream file(words[at], std::ios::binary);
        banks.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
    }
    int const threads = at + 1 < count ? std::atoi(words[at + 1]) : 8;
    int const rounds = at + 2 < count ? std::atoi(words[at + 2]) : 3;
    std::vector<std::vector<std::size_t>> said(static_cast<std::size_t>(threads));
    std::vector<std::thread> running;
    for (std::size_t t = 0; t < said.size(); ++t)
        running.emplace_back([&, t] {
            for (int round = 0; round < rounds; ++round)
                for (std::size_t b = 0; b < banks.size(); ++b) {
                    auto const which = (b + t) % banks.size(); // not all on the same one
                    said[t].resize(banks.size());
                    said[t][which] = all_of(banks[which]);
                }
        });
    for (auto& thread : running)
        thread.join();
    for (auto const& one : said)
        if (one != said.front()) {
            std::puts("two threads say different things of one bank");
            return 1;
        }
    std::printf("%d threads, %d rounds, %zu banks: no race, and one answer\n", threads, rounds, banks.size());
    return 0;
}
