// What stands beside each part and conductor: nameplate, readings, size and length, in a rigger's words.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace bankwright::drawing {

// print() with the signs that a drawing has room for: "4 m\u03a9", "16 mm\u00b2".
std::string with_signs(std::string printed);

std::string nameplate(Battery const& battery);         // "12 V agm, 100 Ah"
std::string nameplate(ProtectiveDevice const& device); // "60 A"
std::string nameplate(Switch const& one);
std::string nameplate(Shunt const& shunt);
std::string nameplate(Relay const& relay);
std::string nameplate(Selector const& selector); // with its position
std::string nameplate(Converter const& converter);
std::string nameplate(Busbar const& busbar);
std::string nameplate(Connector const& connector);
std::string nameplate(Motor const& motor);
std::string nameplate(Load const& load);
std::string nameplate(Charger const& charger);

// "6 AWG 17 ft", "16 mm2 2.5 m"; a resistance where there is no size. Feet and inches go with gauges: that is how such
// wire is sold and measured.
std::string size_and_length(Conductor const& conductor);

// Readings, where there is an operating point and it has any.
class Readings {
public:
    explicit Readings(std::optional<OperatingPoint> const& point) : point_(point ? &*point : nullptr) {}

    bool any() const { return point_ && point_->status == solver::Status::solved; }
    std::string volts_at(std::string_view terminal) const;      // "12.71 V" against the reference; may be empty
    std::optional<double> amperes(std::string_view part) const; // [A] as signed as everywhere
    std::string volts_across(std::string_view part) const;

private:
    PartReading const* reading(std::string_view part) const;
    OperatingPoint const* point_;
};

// As a clamp shows it: "52.1 A", "2.11 kA", without its sign; what rounding has left is 0 A.
std::string printed_amperes(double amperes);

// As a meter shows it: "37.70 V", "-376 mV", "0 V".
std::string printed_volts(double volts);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/words_inl.hpp"
#endif
