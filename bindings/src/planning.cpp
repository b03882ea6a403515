// Which bank does a wish come to?
#include "answers.hpp"
#include "bankwright/planning/plan.hpp"
#include "bankwright/planning/plan_file.hpp"
#include "bankwright/planning/wish_words.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/plan_json.hpp"
#include "bankwright/reports/plan_text.hpp"

#include <stdexcept>
#include <utility>

namespace bankwright::python {

namespace {

PartStock stock_of(std::string const& parts, std::string const& file) {
    if (parts.empty()) return usual_parts();
    auto stock = part_stock({{file, parts, {}}});
    if (count(stock.findings).error == 0) return stock;
    Verdict verdict;
    verdict.file = file;
    verdict.text = parts;
    verdict.findings = std::move(stock.findings);
    verdict.part_lists = std::move(stock.texts);
    throw Refused{findings_json({verdict})};
}

} // namespace

PlanAnswer plan_answer(std::map<std::string, std::string> const& wish, std::string const& parts,
                       std::string const& parts_file) {
    WishWords words;
    for (std::size_t p = 0; p < wish_part_names.size(); ++p)
        if (auto const found = wish.find(std::string(wish_part_names[p])); found != wish.end())
            words.of(static_cast<WishPart>(p)) = found->second;
    auto const read = read_wish(words);
    if (!read.wish) {
        std::string all;
        for (auto const& problem : read.problems)
            all += (all.empty() ? "" : "; ") + std::string(name(problem.part)) + ": " + problem.message;
        throw std::invalid_argument(all);
    }
    Planned planned;
    planned.wish = read.wish;
    planned.result = plan(*read.wish, stock_of(parts, parts_file));
    if (planned.result.banks.empty()) return {plan_json(planned), {}, {}};
    planned.text = plan_file(*read.wish, planned.result.banks.front());
    return {plan_json(planned), plan_text(planned), planned.text};
}

} // namespace bankwright::python
