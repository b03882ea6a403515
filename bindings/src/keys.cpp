// Which keys are there, and what does a text say as a quantity?
#include "bankwright/config/keys.hpp"

#include "answers.hpp"
#include "bankwright/config/key_kinds.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/print.hpp"

#include <stdexcept>
#include <type_traits>

namespace bankwright::python {

namespace {

KeyKindName const& quantity_named(std::string const& kind) {
    for (auto const& one : key_kind_names)
        if (one.name == kind && is_quantity(one.kind)) return one;
    throw std::out_of_range("there is no quantity `" + kind + "`");
}

SectionWords words_of(SectionSpec const& section) {
    SectionWords words{section.name, section.kind ? name(*section.kind) : "", section.meaning, section.terminals, {}};
    for (auto const& key : section.keys)
        words.keys.push_back({key.name,
                              kind_name(key.kind).name,
                              kind_name(key.kind).unit,
                              key.example,
                              key.meaning,
                              key.if_absent,
                              {key.choices.begin(), key.choices.end()}});
    return words;
}

} // namespace

std::vector<SectionWords> sections_answer() {
    std::vector<SectionWords> all{words_of(system_section)};
    for (auto const& section : part_sections)
        all.push_back(words_of(section));
    all.push_back(words_of(accept_section));
    return all;
}

QuantityAnswer quantity_answer(std::string const& kind, std::string const& text) {
    return with_quantity(quantity_named(kind).kind, [&](auto type) -> QuantityAnswer {
        using Q = typename decltype(type)::type;
        auto const parsed = parse<Q>(text);
        double value = 0.0;
        if constexpr (std::is_same_v<Q, WireSize>)
            value = parsed.value ? parsed.value->area().value() : 0.0;
        else
            value = parsed.value ? parsed.value->value() : 0.0;
        return {value, parsed.problem, parsed.unit_is_wrong};
    });
}

std::string print_answer(std::string const& kind, double value) {
    return with_quantity(quantity_named(kind).kind, [&](auto type) -> std::string {
        using Q = typename decltype(type)::type;
        if constexpr (std::is_same_v<Q, WireSize>)
            throw std::out_of_range("a wire size is printed as it was written");
        else
            return print(parsing::FromSI<Q>::make(value));
    });
}

} // namespace bankwright::python
