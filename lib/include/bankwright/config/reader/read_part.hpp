// Reads the keys of one part: its own first, its model's where it has none, each checked against the table of keys.
#pragma once

#include "bankwright/config/fields.hpp"
#include "bankwright/config/reader/key_elsewhere.hpp"
#include "bankwright/config/reader/read_models.hpp"
#include "bankwright/config/reader/read_report.hpp"
#include "bankwright/config/reader/read_value.hpp"
#include "bankwright/devices/motor_propeller.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

inline std::vector<std::string_view> names_of(SectionSpec const& section) {
    std::vector<std::string_view> names;
    for (auto const& key : section.keys)
        names.push_back(key.name);
    return names;
}

// Visits the members of one part and fills them.
class KeyReader {
public:
    // `own` must be a table and outlive the reader.
    KeyReader(SectionSpec const& section, Subject subject, DocumentValue const& own, Models& models, Report& report)
        : section_(section), subject_(std::move(subject)), own_(own), models_(models), report_(report) {
        for (auto const& entry : own.entries) {
            if (find_key(section, entry.key)) continue;
            if (report_.is_full()) continue;
            auto const near = report_.nearest(entry.key, names_of(section));
            report_.add(
                file_unknown_key, subject_.part, entry.key, entry.region,
                fmt::format("{} is not a key of {}", in_backquotes(entry.key),
                            subject_.words.empty() ? "a bank file" : subject_.words),
                help_with(near, key_elsewhere(entry.key, section)
                                    .value_or(fmt::format("its keys are {}", listed(names_of(section), " and ")))));
        }
        if (find_key(section, "model")) choose_model();
    }

    template <class T>
    void operator()(std::string_view name, std::optional<T>& member) {
        if (auto value = read<T>(name)) member = std::move(*value);
    }
    template <class T>
    void operator()(std::string_view name, T& member) {
        if (auto value = read<T>(name)) member = std::move(*value);
    }
    void operator()(std::string_view name, TwoWords<std::optional<bool>> member) {
        auto const& key = *find_key(section_, name);
        auto const [entry, is_own] = find(name);
        if (!entry) return;
        auto word = choice_of(key, entry->value);
        if (accept(key, *entry, is_own, std::move(word.trouble))) member.is_first = *word.value == 0;
    }

    bool is_valid(std::string_view key) const { return std::find(valid_.begin(), valid_.end(), key) != valid_.end(); }
    bool is_stated(std::string_view key) const { return find(key).first != nullptr; }

    // Its model is none, or none for its kind: what is missing may well be in the model that was meant.
    bool has_wrong_model() const { return has_wrong_model_; }

    // Reports what is missing. True if the part has all that it cannot do without.
    bool meets_requirements() {
        bool complete = true;
        for (auto const& requirement : section_.requirements) {
            if (is_met(requirement)) continue;
            auto const alternatives = internal::key_words::alternatives_of(requirement);
            internal::key_words::Alternatives stated;
            int valid = 0;
            for (auto const& keys : alternatives) {
                if (all_of(keys, &KeyReader::is_stated)) stated.push_back(keys);
                valid += all_of(keys, &KeyReader::is_valid);
            }
            if (requirement.exactly_one && stated.size() > 1) {
                fail(file_bad_value, {},
                     fmt::format("has {} at once; exactly one is allowed",
                                 internal::key_words::in_words(stated, " and ")),
                     "keep the one that says how it draws, and split the rest off into another part");
                complete = false;
            } else if (valid == 0) {
                // What is there but cannot be read has its finding already.
                if (stated.empty()) report_missing(alternatives);
                complete = false;
            }
        }
        return complete;
    }

    // "cable `feed` lacks ...", at the key if the part itself states it, else at the part.
    void fail(RuleInfo const& rule, std::string_view key, std::string const& what, std::string help) {
        auto const* entry = key.empty() ? nullptr : find_entry(own_, key);
        report_.add(rule, subject_.part, key, entry ? entry->region : subject_.region,
                    subject_.words.empty() ? "the file " + what : subject_.words + " " + what, std::move(help));
    }

    // A note: what is taken for a key that is not there.
    void assume(std::string_view key, std::string const& what, std::string help) {
        auto const* entry = find_entry(own_, key);
        Finding finding;
        finding.rule = std::string(file_missing_key.id);
        finding.level = Level::note;
        finding.message = subject_.words + " " + what;
        finding.help = std::move(help);
        finding.parts = {subject_.part};
        finding.key = std::string(key);
        finding.region = entry ? entry->region : subject_.region;
        report_.add(std::move(finding));
    }

