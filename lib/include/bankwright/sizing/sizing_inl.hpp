#pragma once

#include "bankwright/devices/protection_rating.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/rules/rule.hpp"
#include "bankwright/rules/seen.hpp"
#include "bankwright/sizing/sizing.hpp"
#include "bankwright/sizing/strings.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {

namespace internal::size_search {

inline void keep_what_counts(Findings& findings) {
    auto const idle = [](Finding const& finding) { return finding.accepted || finding.level == Level::note; };
    findings.erase(std::remove_if(findings.begin(), findings.end(), idle), findings.end());
}

} // namespace internal::size_search

BANKWRIGHT_INLINE Findings against_sizes(Bank const& bank) {
    auto findings =
        check(bank, {{"solve", "protection", "conductor", "connection", "sharing", "load", "charging/voltage-drop"},
                     {},
                     true,
                     false})
            .findings;
    internal::size_search::keep_what_counts(findings);
    if (bank.chargers.empty()) return findings;
    auto plugged_in = bank;
    for (auto& charger : plugged_in.chargers)
        charger.connected = true;
    auto charging = check(plugged_in, {{"protection", "conductor", "connection"}, {}, true, false}).findings;
    internal::size_search::keep_what_counts(charging);
    for (auto& finding : charging) {
        auto const same = [&](Finding const& f) { return f.rule == finding.rule && f.parts == finding.parts; };
        if (std::none_of(findings.begin(), findings.end(), same)) findings.push_back(std::move(finding));
    }
    return findings;
}

namespace internal::size_search {

// One thing whose size is chosen: its options from the smallest, and how each is put into a bank.
struct Choice {
    SizedGroup group;
    std::vector<std::string> names; // of the options
    std::function<void(Bank&, std::size_t)> set;
    std::size_t at = 0;
    bool is_device = false;
    std::string below;  // the next smaller rating, which is less than `least`
    double least = 0.0; // [A] that a device has to be rated for, whatever else the rules say
};

template <class Act>
void for_each_device(Bank& bank, Act&& act) {
    for (auto* devices : {&bank.breakers, &bank.fuses})
        for (auto& device : *devices)
            act(device);
}

inline bool holds(std::vector<std::string> const& parts, std::string const& id) {
    return std::find(parts.begin(), parts.end(), id) != parts.end();
}

// Conductors with a length are sized, however their size was left open; a stated resistance stays what it is.
inline std::vector<Choice> conductor_choices(Bank const& bank, SizeSystem system) {
    std::vector<Choice> choices;
    auto const sizes = stocked_sizes(bank.system, system);
    for (auto const* runs : {&bank.jumpers, &bank.cables})
        for (auto const& run : *runs) {
            auto const& conductor = run.conductor;
            if (conductor.resistance || !conductor.length || !conductor.size) continue;
            if (conductor.fixed.value_or(false)) continue;
            auto const alike = std::find_if(choices.begin(), choices.end(),
                                            [&](Choice const& choice) { return choice.group.size == conductor.size; });
            if (alike != choices.end()) {
                alike->group.parts.push_back(conductor.id);
                continue;
            }
            Choice choice;
            choice.group.parts = {conductor.id};
            choice.group.size = conductor.size;
            choice.group.as_written = print(*conductor.size);
            for (auto const& size : sizes)
                choice.names.push_back(print(size));
            choice.at = sizes.size() - 1;
            choices.push_back(std::move(choice));
        }
    for (auto& choice : choices)
        choice.set = [parts = choice.group.parts, sizes](Bank& changed, std::size_t at) {
            for (auto* runs : {&changed.jumpers, &changed.cables})
                for (auto& run : *runs)
                    if (holds(parts, run.conductor.id)) run.conductor.size = sizes[at];
        };
    return choices;
}

// [A] No rating below what is on the nameplates behind it; nor of a breaker above 80 % for a load that runs for hours.
inline double least_rating(Seen const& seen, Bank const& bank, ProtectiveDevice const& device) {
    if (!seen.full_is_sound()) return 0.0;
    auto const borne = borne_by(seen, device.id);
    auto const is_breaker = std::any_of(bank.breakers.begin(), bank.breakers.end(),
                                        [&](ProtectiveDevice const& one) { return one.id == device.id; });
    auto const lasting = is_breaker && seen.runs_for_hours() ? lasting_current(seen, device.id) : std::nullopt;
    return std::max(borne ? borne->by_nameplate.value() : 0.0, lasting ? lasting->value() / continuous_share : 0.0);
}

inline std::vector<Choice> device_choices(Bank bank) {
    std::vector<Choice> choices;
    std::vector<std::optional<std::string>> classes;
    std::vector<double> least; // [A]
    Seen const seen(bank);
    for_each_device(bank, [&](ProtectiveDevice const& device) {
        if (device.fixed.value_or(false)) return;
        auto const needed = least_rating(seen, bank, device);
        for (std::size_t i = 0; i < choices.size(); ++i) {
            if (choices[i].group.rating != device.rating || classes[i] != device.trip_class) continue;
            choices[i].group.parts.push_back(device.id);
            least[i] = std::max(least[i], needed);
            return;
        }
        Choice choice;
        choice.is_device = true;
        choice.group.parts = {device.id};
        choice.group.rating = device.rating;
        if (device.rating) choice.group.as_written = print(*device.rating);
        choices.push_back(std::move(choice));
        classes.push_back(device.trip_class);
        least.push_back(needed);
    });
    for (std::size_t i = 0; i < choices.size(); ++i) {
        auto& choice = choices[i];
        auto ratings = standard_ratings();
        auto const first = std::find_if(ratings.begin(), ratings.end() - 1,
                                        [&](Current rating) { return !exceeds(least[i], rating.value()); });
        if (first != ratings.begin()) choice.below = print(*(first - 1));
        choice.least = least[i];
        ratings.erase(ratings.begin(), first);
        for (auto const& rating : ratings)
            choice.names.push_back(print(rating));
        auto const fits =
            std::lower_bound(ratings.begin(), ratings.end(), choice.group.rating.value_or(ratings.front()));
        choice.at = std::min(static_cast<std::size_t>(fits - ratings.begin()), ratings.size() - 1);
        choice.set = [parts = choice.group.parts, ratings](Bank& changed, std::size_t at) {
            for_each_device(changed, [&](ProtectiveDevice& device) {
                if (holds(parts, device.id)) device.rating = ratings[at];
            });
        };
    }
    return choices;
}

inline void set_all(Bank& bank, std::vector<Choice> const& choices) {
    for (auto const& choice : choices)
        choice.set(bank, choice.at);
}

// What is too thick for a connector is not made thinner: a short tail goes in.
inline constexpr std::string_view wants_a_tail = "connection/too-thick";

// Errors weigh more than any number of warnings, so that a search never trades one for the other.
inline int weight(Findings const& findings) {
    constexpr int error = 1000;
    int sum = 0;
    for (auto const& finding : findings)
        sum += finding.rule == wants_a_tail ? 0 : finding.level == Level::error ? error : 1;
    return sum;
}

class SizeSearch {
public:
    SizeSearch(Bank bank, SizeSystem system) : bank_(std::move(bank)), choices_(conductor_choices(bank_, system)) {
        for (auto& choice : device_choices(bank_))
            choices_.push_back(std::move(choice));
        set_all(bank_, choices_);
        best_ = weight(against_sizes(bank_));
    }

