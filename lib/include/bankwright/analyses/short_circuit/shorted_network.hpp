// What do the devices and conductors carry while two terminals are shorted and some of the devices have opened?
#pragma once

#include "bankwright/analyses/short_circuit/short_places.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace bankwright {

// Into a bolted short between two terminals, and what each part then carries.
struct ShortCurrents {
    Current total{};
    std::unordered_map<std::string, Current> parts; // by id, of those with two ends; the sign of readings.hpp
};

// The network is built once: a short is one more join in it, an open device an element moved out of it.
class ShortedNetwork {
public:
    // Every load and charger off, devices as the bank has them. Throws std::invalid_argument where build() does.
    explicit ShortedNetwork(Bank const& bank);

    // None where the two are one terminal, or there is no solution. Throws std::out_of_range for a terminal or device
    // that the bank does not have.
    std::optional<ShortCurrents> between(std::string const& terminal, std::string const& against,
                                         std::vector<std::string> const& open = {}) const;

private:
    Network network_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/short_circuit/shorted_network_inl.hpp"
#endif
