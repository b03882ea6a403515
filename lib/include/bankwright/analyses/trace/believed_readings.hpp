// What was read on a bank: which of it is believed, and how likely a suspect makes that.
#pragma once

#include "bankwright/analyses/trace/reading_doubts.hpp"
#include "bankwright/analyses/trace/remembered_readings.hpp"
#include "bankwright/analyses/trace/suspects.hpp"
#include "bankwright/analyses/trace_options.hpp"
#include "bankwright/network/network.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace bankwright::internal::tracing {

// A limit of error that no side of is likelier than another: its standard deviation (GUM, JCGM 100:2008, 4.3.7).
inline double deviation(double limit) { return limit / std::sqrt(3.0); }

inline double volts_error(MeterAccuracy const& meter, double volts) {
    return deviation(meter_error(meter, std::abs(volts) * si::volt).value());
}
inline double amps_error(ClampAccuracy const& clamp, double amperes) {
    return deviation(clamp.of_reading * std::abs(amperes) + clamp.counts * clamp.digit.value());
}

inline constexpr std::size_t most_near = 200; // suspects with which a slip of one reading is tried

class BelievedReadings {
public:
    BelievedReadings(Suspects& suspects, TraceOptions const& options)
        : suspects_(suspects), options_(options), remembered_(suspects), full_(suspects.bank(), options.spread) {}

    std::vector<TakenReading> const& all() const { return readings_; }
    bool is_empty() const { return values_.empty(); }
    std::vector<DoubtfulReading> const& doubtful() const { return doubtful_; }
    bool any_under_load() const {
        return std::any_of(numbers_.begin(), numbers_.end(),
                           [&](auto r) { return readings_[r].moment.loads != LoadsAre::at_rest; });
    }

    // What was read, what of it is beyond doubt, and which of the wiring it is of.
    void take(std::vector<TakenReading> const& readings) {
        readings_ = readings;
        taken_.clear();
        doubtful_.clear();
        for (std::size_t r = 0; r < readings_.size(); ++r) {
            Taken one;
            if (auto const* volts = std::get_if<VoltsRead>(&readings_[r].what)) {
                one.asked.red = terminal(volts->red);
                one.asked.black = terminal(volts->black);
                one.value = volts->reads.value();
                one.error = volts_error(options_.meter, one.value);
            } else {
                auto const& amps = std::get<AmpsRead>(readings_[r].what);
                one.asked.element = element_of(amps.part);
                one.value = amps.reads.value();
                one.error = amps_error(options_.clamp, one.value);
            }
            if (!std::isfinite(one.value)) throw std::invalid_argument("a reading is not a number");
            taken_.push_back(one);
        }
        std::vector<RememberedReadings::Wanted> wanted;
        for (std::size_t r = 0; r < taken_.size(); ++r)
            wanted.push_back({readings_[r].moment, taken_[r].asked});
        columns_ = remembered_.want(wanted);
        for (std::size_t r = 0; r < taken_.size(); ++r)
            doubt_alone(r);
        believe();
    }

    bool any_impossible() const {
        return std::any_of(doubtful_.begin(), doubtful_.end(),
                           [](auto const& doubt) { return doubt.why == DoubtfulReading::Why::impossible; });
    }
    bool any_unrested() const {
        return std::any_of(doubtful_.begin(), doubtful_.end(),
                           [](auto const& doubt) { return doubt.why == DoubtfulReading::Why::not_rested; });
    }
    void believe_unrested() {
        for (auto const& doubt : doubtful_)
            if (doubt.why == DoubtfulReading::Why::not_rested)
                taken_[doubt.reading].error = volts_error(options_.meter, taken_[doubt.reading].value);
        doubtful_.erase(std::remove_if(doubtful_.begin(), doubtful_.end(),
                                       [](auto const& doubt) { return doubt.why == DoubtfulReading::Why::not_rested; }),
                        doubtful_.end());
        believe();
    }

    bool is_taken_again(std::size_t r) const {
        for (std::size_t q = 0; q < taken_.size(); ++q)
            if (is_of_one(r, q)) return true;
        return false;
    }
    // Leaves out what a slip explains, where that is likelier than `least`, the logarithm of a suspect's weight.
    template <class Robust>
    bool doubt_slip(Robust robust, std::optional<double> least) {
        std::vector<std::size_t> order;
        for (std::size_t s = 0; s < suspects_.all().size(); ++s)
            if (is_plain(s)) order.push_back(s);
        auto const most = std::min(order.size(), most_near);
        std::partial_sort(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(most), order.end(),
                          [&](auto a, auto b) {
                              double const x = but_for_rounding(robust(a)), y = but_for_rounding(robust(b));
                              return x > y || (x == y && a < b);
                          });
        std::vector<doubting::NearSuspect> near;
        auto const add = [&](std::size_t suspect) {
            auto expected = expected_of(suspect);
            near.push_back(
                {std::log(suspects_.all()[suspect].weight), std::move(expected.owned), std::move(expected.by_reading)});
        };
        add(0); // as described
        for (std::size_t n = 0; n < most; ++n)
            add(order[n]);
        std::vector<char> open_to_doubt;
        for (auto const r : numbers_)
            open_to_doubt.push_back(!is_confirmed(r));
        auto const found = doubting::one_slip(near, values_, errors_, open_to_doubt, options_.explained);
        if (!found || (least && found->weight <= *least)) return false;
        for (auto const number : found->numbers) {
            auto const r = numbers_[number];
            doubt(r, found->slip.why, found->slip.factor * taken_[r].value);
            taken_[r].left_out = true;
        }
        believe();
        return true;
    }

