// Which keys may be swept, over which values, and what does a value do to a bank?
#pragma once

#include "bankwright/analyses/sweep/set_key.hpp"
#include "bankwright/analyses/sweep/swept_key.hpp"
#include "bankwright/config/keys.hpp"

#include <stdexcept>
#include <string>

namespace bankwright::internal::sweeping {

inline std::string named(SweptKey const& key) { return "`" + key.part + "." + key.key + "`"; }

// The part of that name with its section's keys.
inline KeySpec const& spec_of(Bank const& bank, SweptKey const& key) {
    SectionSpec const* section = key.part == "system" ? &system_section : nullptr;
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        if (id_of(part) == key.part) section = &section_spec(kind);
    });
    if (!section) throw std::out_of_range("the bank has no part `" + key.part + "`");
    auto const* const spec = find_key(*section, key.key);
    if (!spec) throw std::out_of_range("there is no key " + named(key));
    if (!is_quantity(spec->kind)) throw std::invalid_argument(named(key) + " is not a quantity: it cannot be swept");
    return *spec;
}

inline void refuse_outside(Range const& range, SweptKey const& key, std::size_t first, std::size_t last) {
    bool sound = true; // without a branch a value: nearly always all are
    for (std::size_t bank = first; bank < last; ++bank)
        sound &= range.holds(key.values[bank]);
    for (std::size_t bank = first; !sound && bank < last; ++bank)
        if (!range.holds(key.values[bank]))
            throw std::invalid_argument(named(key) + " is out of its range in bank " + std::to_string(bank) + ": " +
                                        std::to_string(key.values[bank]) + " in SI");
}

inline void set(Bank& bank, SweptKey const& key, double value) {
    if (key.part == "system") {
        set_in_si(bank.system, key.key, value);
        return;
    }
    for_each_part(bank, [&](PartKind, auto& part) {
        if (id_of(part) == key.part) set_in_si(part, key.key, value);
    });
}

} // namespace bankwright::internal::sweeping
