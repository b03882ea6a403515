// Which batteries will do, and in how many strings?
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/planning/layout.hpp"
#include "bankwright/planning/part_stock.hpp"
#include "bankwright/planning/wish.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/tables/ampacity.hpp"
#include "bankwright/units/literals.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::planning {

inline constexpr int most_strings = 4; // more share badly and are hard to keep alike [common practice, no source]

struct Candidate {
    Battery battery; // its id is that of its model
    int series = 1;
    int strings = 1;
    Duration to_reserve{};
    std::string fewer; // what one string less would have broken; empty of one
};

inline std::string words_for(Battery const& battery) {
    auto text = print(nominal_voltage(battery));
    if (battery.voltage) text = print(*battery.voltage);
    if (battery.chemistry) text += " " + std::string(label_name(*battery.chemistry));
    if (battery.capacity) text += ", " + print(*battery.capacity);
    return text;
}

// How long the bank runs, at the throttle that is wished for, down to its reserve.
inline Duration run_to_reserve(Bank const& bank) {
    DischargeOptions options;
    options.moment.everything_closed = true;
    options.tolerance = 1e-3;
    options.samples_apart = 0.1;
    options.keep_samples = false;
    auto const run = discharge(bank, options);
    return run.to_reserve ? std::min(*run.to_reserve, run.runtime) : run.runtime;
}

class CandidateSearch {
public:
    CandidateSearch(Wish const& wish, PartStock const& stock) : wish_(wish), stock_(stock) {}

    std::vector<Candidate> run() {
        for (auto const& battery : to_try())
            try_battery(battery);
        std::stable_sort(found_.begin(), found_.end(), [](Candidate const& a, Candidate const& b) {
            auto const order = [](Candidate const& c) {
                auto const count = c.series * c.strings;
                auto const weight = c.battery.mass ? c.battery.mass->value() : c.battery.capacity->value() / 3600.0;
                return std::tuple(c.strings, weight * count, count);
            };
            return order(a) < order(b);
        });
        return std::move(found_);
    }

    // Why there is none: the reason that comes closest to a bank.
    WishProblem why_none() const {
        if (!closest_.message.empty()) return closest_;
        if (wish_.battery)
            return {WishPart::battery, "names no battery of the part list, and not all of its label",
                    "state voltage, chemistry and capacity, as in `12 V AGM 100 Ah`"};
        if (wish_.chemistry)
            return {WishPart::chemistry,
                    fmt::format("is {}, of which the part list has no battery", label_name(*wish_.chemistry)),
                    "choose another, name the battery itself, or give a part list that has one"};
        return {WishPart::parts, "there is no battery to choose from", "give a part list that has one"};
    }

private:
    bool is_wished_for(Battery const& battery) const {
        if (!battery.chemistry || !battery.capacity || !battery.voltage) return false;
        if (wish_.chemistry && battery.chemistry != wish_.chemistry) return false;
        if (!wish_.battery) return true;
        auto const& label = *wish_.battery;
        return (!label.chemistry || label.chemistry == battery.chemistry) &&
               (!label.voltage || same(label.voltage->value(), nominal_voltage(battery).value()) ||
                same(label.voltage->value(), battery.voltage->value())) &&
               (!label.capacity || same(label.capacity->value(), battery.capacity->value()));
    }
    static bool same(double a, double b) { return std::abs(a - b) <= 0.01 * b; }

    // Those of the list that are meant; where none is, the one that the wish describes.
    std::vector<Battery> to_try() const {
        std::vector<Battery> wanted;
        std::copy_if(stock_.batteries.begin(), stock_.batteries.end(), std::back_inserter(wanted),
                     [&](Battery const& battery) { return is_wished_for(battery); });
        if (!wanted.empty() || !wish_.battery) return wanted;
        auto label = *wish_.battery;
        if (!label.chemistry) label.chemistry = wish_.chemistry;
        if (label.chemistry && label.capacity && label.voltage) wanted.push_back(std::move(label));
        return wanted;
    }

    // How near to a bank a battery came before it failed.
    enum Nearness { no_series = 1, too_many_in_series, too_short, too_strong, charged_too_fast };

