// What is most likely wrong with a bank on which a meter read otherwise than it should?
#include "answers.hpp"
#include "bankwright/analyses/trace.hpp"
#include "bankwright/config/read_readings.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/trace_json.hpp"
#include "bankwright/reports/trace_text.hpp"

#include <stdexcept>
#include <utility>

namespace bankwright::python {

TraceAnswer trace_answer(ReadBank const& read, std::string const& readings, std::string const& file) {
    auto const& bank = read.whole();
    if (auto const unfit = unfit_for_trace(bank)) throw std::invalid_argument("no trace: " + *unfit);
    auto sheet = read_readings(readings, bank);
    if (!sheet.findings.empty()) // a reading left out would be another answer
        throw Refused{findings_json({{.file = file, .text = readings, .findings = std::move(sheet.findings)}})};
    Traced traced{head_of(read.seen), {}, {}};
    traced.result = trace(bank, readings_of(sheet.sheet), trace_options(sheet.sheet));
    traced.sheet = std::move(sheet.sheet);
    return {trace_json(traced), trace_text(traced, {})};
}

} // namespace bankwright::python
