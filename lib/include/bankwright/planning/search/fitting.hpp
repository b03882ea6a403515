// Which breaker, fuse, receptacle and copper does a candidate need? Each is raised while a rule finds it too small.
#pragma once

#include "bankwright/devices/protection_rating.hpp"
#include "bankwright/planning/layout.hpp"
#include "bankwright/planning/part_stock.hpp"
#include "bankwright/planning/search/candidates.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/sizing/sizing.hpp"
#include "bankwright/sizing/standard_sizes.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bankwright::internal::planning {

// What is asked of a device at least, in SI.
struct DeviceNeed {
    double amperes = 0.0;
    double interrupts = 0.0;
    double volts = 0.0;

    bool is_met_by(ProtectiveDevice const& device) const {
        auto const holds = [](auto const& value, double least) { return !value || value->value() >= least; };
        return device.rating && holds(device.rating, amperes) && holds(device.interrupts, interrupts) &&
               holds(device.voltage, volts);
    }
};

struct Fitted {
    Layout layout;
    Bank bank;
    std::vector<SizedGroup> groups; // of conductors
    Findings notes;
};

class Fitting {
public:
    Fitting(Wish const& wish, PartStock const& stock, Candidate const& candidate)
        : wish_(wish), stock_(stock), candidate_(candidate), sizes_(sizes_of(wish)) {
        auto const amperes = motor_current(wish).value();
        main_.amperes = string_.amperes = receptacle_amperes_ = busbar_amperes_ = switch_amperes_ = amperes;
        if (candidate.strings > 1) // with one string off the others carry on
            string_.amperes = amperes / (candidate.strings - 1);
        if (wish.charger) charger_.amperes = wish.charger->value();
        while (lead_ + 1 < sizes_.size() && sizes_[lead_].area() < WireSize(Awg{16}).area())
            ++lead_;
    }

    // The bank as fitted; or nothing, and why.
    std::optional<Fitted> run() {
        constexpr int most_rounds = 40; // each raises something that has an end
        for (int round = 0; round < most_rounds; ++round) {
            auto layout = laid_out();
            if (!layout) return std::nullopt;
            auto fitted = sized(std::move(*layout));
            auto findings = check(fitted.bank).findings;
            bool raised = false;
            for (auto const& finding : findings)
                raised = raise(finding, fitted) || raised;
            if (std::exchange(receptacle_raised_, false)) studs_ = false; // the larger one may take the main leads
            if (!problem_.message.empty()) return std::nullopt;
            if (raised) continue;
            auto const wrong = std::find_if(findings.begin(), findings.end(),
                                            [](Finding const& finding) { return finding.level != Level::note; });
            if (wrong == findings.end()) {
                fitted.notes = std::move(findings);
                return fitted;
            }
            if (!raise_for_thick_copper(fitted)) return refuse(*wrong);
        }
        return none(WishPart::motor, "no parts of the list suit it",
                    "ask for a higher system voltage or a smaller motor");
    }

    WishProblem const& problem() const { return problem_; }

private:
    static std::vector<WireSize> sizes_of(Wish const& wish) {
        System system;
        if (!wish.stock.empty()) system.stock = wish.stock;
        return stocked_sizes(system, kind_of(wish));
    }
    static SizeSystem kind_of(Wish const& wish) {
        bool const any_gauge =
            wish.stock.empty() ||
            std::any_of(wish.stock.begin(), wish.stock.end(), [](WireSize size) { return size.gauge().has_value(); });
        return any_gauge ? SizeSystem::awg : SizeSystem::metric;
    }

    std::nullopt_t none(WishPart part, std::string message, std::string help) {
        if (problem_.message.empty()) problem_ = {part, std::move(message), std::move(help)};
        return std::nullopt;
    }

    // What no part of the list and no size cures.
    std::nullopt_t refuse(Finding const& finding) {
        auto const is = [&](std::string_view rule) { return finding.rule == rule; };
        auto const message = fmt::format("{} [{}]", finding.message, finding.rule);
        if (is("conductor/voltage-drop"))
            return none(wish_.drop ? WishPart::drop : WishPart::run,
                        fmt::format("is more than {} can keep: {}", print(sizes_.back()), message),
                        "ask for a shorter run, a larger drop, a smaller motor or a higher system voltage");
        if (is("load/runtime")) return none(WishPart::runtime, "is not reached: " + message, "ask for a shorter run");
        if (finding.rule.rfind("charging/", 0) == 0)
            return none(WishPart::charger, "does not suit the bank: " + message, "ask for another charger");
        auto const is_of = [&](std::string_view id) {
            return std::find(finding.parts.begin(), finding.parts.end(), id) != finding.parts.end();
        };
        if (is_of("F2") || is_of("charge-p"))
            return none(WishPart::charger, "is more than fuses and conductors may carry: " + message,
                        "ask for a smaller charger");
        return none(WishPart::motor, "is more than the parts may carry: " + message,
                    "ask for a higher system voltage or a smaller motor, or give a part list with larger parts");
    }

