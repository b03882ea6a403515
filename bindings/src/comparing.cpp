// How do banks differ?
#include "answers.hpp"
#include "bankwright/reports/compare_json.hpp"
#include "bankwright/reports/compare_text.hpp"

namespace bankwright::python {

CompareAnswer compare_answer(std::vector<std::shared_ptr<ReadBank const>> const& banks) {
    std::vector<BankFigures> figures;
    for (auto const& read : banks)
        figures.push_back(figures_of(read->seen.file, read->whole(), {read->seen.findings, read->seen.arrangement, {}}));
    return {compare_json(figures), compare_text(figures)};
}

} // namespace bankwright::python
