// Which rule or part of the wish decided each choice, and what would the next smaller have broken?
#pragma once

#include "bankwright/planning/plan_choice.hpp"
#include "bankwright/planning/search/candidates.hpp"
#include "bankwright/planning/search/fitting.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::planning {

class Reasons {
public:
    Reasons(Wish const& wish, PartStock const& stock, Candidate const& candidate, Fitted const& fitted)
        : wish_(wish), stock_(stock), candidate_(candidate), fitted_(fitted) {
        for (auto const& finding : check(fitted.bank).findings)
            known_.insert(finding.rule);
    }

    std::vector<PlanChoice> tell() {
        battery();
        strings();
        device();
        if (fitted_.layout.string_fuse) string_fuses();
        copper();
        if (fitted_.layout.receptacle) receptacle();
        if (fitted_.layout.charger_fuse) charger();
        return std::move(choices_);
    }

private:
    void add(std::string what, std::string chosen, std::string decided_by, std::string less = {},
             std::string broken = {}) {
        choices_.push_back(
            {std::move(what), std::move(chosen), std::move(decided_by), std::move(less), std::move(broken)});
    }

    static std::string words(Finding const& finding) { return fmt::format("{} [{}]", finding.message, finding.rule); }

    // What a rule finds in a changed bank that it does not find in this one.
    std::string broken_by(Bank const& changed) const {
        for (auto const& finding : check(changed).findings)
            if (finding.level != Level::note && known_.count(finding.rule) == 0) return words(finding);
        return {};
    }

    // The next lighter of the list of this chemistry and voltage, in as many strings.
    void battery() {
        auto const& chosen = candidate_.battery;
        auto const by = wish_.battery     ? std::string("as asked for")
                        : wish_.chemistry ? fmt::format("as the lightest {} that lasts in the fewest strings",
                                                        label_name(*chosen.chemistry))
                                          : std::string("as the lightest that lasts in the fewest strings");
        Battery const* smaller = nullptr;
        for (auto const& other : stock_.batteries)
            if (!wish_.battery && other.chemistry == chosen.chemistry && other.voltage == chosen.voltage &&
                other.capacity && *other.capacity < *chosen.capacity)
                smaller = &other;
        if (!smaller) return add("battery", named(chosen), by);
        auto layout = fitted_.layout;
        layout.battery = *smaller;
        auto const lasts = run_to_reserve(lay_out(wish_, layout));
        auto const broken = lasts < wish_.runtime ? fmt::format("the run to the reserve ends after {}, wanted {}",
                                                                print(lasts), print(wish_.runtime))
                                                  : broken_by(lay_out(wish_, layout));
        add("battery", named(chosen), by, named(*smaller), broken);
    }

    static std::string named(Battery const& battery) {
        return battery.id.empty() ? words_for(battery) : fmt::format("{} ({})", words_for(battery), battery.id);
    }

    void strings() {
        auto const reserve = fitted_.bank.system.reserve.value_or(usual_reserve(*candidate_.battery.chemistry));
        auto const series = candidate_.series > 1
                                ? fmt::format("; {} in series make {}", candidate_.series, print(wish_.system))
                                : std::string();
        auto const by = fmt::format("for a run of {}{} down to a charge of {}{}", print(wish_.runtime),
                                    wish_.throttle ? " at " + print(*wish_.throttle) + " throttle" : std::string(),
                                    print(reserve), series);
        add("strings in parallel", std::to_string(candidate_.strings), by,
            candidate_.strings > 1 ? std::to_string(candidate_.strings - 1) : std::string(), candidate_.fewer);
    }

    static std::string words_for_device(ProtectiveDevice const& device, bool is_fuse) {
        auto text = fmt::format("{} {}", print(*device.rating), is_fuse ? "fuse" : "breaker");
        if (device.interrupts) text += ", interrupts " + print(*device.interrupts);
        return text;
    }

