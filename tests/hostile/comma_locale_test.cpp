// A program in which numbers have a comma: what the library reads and writes is the same to the byte.
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/config/write.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/sarif.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/rules/inspect.hpp"
#include "bankwright/units/print.hpp"
#include "support/comma_locale.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

std::string all_that_is_said(std::string const& text) {
    auto const seen = inspect(text);
    Verdicts verdicts(1);
    verdicts[0].file = "bank.toml";
    verdicts[0].text = text;
    verdicts[0].arrangement = seen.arrangement;
    verdicts[0].findings = seen.findings;
    auto said = findings_text(verdicts, {}) + findings_json(verdicts) + findings_sarif(verdicts, all_rules());
    if (!seen.as_written) return said;
    for (auto const& part : operating_point(seen.bank).parts)
        said += print(part.current) + print_exact(part.voltage) + print(part.power) + "\n";
    auto const written = write(seen.bank);
    CHECK(inspect(written).bank == seen.bank);
    return said + written;
}

} // namespace

TEST_CASE("where numbers have a comma, every example is read, checked, solved and written as anywhere") {
    std::vector<std::string> texts, said;
    for (auto const& entry : std::filesystem::directory_iterator(BANKWRIGHT_SOURCE_DIR "/data/examples")) {
        if (!entry.is_regular_file()) continue;
        std::ifstream file(entry.path(), std::ios::binary);
        texts.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
        said.push_back(all_that_is_said(texts.back()));
    }
    REQUIRE(texts.size() >= 10);
    support::CommaLocale const comma;
    if (!support::CommaLocale::c_has_comma()) MESSAGE("skipped: this machine has no German locale and cannot make one");
    for (std::size_t i = 0; i < texts.size(); ++i)
        CHECK(all_that_is_said(texts[i]) == said[i]);
}
