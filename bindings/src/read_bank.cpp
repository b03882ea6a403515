#include "read_bank.hpp"

#include "answers.hpp"
#include "bankwright/config/plain_document.hpp"
#include "bankwright/reports/findings_json.hpp"

#include <stdexcept>
#include <utility>

namespace bankwright::python {

ReadBank::ReadBank(std::string text_, std::string file_, PartLists part_lists_) : part_lists(std::move(part_lists_)) {
    seen.file = std::move(file_);
    seen.text = std::move(text_);
    seen = inspect_for({});
}

Inspection ReadBank::inspect_for(CheckOptions const& rules) const {
    auto inspection = inspect(seen.text, rules, {}, [this](std::string const& path) -> PartListText {
        auto const found = part_lists.find(path);
        if (found == part_lists.end()) return {path, {}, "is not there, or not in the folder of the bank file"};
        return {path, found->second, {}};
    });
    inspection.file = seen.file;
    return inspection;
}

Bank const& ReadBank::whole() const {
    if (!seen.as_written) throw Refused{findings_json({seen})};
    return seen.bank;
}

DocumentValue document_answer(std::string const& text, std::string const& file) {
    auto read = read_plain_document(text);
    if (!read.findings.empty())
        throw Refused{findings_json({{.file = file, .text = text, .findings = std::move(read.findings)}})};
    return std::move(read.root);
}

Moment moment_of(MomentWords const& words) {
    if (int{words.rest} + int{words.current.has_value()} + int{words.throttle.has_value()} > 1)
        throw std::invalid_argument("at most one of `throttle`, `current` and `rest`");
    Moment moment;
    if (words.rest) moment.loads = LoadsAre::at_rest;
    if (words.throttle) moment.throttle = Throttle::of(*words.throttle);
    if (words.current) {
        moment.loads = LoadsAre::constant_current;
        moment.current = *words.current * si::ampere;
    }
    return moment;
}

} // namespace bankwright::python
