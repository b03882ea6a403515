#include "bankwright/config/read.hpp"
#include "support/findings_text.hpp"

#include <map>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/part_lists");

namespace {

// Lists that are held in memory, as a program that embeds the library has them.
struct Shelf {
    std::map<std::string, std::string> texts;
    int asked = 0;

    PartListSource source() {
        return [this](std::string const& path) -> PartListText {
            ++asked;
            auto const found = texts.find(path);
            if (found == texts.end()) return {{}, {}, "is not on the shelf"};
            return {"shelf/" + path, found->second, {}};
        };
    }
};

ReadResult read_with(Shelf& shelf, std::string const& text) { return read(text, {}, shelf.source()); }

std::string const lamps = "bankwright-parts = 1\n[models]\nlamp = { power = \"5 W\" }\n";

} // namespace

TEST_CASE("a part takes its keys from a model of a list, and its own win") {
    Shelf shelf{{{"lamps.toml", lamps}}};
    auto const result = read_with(shelf, "bankwright = 1\nparts = [\"lamps.toml\"]\n[loads]\nL = { model = \"lamp\" }\n"
                                         "M = { model = \"lamp\", power = \"7 W\" }\n");
    CHECK(lines_of(result.findings) == Lines{});
    REQUIRE(result.bank.loads.size() == 2);
    CHECK(result.bank.loads[0].power->value() == 5.0);
    CHECK(result.bank.loads[1].power->value() == 7.0);
    CHECK(test::place(*result.map.find("L", "power")) == "4:1-4:23"); // it stands in no line of this file
    CHECK(result.part_lists.empty());
}

TEST_CASE("a file without lists asks for none") {
    Shelf shelf{{}};
    CHECK(read_with(shelf, "bankwright = 1\n").findings.empty());
    CHECK(shelf.asked == 0);
}

TEST_CASE("without a source a list is a finding, and its models are not missed one by one") {
    auto const result =
        read("bankwright = 1\nparts = [\"lamps.toml\"]\n[loads]\nL = { model = \"lamp\" }\nM = { model = \"lamp\" }\n");
    CHECK(lines_of(result.findings) == Lines{"2:10-2:22 file/no-part-list .parts"});
    CHECK(result.findings[0].help.find("\"parts.toml\"") != std::string::npos);
    CHECK(result.left_out == Lines{"L", "M"});
    CHECK(result.readable);
}

TEST_CASE("a mistake in a list stands in the list, with its text") {
    Shelf shelf{{{"lamps.toml", "bankwright-parts = 1\nnam = 3\n[models]\nlamp = { powr = \"5 W\" }\n"}}};
    auto const result = read_with(shelf, "bankwright = 1\nnom = 3\nparts = [\"lamps.toml\"]\n");
    CHECK(lines_of(result.findings) == Lines{"2:1-2:8 file/unknown-key .nom", "2:1-2:8 file/unknown-key .nam",
                                             "4:10-4:22 file/unknown-key [models] lamp.powr"});
    CHECK(result.findings[0].file.empty());
    CHECK(result.findings[1].file == "shelf/lamps.toml");
    CHECK(result.findings[2].help == "did you mean `power`?");
    REQUIRE(result.part_lists.size() == 1);
    CHECK(result.part_lists[0].file == "shelf/lamps.toml");
    CHECK(result.part_lists[0].text.find("powr") != std::string::npos);
}

TEST_CASE("an absolute path is refused before anybody is asked") {
    Shelf shelf{{{"/lamps.toml", lamps}}};
    auto const result = read_with(shelf, "bankwright = 1\nparts = [\"/lamps.toml\", \"C:lamps.toml\", \"\"]\n");
    CHECK(lines_of(result.findings) == Lines{"2:10-2:23 file/no-part-list .parts", "2:25-2:39 file/no-part-list .parts",
                                             "2:41-2:43 file/no-part-list .parts"});
    CHECK(shelf.asked == 0);
}

TEST_CASE("a model of the file's own and one of a list do not share a name") {
    Shelf shelf{{{"lamps.toml", lamps}}};
    auto const result = read_with(shelf, "bankwright = 1\nparts = [\"lamps.toml\"]\n[models]\nlamp = { power = \"9 W\" "
                                         "}\n[loads]\nL = { model = \"lamp\" }\n");
    CHECK(lines_of(result.findings) == Lines{"2:10-2:22 file/duplicate-id .parts"});
    CHECK(result.findings[0].message ==
          "`lamp` is a model of the part list `lamps.toml` on line 3, and of this file on "
          "line 4; a name stands for one model");
    CHECK(result.bank.loads[0].power->value() == 9.0);
}

TEST_CASE("lists have limits: their number, their size") {
    Shelf shelf{{{"a", lamps + std::string(200, '#')}, {"b", lamps}, {"c", lamps}}};
    ReadLimits limits;
    limits.part_lists = 2;
    limits.bytes = 150;
    CHECK(lines_of(read("bankwright = 1\nparts = [\"a\", \"b\", \"c\"]\n", limits, shelf.source()).findings) ==
          Lines{"2:1-2:24 file/too-large .parts"});
    auto const result = read("bankwright = 1\nparts = [\"a\"]\n", limits, shelf.source());
    CHECK(lines_of(result.findings) == Lines{"1:1-1:2 file/too-large"});
    CHECK(result.findings[0].file == "shelf/a");
}

TEST_CASE("a part list or settings in the place of a bank is said so") {
    auto const list = read(lamps);
    CHECK(lines_of(list.findings) == Lines{"1:1-1:21 file/not-a-bank .bankwright-parts"});
    CHECK_FALSE(list.readable);
    CHECK(lines_of(read("fail-on = \"note\"\n").findings) == Lines{"1:1-1:17 file/not-a-bank .fail-on"});
    // One key astray does not make a bank something else.
    CHECK(lines_of(read("bankwright = 1\nskip = []\n").findings) == Lines{"2:1-2:10 file/unknown-key .skip"});
}

TEST_SUITE_END();

TEST_CASE("a name that stands twice in a list is told in the list") {
    Shelf shelf{{{"lamps.toml", lamps + "lamp = { power = \"7 W\" }\n"}}};
    auto const result =
        read_with(shelf, "bankwright = 1\nparts = [\"lamps.toml\"]\n[loads]\nL = { model = \"lamp\" }\n");
    CHECK(lines_of(result.findings) == Lines{"4:1-4:5 file/duplicate-id .lamp"});
    CHECK(result.findings[0].file == "shelf/lamps.toml");
}