    ExpectedOfAll expected_of(std::size_t suspect) {
        std::vector<std::size_t> columns;
        for (auto r : numbers_)
            columns.push_back(columns_[r]);
        return remembered_.of(suspect, columns);
    }
    ReadingLikelihood likelihood_of(std::size_t suspect) {
        auto expected = expected_of(suspect);
        if (expected.owned.empty()) return ReadingLikelihood(std::move(expected.by_reading), values_, errors_);
        return ReadingLikelihood(std::move(expected.owned), values_, errors_);
    }

    // A reading that is believed, as it is weighed.
    struct Weight {
        std::size_t column = 0; // which reading it is
        double value = 0.0, error = 0.0;
        bool operator==(Weight const& other) const {
            return column == other.column && value == other.value && error == other.error;
        }
    };
    std::vector<Weight> weights() const {
        std::vector<Weight> weights;
        for (std::size_t n = 0; n < values_.size(); ++n)
            weights.push_back({columns_[numbers_[n]], values_[n], errors_[n]});
        return weights;
    }

private:
    struct Taken {
        AskedReading asked;
        double value = 0.0; // [V] or [A]
        double error = 0.0;
        bool left_out = false;
    };
    void believe() {
        values_.clear();
        errors_.clear();
        numbers_.clear();
        for (std::size_t r = 0; r < taken_.size(); ++r) {
            if (taken_[r].left_out) continue;
            values_.push_back(taken_[r].value);
            errors_.push_back(taken_[r].error);
            numbers_.push_back(r);
        }
    }

    std::string shown(std::size_t r, double value) const {
        return taken_[r].asked.element ? print(value * si::ampere) : print(value * si::volt);
    }

    void doubt(std::size_t r, DoubtfulReading::Why why, double fits) {
        doubtful_.push_back({r, why, doubting::in_words(why, shown(r, taken_[r].value), shown(r, fits))});
        std::stable_sort(doubtful_.begin(), doubtful_.end(),
                         [](auto const& a, auto const& b) { return a.reading < b.reading; });
    }

    // More than there is, or than rests: that needs no other reading to be seen. Surface charge says little of a
    // charge, and as much of the wiring as before.
    void doubt_alone(std::size_t r) {
        auto& one = taken_[r];
        if (one.asked.element) return;
        if (std::abs(one.value) > full_.most()) {
            one.left_out = true;
            bool const is_slip = std::abs(one.value) / 10.0 <= full_.most() && one.value > 0.0;
            auto const why = is_slip && fits_somewhere(r, one.value / 10.0) ? DoubtfulReading::Why::decimal_point
                                                                            : DoubtfulReading::Why::impossible;
            doubt(r, why, why == DoubtfulReading::Why::impossible ? full_.most() / 1.15 : one.value / 10.0);
            return;
        }
        if (readings_[r].moment.loads != LoadsAre::at_rest) return;
        if (auto const rested = full_.less_than(one.asked.red, one.asked.black, one.value, 2.0 * one.error)) {
            one.error = std::hypot(one.error, 0.05 * one.value);
            doubt(r, DoubtfulReading::Why::not_rested, *rested);
        }
    }

    // As described, or one fault; but for ends on other posts: some end on some post would explain any slip.
    bool is_plain(std::size_t suspect) const {
        auto const& faults = suspects_.all()[suspect].faults;
        return faults.empty() ||
               (faults.size() == 1 && suspects_.changes()[faults.front().first].kind != FaultKind::moved);
    }

    // Does any single fault, or none, make of this pair of terminals such a voltage?
    bool fits_somewhere(std::size_t r, double value) {
        double const error = volts_error(options_.meter, value);
        for (std::size_t s = 0; s < suspects_.all().size(); ++s) {
            if (!is_plain(s)) continue;
            auto expected = suspects_.readings(s, readings_[r].moment, {taken_[r].asked});
            if (ReadingLikelihood(std::move(expected), {value}, {error}).misfit() <= options_.explained) return true;
        }
        return false;
    }

    bool is_of_one(std::size_t r, std::size_t q) const {
        auto const &a = taken_[r].asked, &b = taken_[q].asked;
        return r != q && suspecting::same(readings_[r].moment, readings_[q].moment) && a.element == b.element &&
               ((a.red == b.red && a.black == b.black) || (a.red == b.black && a.black == b.red));
    }
    bool is_confirmed(std::size_t r) const {
        for (std::size_t q = 0; q < taken_.size(); ++q) {
            if (!is_of_one(r, q)) continue;
            double const turned = taken_[r].asked.red == taken_[q].asked.red ? 1.0 : -1.0;
            if (std::abs(taken_[r].value - turned * taken_[q].value) <=
                3.0 * std::hypot(taken_[r].error, taken_[q].error))
                return true;
        }
        return false;
    }

    int terminal(std::string const& name) const {
        auto const& nodes = suspects_.network().nodes;
        auto const found = nodes.find(name);
        if (found == nodes.end())
            throw std::invalid_argument("a reading names `" + name + "`, which the bank does not have");
        return found->second;
    }

    // The first element of a part; throws if there is no such part.
    std::size_t element_of(std::string const& id) const {
        std::size_t first = 0;
        for (auto const& part : suspects_.network().parts) {
            if (part.id == id) return first;
            first += part.elements.size();
        }
        throw std::invalid_argument("a reading names the part `" + id + "`, which the bank does not have");
    }

    Suspects& suspects_;
    TraceOptions const& options_;
    RememberedReadings remembered_;
    doubting::FullBank full_;
    std::vector<TakenReading> readings_;
    std::vector<Taken> taken_; // by reading
    std::vector<DoubtfulReading> doubtful_;
    std::vector<double> values_, errors_; // [V] or [A], by believed reading
    std::vector<std::size_t> numbers_;    // of those among all
    std::vector<std::size_t> columns_;    // of all, where they are remembered
};

} // namespace bankwright::internal::tracing
