// Which keys are there, and what does a text say as a quantity?
#include "bankwright/config/keys.hpp"

#include "answers.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/print.hpp"

#include <stdexcept>

namespace bankwright::python {

namespace {

struct KindName {
    std::string_view name;
    KeyKind kind;
    std::string_view unit; // SI
};
constexpr std::array<KindName, 20> kind_names{{
    {"text", KeyKind::text, ""},
    {"texts", KeyKind::texts, ""},
    {"choice", KeyKind::choice, ""},
    {"integer", KeyKind::integer, ""},
    {"boolean", KeyKind::boolean, ""},
    {"date", KeyKind::date, ""},
    {"terminal", KeyKind::terminal, ""},
    {"model", KeyKind::model, ""},
    {"voltage", KeyKind::voltage, "V"},
    {"current", KeyKind::current, "A"},
    {"resistance", KeyKind::resistance, "ohm"},
    {"power", KeyKind::power, "W"},
    {"charge", KeyKind::charge, "C"},
    {"length", KeyKind::length, "m"},
    {"duration", KeyKind::duration, "s"},
    {"mass", KeyKind::mass, "kg"},
    {"force", KeyKind::force, "N"},
    {"temperature", KeyKind::temperature, "K"},
    {"wire_size", KeyKind::wire_size, "m2"},
    {"fraction", KeyKind::fraction, "1"},
}};

KindName const& named(std::string const& kind) {
    for (auto const& one : kind_names)
        if (one.name == kind && is_quantity(one.kind)) return one;
    throw std::out_of_range("there is no quantity `" + kind + "`");
}

KindName const& named(KeyKind kind) { return kind_names[static_cast<std::size_t>(kind)]; }

// Calls visit(Q{}) ... as the type of the quantity.
template <class Visit>
auto with_type(KeyKind kind, Visit&& visit) {
    switch (kind) {
    case KeyKind::voltage:
        return visit.template operator()<Voltage>();
    case KeyKind::current:
        return visit.template operator()<Current>();
    case KeyKind::resistance:
        return visit.template operator()<Resistance>();
    case KeyKind::power:
        return visit.template operator()<Power>();
    case KeyKind::charge:
        return visit.template operator()<Charge>();
    case KeyKind::length:
        return visit.template operator()<Length>();
    case KeyKind::duration:
        return visit.template operator()<Duration>();
    case KeyKind::mass:
        return visit.template operator()<Mass>();
    case KeyKind::force:
        return visit.template operator()<Force>();
    case KeyKind::temperature:
        return visit.template operator()<Temperature>();
    default:
        return visit.template operator()<StateOfCharge>();
    }
}

SectionWords words_of(SectionSpec const& section) {
    SectionWords words{section.name, section.kind ? name(*section.kind) : "", section.meaning, section.terminals, {}};
    for (auto const& key : section.keys)
        words.keys.push_back({key.name,
                              named(key.kind).name,
                              named(key.kind).unit,
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
    auto const& wanted = named(kind);
    if (wanted.kind == KeyKind::wire_size) {
        auto const parsed = parse<WireSize>(text);
        return {parsed.value ? parsed.value->area().value() : 0.0, parsed.problem, parsed.unit_is_wrong};
    }
    return with_type(wanted.kind, [&]<class Q>() -> QuantityAnswer {
        auto const parsed = parse<Q>(text);
        return {parsed.value ? parsed.value->value() : 0.0, parsed.problem, parsed.unit_is_wrong};
    });
}

std::string print_answer(std::string const& kind, double value) {
    auto const& wanted = named(kind);
    if (wanted.kind == KeyKind::wire_size) throw std::out_of_range("a wire size is printed as it was written");
    return with_type(wanted.kind, [&]<class Q>() -> std::string { return print(parsing::FromSI<Q>::make(value)); });
}

} // namespace bankwright::python