    Report& report() { return report_; }

private:
    // As a rule it is, and then no words need be made of it.
    bool is_met(Requirement const& requirement) const {
        int stated = 0, valid = 0;
        bool all_stated = true, all_valid = true; // of the alternative that is being read
        auto const end_alternative = [&] {
            stated += all_stated;
            valid += all_valid;
            all_stated = all_valid = true;
        };
        for (auto text = requirement.alternatives; !text.empty();) {
            auto const word = text.substr(0, text.find(' '));
            text.remove_prefix(std::min(word.size() + 1, text.size()));
            if (word == "|") {
                end_alternative();
                continue;
            }
            all_stated = all_stated && is_stated(word);
            all_valid = all_valid && is_valid(word);
        }
        end_alternative();
        return valid > 0 && (!requirement.exactly_one || stated == 1);
    }

    void report_missing(internal::key_words::Alternatives const& alternatives) {
        auto const has = [&](std::string_view key) { return is_stated(key); };
        auto lacking = alternatives.front();
        std::string begun; // an alternative that is there by half is the one that was meant
        for (auto const& keys : alternatives) {
            if (std::none_of(keys.begin(), keys.end(), has)) continue;
            lacking = keys;
            lacking.erase(std::remove_if(lacking.begin(), lacking.end(), has), lacking.end());
            begun = fmt::format("{}: it needs ", listed(lacking, " and "));
            break;
        }
        std::string example;
        for (auto const& key : lacking)
            example +=
                fmt::format("{}`{} = {}`", example.empty() ? "" : " and ", key, find_key(section_, key)->example);
        fail(file_missing_key, {}, fmt::format("lacks {}{}", begun, internal::key_words::in_words(alternatives)),
             fmt::format("state it, for example {}", example));
    }

    void choose_model() {
        auto const* entry = find_entry(own_, "model");
        if (!entry) return;
        auto const& key = *find_key(section_, "model");
        auto name = value_of<std::string>(key, entry->value);
        if (name.value) model_ = models_.find(*name.value);
        has_wrong_model_ = !model_;
        if (name.trouble) return report_.add(subject_, key, entry->region, std::move(*name.trouble));
        if (!model_ && models_.lacks_list()) return;
        if (!model_) {
            auto const near = report_.nearest(*name.value, models_.names());
            auto const otherwise = models_.empty() ? "the file has no [models]; add one, or write the keys here"
                                                   : "name one of the models in [models], or in the part lists";
            return report_.add(subject_, key, entry->region,
                               Trouble{&file_bad_value, fmt::format("is {}, which is not a model", shown(entry->value)),
                                       help_with(near, otherwise)});
        }
        for (auto const& of_model : model_->value.entries) {
            if (find_key(section_, of_model.key) || models_.is_wrong(of_model)) continue;
            has_wrong_model_ = true;
            report_.add(subject_, key, entry->region,
                        Trouble{&file_bad_value,
                                fmt::format("is {}, which holds {}: {} has no such key", shown(entry->value),
                                            in_backquotes(of_model.key), subject_.words),
                                "give it a model of its own kind"});
            break;
        }
    }

    // The entry that states a key, and whether it is the part's own.
    std::pair<DocumentEntry const*, bool> find(std::string_view name) const {
        if (auto const* entry = find_entry(own_, name)) return {entry, true};
        if (model_) return {find_entry(model_->value, name), false};
        return {nullptr, true};
    }

    template <class T>
    std::optional<T> read(std::string_view name) {
        auto const& key = *find_key(section_, name);
        auto const [entry, is_own] = find(name);
        if (!entry) return std::nullopt;
        auto outcome = value_of<T>(key, entry->value);
        if (!accept(key, *entry, is_own, std::move(outcome.trouble))) return std::nullopt;
        if (outcome.spread) report_.note({subject_.part, std::string(name), *outcome.spread});
        return std::move(outcome.value);
    }

    // Notes the key as read, or reports its trouble: in a model once, where the model stands.
    bool accept(KeySpec const& key, DocumentEntry const& entry, bool is_own, std::optional<Trouble> trouble) {
        if (!trouble) {
            valid_.push_back(key.name);
            return true;
        }
        if (is_own) {
            report_.add(subject_, key, entry.region, std::move(*trouble));
        } else if (!models_.is_wrong(entry)) {
            trouble->message += fmt::format(" (from model {})", in_backquotes(model_->key));
            report_.add(subject_, key, find_entry(own_, "model")->region, std::move(*trouble));
        }
        return false;
    }

