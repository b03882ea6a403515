// A key of a part set to a number in SI: what a sweep does to a bank.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/config/fields.hpp"
#include "bankwright/units/parse.hpp"

#include <string>
#include <string_view>
#include <type_traits>

namespace bankwright::internal::sweeping {

// False: the part has no such key, or it is no quantity.
template <class Part>
bool set_in_si(Part& part, std::string_view key, double value) {
    bool set = false;
    for_each_field(part, [&](std::string_view name, auto&& member) {
        if (name != key) return;
        using Member = std::remove_cvref_t<decltype(member)>;
        if constexpr (Readable<Member>) {
            member = parsing::FromSI<Member>::make(value);
            set = true;
        } else if constexpr (requires { member.emplace(); }) {
            using Q = typename Member::value_type;
            if constexpr (std::is_same_v<Q, WireSize>) {
                member = WireSize(Area::from_value(value));
                set = true;
            } else if constexpr (Readable<Q>) {
                member = parsing::FromSI<Q>::make(value);
                set = true;
            }
        }
    });
    return set;
}

} // namespace bankwright::internal::sweeping