    // From the thickest copper: the devices' smallest ratings that suit it, then everything a step smaller in turn, as
    // long as the rules mind it no more than before. What they mind once rests until nothing else moves.
    void run() {
        for (auto& choice : choices_)
            if (choice.is_device) choose_rating(choice);
        while (shrink_in_turn()) {
        }
    }

    int weight_left() const { return best_; }
    Bank const& bank() const { return bank_; }

    std::vector<SizedGroup> groups() {
        std::vector<SizedGroup> groups;
        for (auto& choice : choices_) {
            auto group = choice.group;
            group.chosen = choice.names[choice.at];
            if (choice.at > 0) {
                group.smaller = choice.names[choice.at - 1];
                group.refused = refusals(choice);
            } else if (!choice.below.empty()) {
                group.smaller = choice.below;
                group.refused = {below_nameplate(choice)};
            }
            take_over(choice, group);
            groups.push_back(std::move(group));
        }
        return groups;
    }

private:
    int weight_with(Choice const& choice, std::size_t at) {
        choice.set(bank_, at);
        auto const found = weight(against_sizes(bank_));
        choice.set(bank_, choice.at);
        return found;
    }

    bool shrink_in_turn() {
        std::vector<char> rests(choices_.size(), 0);
        bool any = false;
        for (bool moved = true; moved; any = any || moved) {
            moved = false;
            for (std::size_t c = 0; c < choices_.size(); ++c) {
                if (rests[c]) continue;
                rests[c] = !try_smaller(choices_[c]);
                moved = moved || !rests[c];
            }
        }
        return any;
    }