    bool all_of(std::vector<std::string_view> const& keys, bool (KeyReader::*is)(std::string_view) const) const {
        return std::all_of(keys.begin(), keys.end(), [&](auto key) { return (this->*is)(key); });
    }

    SectionSpec const& section_;
    Subject subject_;
    DocumentValue const& own_;
    Models& models_;
    Report& report_;
    DocumentEntry const* model_ = nullptr;
    bool has_wrong_model_ = false;
    std::vector<std::string_view> valid_;
};

// Keys that are each right but contradict each other. What cannot be kept is taken out.

inline void reconcile(Battery& battery, KeyReader& keys) {
    if (battery.cells && battery.dead_cells && *battery.dead_cells > *battery.cells) {
        keys.fail(file_bad_value, "dead_cells",
                  fmt::format("has {} dead cells of {}", *battery.dead_cells, *battery.cells),
                  fmt::format("`dead_cells` is {} at most", *battery.cells));
        battery.dead_cells.reset();
    }
    if (battery.weak_cells.value_or(0) > 0 && !keys.is_stated("weak_capacity"))
        keys.fail(file_missing_key, "weak_cells", "has `weak_cells` and lacks `weak_capacity`",
                  "say what one of them holds, over what a sound cell does: weak_capacity = \"60 %\"");
    if (battery.weak_capacity && !keys.is_stated("weak_cells"))
        keys.fail(file_missing_key, "weak_capacity", "has `weak_capacity` and lacks `weak_cells`",
                  "say how many cells hold so little: weak_cells = 1");
    if (auto const faulty = battery.weak_cells.value_or(0) + battery.dead_cells.value_or(0);
        battery.cells && battery.weak_cells && faulty > *battery.cells) {
        keys.fail(file_bad_value, "weak_cells", fmt::format("has {} weak and dead cells of {}", faulty, *battery.cells),
                  fmt::format("`weak_cells` and `dead_cells` are {} together at most", *battery.cells));
        battery.weak_cells.reset();
        battery.weak_capacity.reset();
    }
    if (battery.low_cutoff && battery.high_cutoff && !(*battery.low_cutoff < *battery.high_cutoff)) {
        keys.fail(file_bad_value, "low_cutoff",
                  fmt::format("has `low_cutoff` {}; allowed is less than its `high_cutoff`, {}",
                              print(*battery.low_cutoff), print(*battery.high_cutoff)),
                  "are the two swapped?");
        battery.low_cutoff.reset();
        battery.high_cutoff.reset();
    }
}

inline void reconcile(Motor& motor, KeyReader& keys) {
    if (!motor.current && motor.thrust && motor.voltage) {
        motor.current = current_for_thrust(*motor.thrust, *motor.voltage);
        keys.assume("thrust",
                    fmt::format("states no `current`: {} are assumed for its thrust of {:.0f} N ({:.0f} lb)",
                                print(*motor.current), motor.thrust->value(), motor.thrust->value() / 4.4482216152605),
                    "from a 10 in propeller that turns half of the power drawn into thrust (common practice, no "
                    "source); write the `current` of its nameplate: every size and rating rests on it");
    }
    if (!motor.voltage || !motor.current || !motor.winding) return;
    Voltage const drop = *motor.winding * *motor.current;
    if (drop < *motor.voltage) return;
    keys.fail(
        file_bad_value, "winding",
        fmt::format("has a `winding` that drops {} at its nameplate current; allowed is less than its voltage, {}",
                    print(drop), print(*motor.voltage)),
        "check the resistance: a trolling motor's winding is some tens of milliohms");
    motor.winding.reset();
}

inline void reconcile(Relay& relay, KeyReader& keys) {
    if (!relay.closes_above || !relay.opens_below || *relay.opens_below < *relay.closes_above) return;
    keys.fail(file_bad_value, "opens_below",
              fmt::format("has `opens_below` {}; allowed is less than its `closes_above`, {}",
                          print(*relay.opens_below), print(*relay.closes_above)),
              "are the two swapped?");
    relay.closes_above.reset();
    relay.opens_below.reset();
}

inline void reconcile(Load& load, KeyReader& keys) {
    if (!load.min_voltage || !load.max_voltage || *load.min_voltage < *load.max_voltage) return;
    keys.fail(file_bad_value, "min_voltage",
              fmt::format("has `min_voltage` {}; allowed is less than its `max_voltage`, {}", print(*load.min_voltage),
                          print(*load.max_voltage)),
              "are the two swapped?");
    load.min_voltage.reset();
    load.max_voltage.reset();
}

template <class Part>
void reconcile(Part&, KeyReader&) {}

} // namespace bankwright::internal::reader