    // The smallest that will do, a breaker before a fuse.
    static ProtectiveDevice const* first_of(std::vector<ProtectiveDevice> const& devices, DeviceNeed const& need) {
        auto const found = std::find_if(devices.begin(), devices.end(),
                                        [&](ProtectiveDevice const& one) { return need.is_met_by(one); });
        return found == devices.end() ? nullptr : &*found;
    }
    template <class Part>
    static Part const* first_rated(std::vector<Part> const& parts, double amperes) {
        auto const found = std::find_if(parts.begin(), parts.end(), [&](Part const& part) {
            return !part.rating || part.rating->value() >= amperes;
        });
        return found == parts.end() ? nullptr : &*found;
    }

    std::optional<Layout> laid_out() {
        using namespace literals;
        Layout layout;
        layout.battery = candidate_.battery;
        layout.series = candidate_.series;
        layout.strings = candidate_.strings;
        layout.joint = tight_joints_ ? 0.03_mohm : 0.1_mohm;
        layout.wire = stock_.wire;
        layout.main = sizes_.back();
        auto const* main = first_of(stock_.breakers, main_);
        if (!main) {
            main = first_of(stock_.fuses, main_);
            layout.device_is_fuse = true;
            if (!main) return none(WishPart::motor, too_much("breaker or fuse", main_), larger_parts());
            auto const* off = first_rated(stock_.switches, switch_amperes_);
            if (!off)
                return none(
                    WishPart::motor,
                    fmt::format("takes {:.4g} A, more than any switch in the part list may carry", switch_amperes_),
                    larger_parts());
            layout.disconnect = *off;
        }
        layout.device = *main;
        auto const* busbar = first_rated(stock_.busbars, busbar_amperes_);
        if (wants_string_fuses()) {
            auto const* fuse = first_of(stock_.fuses, string_);
            if (!fuse) fuse = first_of(stock_.breakers, string_);
            if (!fuse) return none(WishPart::motor, too_much("fuse", string_), larger_parts());
            if (!busbar)
                return none(
                    WishPart::motor,
                    fmt::format("takes {:.4g} A, more than any busbar in the part list may carry", busbar_amperes_),
                    larger_parts());
            layout.string_fuse = *fuse;
        }
        if (busbar) layout.busbar = *busbar;
        fit_receptacle(layout, busbar != nullptr);
        if (wish_.charger) {
            auto const* fuse = first_of(stock_.fuses, charger_);
            if (!fuse) fuse = first_of(stock_.breakers, charger_);
            if (!fuse) return none(WishPart::charger, too_much("fuse", charger_), "ask for a smaller charger");
            if (lead_ >= sizes_.size())
                return none(WishPart::charger, "needs thicker leads than there are", "ask for a smaller charger");
            layout.charger_fuse = *fuse;
            layout.charger_lead = sizes_[lead_];
        }
        return layout;
    }

    static std::string too_much(std::string_view what, DeviceNeed const& need) {
        auto const at = need.volts > 0.0 ? " at " + print(need.volts * si::volt) : std::string();
        return fmt::format("needs a {} of {} that interrupts {}{}; the part list has none", what,
                           print(need.amperes * si::ampere), print(need.interrupts * si::ampere), at);
    }
    static std::string larger_parts() {
        return "ask for a higher system voltage or a smaller motor, or give a part list with larger parts";
    }

    bool wants_string_fuses() const {
        auto const total = *candidate_.battery.capacity * static_cast<double>(candidate_.strings);
        return candidate_.strings > 2 || string_fuses_ ||
               (candidate_.strings > 1 && (is_lithium(*candidate_.battery.chemistry) || total > parallel_bank_limit()));
    }

    // A receptacle that bears the motor, with the thickest tails that it takes; none where there is no such one.
    void fit_receptacle(Layout& layout, bool has_studs) const {
        for (auto const& receptacle : stock_.connectors) {
            auto const most = receptacle.max_size.value_or(WireSize(Awg{6})).area();
            if (receptacle.rating && receptacle.rating->value() < receptacle_amperes_) continue;
            if (most.value() <= tail_area_ || (studs_ && !has_studs)) continue;
            auto const tail =
                std::find_if(sizes_.rbegin(), sizes_.rend(), [&](WireSize size) { return size.area() <= most; });
            if (tail == sizes_.rend() || tail->area().value() <= tail_area_) continue;
            layout.receptacle = receptacle;
            layout.tail = *tail;
            layout.studs_on_bow = studs_;
            return;
        }
    }

