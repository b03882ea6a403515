// The table of keys against itself and against the members that it fills.
#include "bankwright/config/fields.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/config/schema/key_words.hpp"
#include "support/findings_text.hpp"

#include <set>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using Names = std::vector<std::string>;

TEST_SUITE_BEGIN("config/keys");

namespace {

template <class Part>
Names fields_of() {
    Names names;
    Part part;
    for_each_field(part, [&](std::string_view name, auto&&) { names.emplace_back(name); });
    return names;
}

Names keys_of(SectionSpec const& section) {
    Names names;
    for (auto const& key : section.keys)
        if (key.name != "model") names.emplace_back(key.name);
    return names;
}

Names fields_of(PartKind kind) {
    switch (kind) {
    case PartKind::battery:
        return fields_of<Battery>();
    case PartKind::jumper:
    case PartKind::cable:
        return fields_of<Run>();
    case PartKind::breaker:
    case PartKind::fuse:
        return fields_of<ProtectiveDevice>();
    case PartKind::switch_:
        return fields_of<Switch>();
    case PartKind::shunt:
        return fields_of<Shunt>();
    case PartKind::relay:
        return fields_of<Relay>();
    case PartKind::selector:
        return fields_of<Selector>();
    case PartKind::converter:
        return fields_of<Converter>();
    case PartKind::busbar:
        return fields_of<Busbar>();
    case PartKind::connector:
        return fields_of<Connector>();
    case PartKind::motor:
        return fields_of<Motor>();
    case PartKind::load:
        return fields_of<Load>();
    case PartKind::charger:
        return fields_of<Charger>();
    }
    return {};
}

} // namespace

TEST_CASE("each key fills a member and each member has a key, in the same order") {
    CHECK(fields_of<System>() == keys_of(system_section));
    for (auto const& section : part_sections) {
        CAPTURE(section.name);
        CHECK(fields_of(*section.kind) == keys_of(section));
    }
}

TEST_CASE("sections stand in the order of the kinds of part") {
    for (std::size_t i = 0; i < part_sections.size(); ++i) {
        CHECK(part_sections[i].kind == static_cast<PartKind>(i));
        CHECK(part_sections[i].name == section_names[i]);
    }
}

TEST_CASE("a key stands once in its section, and what a part needs are keys") {
    for (auto const& section : part_sections) {
        CAPTURE(section.name);
        std::set<std::string_view> names;
        for (auto const& key : section.keys)
            CHECK(names.insert(key.name).second);
        for (auto const& requirement : section.requirements)
            for (auto const& alternative : internal::key_words::alternatives_of(requirement))
                for (auto const& key : alternative)
                    CHECK(names.count(key) == 1);
    }
}

TEST_CASE("every key says what it means, and its example reads clean") {
    auto const base = std::string("bankwright = 1\n[models]\ndeck-agm = {}\n");
    for (auto const& section : part_sections) {
        for (auto const& key : section.keys) {
            CAPTURE(section.name);
            CAPTURE(key.name);
            CHECK_FALSE(key.meaning.empty());
            if (key.kind == KeyKind::terminal) continue; // names parts of the file that the example comes from
            auto const text = base + "[" + std::string(section.name) + "]\nP = { " + std::string(key.name) + " = " +
                              std::string(key.example) + " }\n";
            for (auto const& finding : read(text).findings) {
                CAPTURE(finding.message);
                CHECK(finding.rule == "file/missing-key"); // it may lack other keys
            }
        }
    }
}

TEST_CASE("the classes that have a time-current band are those that the table of keys offers") {
    for (auto const kind : {PartKind::breaker, PartKind::fuse}) {
        auto const& key = *find_key(section_spec(kind), "class");
        CHECK(Names(key.choices.begin(), key.choices.end()) == Names(trip_class_names.begin(), trip_class_names.end()));
        CHECK(internal::key_words::allowed(key).find("`sae-j554`") != std::string::npos);
    }
}

TEST_CASE("requirements in words") {
    CHECK(internal::key_words::in_words(internal::key_words::alternatives_of({"resistance | size length"})) ==
          "`resistance`, or `size` and `length`");
    CHECK(internal::key_words::in_words(internal::key_words::alternatives_of({"rating"})) == "`rating`");
}

TEST_CASE("ranges in words") {
    CHECK(internal::key_words::range_text<StateOfCharge>(keys::part_of_whole) == "from 0 % to 100 %");
    CHECK(internal::key_words::range_text<Voltage>(keys::volts) == "more than 0 V, at most 1 kV");
    CHECK(internal::key_words::range_text<WireSize>(keys::copper_area) == "from 0.01 mm2 to 2000 mm2");
    CHECK(internal::key_words::range_text<int>(Range{1.0, 1.0}) == "1");
}

TEST_CASE("a value that is no number is in no range") {
    CHECK_FALSE(keys::volts.holds(std::numeric_limits<double>::quiet_NaN()));
    CHECK_FALSE(keys::volts.holds(0.0));
    CHECK(keys::volts_or_none.holds(0.0));
}

TEST_SUITE_END();