    // The smallest of which the rules have nothing to say; where there is none, the one that they mind least.
    void choose_rating(Choice& choice) {
        auto chosen = choice.at;
        for (std::size_t at = 0; at < choice.names.size(); ++at) {
            choice.set(bank_, at);
            auto const findings = against_sizes(bank_);
            choice.set(bank_, choice.at);
            auto const found = weight(findings);
            if (found < best_ || (found == best_ && at < chosen)) chosen = at;
            best_ = std::min(best_, found);
            bool const suits = std::none_of(findings.begin(), findings.end(), [&](Finding const& finding) {
                return std::any_of(finding.parts.begin(), finding.parts.end(),
                                   [&](std::string const& part) { return holds(choice.group.parts, part); });
            });
            if (suits && found <= best_) break;
        }
        choice.at = chosen;
        choice.set(bank_, chosen);
    }

    bool try_smaller(Choice& choice) {
        if (choice.at == 0) return false;
        auto const found = weight_with(choice, choice.at - 1);
        if (found > best_) return false;
        best_ = found;
        choice.set(bank_, --choice.at);
        return true;
    }

    static Finding below_nameplate(Choice const& choice) {
        Finding finding;
        finding.rule = "protection/rating-low";
        finding.level = Level::warning;
        finding.message =
            fmt::format("{} at least {}, by the nameplates downstream and how long they run",
                        choice.group.parts.size() == 1 ? "it needs" : "they need", print(choice.least * si::ampere));
        finding.help = "use a larger rating, as far as the conductor allows";
        finding.parts = choice.group.parts;
        return finding;
    }

    // What a step smaller adds to what is there anyway.
    Findings refusals(Choice const& choice) {
        std::set<std::pair<std::string, std::vector<std::string>>> known;
        for (auto const& finding : against_sizes(bank_))
            known.insert({finding.rule, finding.parts});
        choice.set(bank_, choice.at - 1);
        auto findings = against_sizes(bank_);
        choice.set(bank_, choice.at);
        auto const there_anyway = [&](Finding const& f) {
            return f.rule == wants_a_tail || known.count({f.rule, f.parts}) > 0;
        };
        findings.erase(std::remove_if(findings.begin(), findings.end(), there_anyway), findings.end());
        return findings;
    }

    void take_over(Choice const& choice, SizedGroup& group) const {
        auto const& id = choice.group.parts.front();
        for (auto const* runs : {&bank_.jumpers, &bank_.cables})
            for (auto const& run : *runs)
                if (run.conductor.id == id) group.size = run.conductor.size;
        for (auto const* devices : {&bank_.breakers, &bank_.fuses})
            for (auto const& device : *devices)
                if (device.id == id) group.rating = device.rating;
    }

    Bank bank_;
    std::vector<Choice> choices_;
    int best_ = 0;
};

// With copper as thick as can be had: what is then still wrong is not the copper's fault.
inline Findings at_the_thickest(Bank bank, SizeSystem system) {
    set_all(bank, conductor_choices(bank, system));
    auto findings = against_sizes(bank);
    auto const other = [](Finding const& finding) {
        return finding.rule.rfind("load/", 0) != 0 && finding.rule.rfind("solve/", 0) != 0 &&
               finding.rule.rfind("sharing/", 0) != 0;
    };
    findings.erase(std::remove_if(findings.begin(), findings.end(), other), findings.end());
    return findings;
}

} // namespace internal::size_search

BANKWRIGHT_INLINE SizingResult sizing(Bank const& bank, SizingOptions const& options) {
    using namespace internal::size_search;
    if (options.runtime) refuse_if(time_problem(*options.runtime), "runtime", *options.runtime);
    if (options.ambient) refuse_if(ambient_problem(*options.ambient), "ambient", *options.ambient);
    refuse_unless(options.most_strings >= 1 && options.most_strings <= 100, "most_strings", options.most_strings,
                  "1 to 100");
    auto wanted = bank;
    if (options.runtime) wanted.system.runtime = options.runtime;
    if (options.ambient) wanted.system.ambient = *options.ambient;
    SizingResult result;
    if (auto const count = options.keep_strings ? std::nullopt : string_count(wanted)) {
        SizedStrings strings;
        strings.as_written = strings.chosen = *count;
        Findings before;
        for (int n = 1; n <= options.most_strings; ++n) {
            auto const tried = with_strings(wanted, n);
            auto findings = at_the_thickest(tried, options.system);
            if (!findings.empty()) {
                before = std::move(findings);
                continue;
            }
            strings.chosen = n;
            strings.refused = std::move(before);
            if (n != *count) wanted = tried;
            break;
        }
        result.strings = std::move(strings);
    }
    SizeSearch search(std::move(wanted), options.system);
    search.run();
    result.groups = search.groups();
    result.bank = search.bank();
    result.left = against_sizes(result.bank);
    return result;
}

} // namespace bankwright
