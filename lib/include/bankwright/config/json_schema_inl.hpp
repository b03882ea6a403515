// The table of keys as JSON Schema draft-07.
#pragma once

#include "bankwright/config/json_schema.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/log_keys.hpp"
#include "bankwright/config/reading_keys.hpp"
#include "bankwright/config/schema/json_text.hpp"
#include "bankwright/config/schema/key_words.hpp"
#include "bankwright/units/unit_spelling.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::schema {

inline constexpr std::string_view id_pattern = "^[A-Za-z0-9_]([A-Za-z0-9_-]*[A-Za-z0-9_])?$";

inline constexpr std::string_view bare_number = R"([0-9]+(\.[0-9]*)?|\.[0-9]+)";

// A number with one of the quantity's units. No spelling holds a sign that a pattern reads in its own way.
inline std::string term_pattern(UnitTable const& units, bool may_be_negative) {
    return fmt::format(R"([+{}]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?\s*({}))", may_be_negative ? "-" : "",
                       fmt::join(unit_spellings(units), "|"));
}

inline std::string quantity_pattern(KeySpec const& key) {
    if (key.kind == KeyKind::wire_size)
        return fmt::format(
            R"(^\s*(([1-4]/0|0{{1,4}}|[1-9]|[12][0-9]|30)\s*AWG|([1-4]/0|0{{1,4}}|[1246]|8|1[02468])\s*SAE|{})\s*$)",
            term_pattern(area_units, false));
    return with_quantity(key.kind, [&](auto type) -> std::string {
        using Quantity = typename decltype(type)::type;
        if constexpr (std::is_same_v<Quantity, WireSize>) {
            return {};
        } else {
            UnitTable const& units = UnitsOf<Quantity>::table;
            bool const may_be_negative = key.range.is_bounded() && key.range.least < 0.0;
            auto const term = term_pattern(units, may_be_negative || std::is_same_v<Quantity, Temperature>);
            if (takes_tolerance(key.name))
                return fmt::format(R"(^\s*{0}\s*((\u00B1|[+]/?-)\s*({0}|{1})\s*)?$)", term,
                                   term_pattern(UnitsOf<Spread>::table, false));
            return units.sums ? fmt::format(R"(^\s*{0}(\s+{0})*\s*$)", term) : fmt::format(R"(^\s*{}\s*$)", term);
        }
    });
}

// The members that say what a value is.
inline void add_type(JsonText& json, KeySpec const& key) {
    switch (key.kind) {
    case KeyKind::text:
    case KeyKind::terminal:
    case KeyKind::model:
        json.text("type", "string");
        return;
    case KeyKind::texts:
        json.text("type", "array");
        json.open("items", '{');
        json.text("type", "string");
        json.close();
        return;
    case KeyKind::trips:
        json.text("type", "array");
        json.raw("minItems", "1");
        json.open("items", '{');
        json.text("type", "array");
        json.raw("minItems", "3");
        json.raw("maxItems", "3");
        json.open("items", '{');
        json.text("type", "string");
        json.close();
        json.close();
        return;
    case KeyKind::dimensions: {
        auto const side = term_pattern(length_units, false);
        json.text("type", "string");
        json.text("pattern",
                  fmt::format(R"(^\s*({0}|{1})\s*[x\u00D7]\s*({0}|{1})\s*[x\u00D7]\s*{1}\s*$)", bare_number, side));
        return;
    }
    case KeyKind::price:
        json.text("type", "string");
        json.text("pattern", R"(^ *[0-9]{1,9}(\.[0-9]{1,2})? *[A-Z]{3} *$)");
        return;
    case KeyKind::choice:
        json.texts("enum", key.choices);
        return;
    case KeyKind::integer:
        json.text("type", "integer");
        json.raw("minimum", fmt::format("{}", key.range.least));
        json.raw("maximum", fmt::format("{}", key.range.most));
        return;
    case KeyKind::boolean:
        json.text("type", "boolean");
        return;
    case KeyKind::date:
        json.text("type", "string");
        json.text("format", "date");
        return;
    default:
        json.text("type", "string");
        json.text("pattern", quantity_pattern(key));
    }
}

inline void add_examples(JsonText& json, KeySpec const& key) {
    // A date stands bare in TOML, but is a string to a schema.
    auto const example = key.kind == KeyKind::date ? fmt::format("\"{}\"", key.example) : std::string(key.example);
    if (key.kind == KeyKind::text && !key.choices.empty())
        json.texts("examples", key.choices); // an editor offers them, and takes another
    else
        json.raw("examples", fmt::format("[{}]", example));
}

inline void add_key(JsonText& json, KeySpec const& key) {
    json.open(key.name, '{');
    json.text("description", key.if_absent.empty() ? std::string(key.meaning)
                                                   : fmt::format("{} (if absent: {})", key.meaning, key.if_absent));
    add_type(json, key);
    add_examples(json, key);
    json.close();
}

inline void add_requirement(JsonText& json, Requirement const& requirement) {
    auto const alternatives = internal::key_words::alternatives_of(requirement);
    json.open("", '{');
    if (alternatives.size() == 1) {
        json.texts("required", alternatives[0]);
    } else {
        json.open(requirement.exactly_one ? "oneOf" : "anyOf", '[');
        for (auto const& keys : alternatives) {
            json.open("", '{');
            json.texts("required", keys);
            json.close();
        }
        json.close();
    }
    json.close();
}