    void fail(int nearness, WishPart part, std::string message, std::string help) {
        if (nearness < nearest_) return;
        nearest_ = nearness;
        closest_ = {part, std::move(message), std::move(help)};
    }

    void try_battery(Battery const& battery) {
        Candidate candidate;
        candidate.battery = battery;
        auto const nominal = nominal_voltage(battery);
        candidate.series = static_cast<int>(std::lround((wish_.system / nominal).value()));
        if (candidate.series < 1 ||
            !fits_system(static_cast<double>(candidate.series) * nominal, is_lithium(*battery.chemistry), wish_.system))
            return fail(no_series, wish_.battery ? WishPart::battery : WishPart::system,
                        fmt::format("no number of {} batteries in series makes {}", print(*battery.voltage),
                                    print(wish_.system)),
                        "ask for 12 V, 24 V, 36 V or 48 V, or for a battery that divides it");
        constexpr int most_series = 24; // letters do not go on for ever
        if (candidate.series > std::min(most_series, battery.max_series.value_or(8)))
            return fail(too_many_in_series, wish_.battery ? WishPart::battery : WishPart::chemistry,
                        fmt::format("{} in series make {}, and at most {} of them may be", candidate.series,
                                    print(wish_.system), battery.max_series.value_or(8)),
                        "choose a battery of a higher voltage");
        auto const most = std::min(most_strings, battery.max_parallel.value_or(most_strings));
        for (candidate.strings = 1; candidate.strings <= most; ++candidate.strings)
            if (is_enough(candidate, candidate.strings == most)) return found_.push_back(candidate);
    }

    Bank thick(Candidate const& candidate) const {
        using namespace literals;
        Layout layout;
        layout.battery = candidate.battery;
        layout.series = candidate.series;
        layout.strings = candidate.strings;
        layout.joint = 0.1_mohm;
        layout.wire = stock_.wire;
        layout.main = WireSize(Awg{-1});
        layout.tail = WireSize(Awg{2});
        layout.charger_lead = WireSize(Awg{6});
        if (wish_.charger) layout.charger_fuse = ProtectiveDevice();
        return lay_out(wish_, layout);
    }

    bool is_enough(Candidate& candidate, bool is_last) {
        auto const bank = thick(candidate);
        auto const of_battery = wish_.battery ? WishPart::battery : WishPart::runtime;
        auto const findings =
            check(bank, {{"solve", "matching", "sharing", "charging/rate", "wiring/system-voltage"}, {}, true, false})
                .findings;
        for (auto const& finding : findings) {
            if (finding.level == Level::note) continue;
            candidate.fewer = fmt::format("{} [{}]", finding.message, finding.rule);
            if (!is_last) return false;
            if (finding.rule == "charging/rate")
                fail(charged_too_fast, WishPart::charger,
                     fmt::format("gives too much for {}: {}", words_for(candidate.battery), finding.message),
                     "ask for a smaller charger or larger batteries");
            else
                fail(too_strong, wish_.battery ? WishPart::battery : WishPart::motor,
                     fmt::format("asks too much of {} strings of {}: {}", candidate.strings,
                                 words_for(candidate.battery), finding.message),
                     "ask for a higher system voltage, a smaller motor or larger batteries");
            return false;
        }
        candidate.to_reserve = run_to_reserve(bank);
        if (candidate.to_reserve >= wish_.runtime) return true;
        candidate.fewer = fmt::format("the run to the reserve ends after {}, wanted {}", print(candidate.to_reserve),
                                      print(wish_.runtime));
        if (is_last && candidate.to_reserve > longest_) {
            longest_ = candidate.to_reserve;
            fail(too_short,
                 of_battery == WishPart::battery && wish_.runtime < longest_ ? of_battery : WishPart::runtime,
                 fmt::format("of {} is more than {} strings of {} last, which are down to their reserve after {}",
                             print(wish_.runtime), candidate.strings, words_for(candidate.battery),
                             print(candidate.to_reserve)),
                 "ask for a shorter run, less throttle, a smaller motor or larger batteries");
        }
        return false;
    }

    Wish const& wish_;
    PartStock const& stock_;
    std::vector<Candidate> found_;
    WishProblem closest_;
    int nearest_ = 0;
    Duration longest_{};
};

} // namespace bankwright::internal::planning