    void device() {
        bool const is_fuse = fitted_.layout.device_is_fuse;
        auto const& chosen = fitted_.layout.device;
        auto const& list = is_fuse ? stock_.fuses : stock_.breakers;
        ProtectiveDevice const* smaller = nullptr;
        for (auto const& other : list)
            if (other.rating && *other.rating < *chosen.rating && other.interrupts == chosen.interrupts)
                smaller = &other;
        auto const by =
            fmt::format("for {} of the motor [protection/rating-low], and what the bank pushes into a short "
                        "[protection/interrupting]",
                        print(motor_current(wish_)));
        if (!smaller) return add(is_fuse ? "main fuse" : "main breaker", words_for_device(chosen, is_fuse), by);
        auto changed = fitted_.bank;
        for (auto* devices : {&changed.breakers, &changed.fuses})
            for (auto& one : *devices)
                if (one.id == "CB" || one.id == "F1") {
                    auto id = one.id;
                    one = *smaller;
                    one.id = std::move(id);
                }
        add(is_fuse ? "main fuse" : "main breaker", words_for_device(chosen, is_fuse), by, print(*smaller->rating),
            broken_by(changed));
    }

    void string_fuses() {
        auto changed = fitted_.layout;
        changed.string_fuse.reset();
        add("a fuse in every string", words_for_device(*fitted_.layout.string_fuse, true),
            "so that each carries its share when one string is off", "none", broken_by(lay_out_like(changed)));
    }

    // With the copper as fitted.
    Bank lay_out_like(Layout layout) const {
        for (auto const& run : fitted_.bank.cables)
            if (run.conductor.id == "main" && run.conductor.size) layout.main = *run.conductor.size;
        return lay_out(wish_, layout);
    }

    void copper() {
        for (auto const& group : fitted_.groups) {
            if (!group.size) continue;
            bool const is_main = std::find(group.parts.begin(), group.parts.end(), "main") != group.parts.end();
            if (!is_main) continue;
            auto const by = wish_.drop
                                ? fmt::format("for a drop of {} over {}", print(*wish_.drop), print(wish_.run))
                                : fmt::format("for the usual drop of 3 % over {}, and for ampacity", print(wish_.run));
            add("conductors", group.chosen, by, group.smaller,
                group.refused.empty() ? std::string() : words(group.refused.front()));
        }
    }

    void receptacle() {
        auto const& chosen = *fitted_.layout.receptacle;
        Connector const* smaller = nullptr;
        for (auto const& other : stock_.connectors)
            if (other.rating && chosen.rating && *other.rating < *chosen.rating) smaller = &other;
        auto const words_of = [](Connector const& one) {
            auto text = one.rating ? print(*one.rating) : std::string("as listed");
            return one.max_size ? text + ", takes " + print(*one.max_size) : text;
        };
        auto const by =
            fitted_.layout.studs_on_bow
                ? fmt::format("for {} of the motor [connection/rating]; the main leads end on studs beside it, as they "
                              "do not go in [connection/too-thick]",
                              print(motor_current(wish_)))
                : fmt::format("for {} of the motor [connection/rating]", print(motor_current(wish_)));
        if (!smaller) return add("receptacle and plug", words_of(chosen), by);
        auto changed = fitted_.bank;
        auto id = changed.connectors.front().id;
        changed.connectors.front() = *smaller;
        changed.connectors.front().id = std::move(id);
        add("receptacle and plug", words_of(chosen), by, words_of(*smaller), broken_by(changed));
    }

    void charger() {
        auto const& charger = fitted_.bank.chargers.front();
        add("charger", fmt::format("{}, {}", print(*charger.voltage), print(*charger.current)),
            fmt::format("as asked for; its voltage by {} [charging/voltage]",
                        label_name(*candidate_.battery.chemistry)));
        add("charger's fuse and leads",
            fmt::format("{}, {}", print(*fitted_.layout.charger_fuse->rating), print(fitted_.layout.charger_lead)),
            "for what it gives [protection/missing], and 3 % lost in its leads at most [charging/voltage-drop]");
    }

    Wish const& wish_;
    PartStock const& stock_;
    Candidate const& candidate_;
    Fitted const& fitted_;
    std::set<std::string> known_;
    std::vector<PlanChoice> choices_;
};

} // namespace bankwright::internal::planning