    // Devices and short leads as they are, the main conductors as thin as the rules let them be.
    Fitted sized(Layout layout) const {
        auto bank = lay_out(wish_, layout);
        auto const fix = [&](Bank& changed, bool fixed) {
            for (auto* devices : {&changed.breakers, &changed.fuses})
                for (auto& device : *devices)
                    device.fixed = fixed ? std::optional(true) : std::nullopt;
            for (auto& cable : changed.cables)
                if (cable.conductor.id.rfind("charge-", 0) == 0)
                    cable.conductor.fixed = fixed ? std::optional(true) : std::nullopt;
        };
        fix(bank, true);
        bank.system.runtime.reset(); // copper is not thinned until the starved motor runs long enough
        SizingOptions options;
        options.system = kind_of(wish_);
        options.keep_strings = true;
        auto result = sizing(bank, options);
        fix(result.bank, false);
        result.bank.system.runtime = wish_.runtime;
        return {std::move(layout), std::move(result.bank), std::move(result.groups), {}};
    }

    // True where something was made larger for it.
    bool raise(Finding const& finding, Fitted const& fitted) {
        auto const rule = std::string_view(finding.rule);
        auto const& id = finding.parts.empty() ? finding.rule : finding.parts.front();
        auto const among = [&](std::string_view prefix) {
            return std::any_of(finding.parts.begin(), finding.parts.end(),
                               [&](std::string const& part) { return part.rfind(prefix, 0) == 0; });
        };
        if (rule == "protection/rating-low" || rule == "protection/interrupting" || rule == "protection/voltage")
            return raise_device(finding, fitted);
        if (rule == "protection/parallel-string") return std::exchange(string_fuses_, true) == false;
        if (rule == "connection/too-thick") return std::exchange(studs_, true) == false;
        if (among("tail-") || among("stub-")) return raise_tail(fitted);
        if (among("charge-") && (rule.rfind("conductor/", 0) == 0 || rule.rfind("protection/", 0) == 0 ||
                                 rule == "charging/voltage-drop")) {
            ++lead_;
            return true;
        }
        if (rule != "connection/rating" && rule != "connection/hot-connection") return false;
        auto const beyond = [&](auto const& part, double& least) {
            if (!part || !part->rating) return false;
            least = part->rating->value() * (1.0 + 1e-9);
            return true;
        };
        if (id == "bow") return receptacle_raised_ = beyond(fitted.layout.receptacle, receptacle_amperes_);
        if (id == "off") return beyond(fitted.layout.disconnect, switch_amperes_);
        if (rule == "connection/rating") return beyond(fitted.layout.busbar, busbar_amperes_);
        return std::exchange(tight_joints_, true) == false;
    }

    // Thin copper starves the motor, and what is then rated too low goes unseen: it is looked for with the thickest.
    bool raise_for_thick_copper(Fitted const& fitted) {
        auto const thick = lay_out(wish_, fitted.layout);
        bool raised = false;
        for (auto const& finding :
             check(thick, {{"protection/rating-low", "connection/rating"}, {}, true, false}).findings)
            raised = raise(finding, fitted) || raised;
        return raised;
    }

    bool raise_device(Finding const& finding, Fitted const& fitted) {
        auto const& id = finding.parts.front();
        bool const is_main = id == "CB" || id == "F1";
        auto& need = is_main ? main_ : id == "F2" ? charger_ : string_;
        auto const& device = is_main      ? fitted.layout.device
                             : id == "F2" ? *fitted.layout.charger_fuse
                                          : *fitted.layout.string_fuse;
        if (finding.rule == "protection/rating-low")
            need.amperes = device.rating->value() * (1.0 + 1e-9);
        else if (finding.rule == "protection/interrupting" && finding.found)
            need.interrupts = *finding.found;
        else if (finding.rule == "protection/voltage" && finding.allowed)
            need.volts = *finding.allowed;
        return true;
    }

    bool raise_tail(Fitted const& fitted) {
        if (!fitted.layout.receptacle) return false;
        tail_area_ = fitted.layout.tail.area().value();
        return receptacle_raised_ = true;
    }

    Wish const& wish_;
    PartStock const& stock_;
    Candidate const& candidate_;
    std::vector<WireSize> sizes_; // to choose from, from the thinnest
    DeviceNeed main_;
    DeviceNeed string_;
    DeviceNeed charger_;
    double receptacle_amperes_ = 0.0;
    double busbar_amperes_ = 0.0;
    double switch_amperes_ = 0.0;
    double tail_area_ = 0.0; // [m2] tails must be thicker
    std::size_t lead_ = 0;   // of the charger, among sizes_
    bool string_fuses_ = false;
    bool studs_ = false;
    bool receptacle_raised_ = false; // in this round
    bool tight_joints_ = false;
    WishProblem problem_;
};

} // namespace bankwright::internal::planning