// One table with the section's keys. What it needs may come from its model: then nothing is demanded of it here.
inline void add_table(JsonText& json, SectionSpec const& section) {
    json.text("type", "object");
    json.open("properties", '{');
    for (auto const& key : section.keys)
        add_key(json, key);
    json.close();
    json.raw("additionalProperties", "false");
    if (section.requirements.empty()) return;
    bool const has_model = find_key(section, "model") != nullptr;
    if (has_model) {
        json.open("anyOf", '[');
        json.open("", '{');
        json.texts("required", std::vector<std::string_view>{"model"});
        json.close();
        json.open("", '{');
    }
    json.open("allOf", '[');
    for (auto const& requirement : section.requirements)
        add_requirement(json, requirement);
    json.close();
    if (!has_model) return;
    json.close();
    json.close();
}

inline void open_named_tables(JsonText& json, std::string_view name, std::string_view meaning) {
    json.open(name, '{');
    json.text("description", meaning);
    json.text("type", "object");
    json.raw("additionalProperties", "false");
    json.open("patternProperties", '{');
}

// A model may hold any part's key: one that several kinds of part have is good if it is good for one of them.
inline void add_models(JsonText& json) {
    json.open(models_section, '{');
    json.text("description", "named sets of keys; a part that names one has its keys too");
    json.text("type", "object");
    json.open("additionalProperties", '{');
    json.text("type", "object");
    json.raw("additionalProperties", "false");
    json.open("properties", '{');
    std::vector<std::string_view> done{"model"};
    for (auto const& first_section : part_sections) {
        for (auto const& key : first_section.keys) {
            if (std::find(done.begin(), done.end(), key.name) != done.end()) continue;
            done.push_back(key.name);
            json.open(key.name, '{');
            json.text("description", key.meaning);
            json.open("anyOf", '[');
            std::vector<KeySpec const*> seen;
            for (auto const& section : part_sections) {
                auto const* same = find_key(section, key.name);
                if (!same || std::any_of(seen.begin(), seen.end(), [&](auto const* other) {
                        return other->kind == same->kind && other->choices.data() == same->choices.data();
                    }))
                    continue;
                seen.push_back(same);
                json.open("", '{');
                add_type(json, *same);
                add_examples(json, *same);
                json.close();
            }
            json.close();
            json.close();
        }
    }
    json.close();
    json.close();
    json.close();
}

inline void add_section(JsonText& json, SectionSpec const& section) {
    json.open(section.name, '{');
    json.text("description", section.meaning);
    add_table(json, section);
    json.close();
}

// Tables in double brackets.
inline void add_list(JsonText& json, SectionSpec const& section) {
    json.open(section.name, '{');
    json.text("description", section.meaning);
    json.text("type", "array");
    json.open("items", '{');
    add_table(json, section);
    json.close();
    json.close();
}

} // namespace internal::schema

BANKWRIGHT_INLINE std::string readings_json_schema() {
    using namespace internal::schema;
    JsonText json;
    json.open("", '{');
    json.text("$schema", "http://json-schema.org/draft-07/schema#");
    json.text("title", "bankwright file of readings");
    json.text("description", "what a meter showed on a battery bank");
    json.text("type", "object");
    json.raw("additionalProperties", "false");
    json.open("properties", '{');
    for (auto const& key : readings_root_section.keys)
        add_key(json, key);
    for (auto const* section : {&meter_section, &clamp_section, &state_section})
        add_section(json, *section);
    for (auto const* section : {&volts_section, &amps_section})
        add_list(json, *section);
    json.close();
    json.close();
    return json.take();
}

BANKWRIGHT_INLINE std::string log_json_schema() {
    using namespace internal::schema;
    JsonText json;
    json.open("", '{');
    json.text("$schema", "http://json-schema.org/draft-07/schema#");
    json.text("title", "bankwright log of a hook-up");
    json.text("description", "what was read while a battery bank was put together");
    json.text("type", "object");
    json.raw("additionalProperties", "false");
    json.open("properties", '{');
    for (auto const& key : log_root_section.keys)
        add_key(json, key);
    add_section(json, meter_section);
    json.open(log_marks_section, '{');
    json.text("description", log_marks_meaning);
    json.text("type", "object");
    json.open("additionalProperties", '{');
    json.text("type", "string");
    json.close();
    json.close();
    add_list(json, log_entry_section);
    json.close();
    json.close();
    return json.take();
}

BANKWRIGHT_INLINE std::string json_schema() {
    using namespace internal::schema;
    JsonText json;
    json.open("", '{');
    json.text("$schema", "http://json-schema.org/draft-07/schema#");
    json.text("title", "bankwright bank file");
    json.text("description", "a small boat's battery bank: batteries, conductors, protection, loads");
    json.text("type", "object");
    json.raw("additionalProperties", "false");
    json.open("anyOf", '['); // a bank is known by either
    for (std::string_view const key : {std::string_view("bankwright"), part_sections.front().name}) {
        json.open("", '{');
        json.texts("required", std::vector<std::string_view>{key});
        json.close();
    }
    json.close();
    json.open("properties", '{');
    for (auto const& key : root_section.keys)
        add_key(json, key);

    add_section(json, system_section);
    add_models(json);
    for (auto const& section : part_sections) {
        auto const terminals =
            section.terminals.empty() ? std::string() : fmt::format("; terminals of X: {}", section.terminals);
        open_named_tables(json, section.name, std::string(section.meaning) + terminals);
        json.open(id_pattern, '{');
        add_table(json, section);
        json.close();
        json.close();
        json.close();
    }

    add_list(json, accept_section);
    json.close();
    json.close();
    return json.take();
}

} // namespace bankwright
