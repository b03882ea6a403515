// What have several parts in common? Models, found in a bank that has none.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/config/writer/key_writer.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::writing {

class Modeled {
public:
    using Keys = std::vector<std::string>; // `key = value`

    explicit Modeled(Bank const& bank) {
        for_each_part(bank, [&](PartKind kind, auto const& part) {
            KeyWriter keys(section_spec(kind), bank.tolerances, id_of(part));
            for_each_field(part, keys);
            Entry entry;
            for (auto const& key : keys.each())
                (is_of_a_kind(kind, key) ? entry.shared : entry.own).push_back(key);
            entry.kind = kind;
            parts_[id_of(part)] = std::move(entry);
            order_.push_back(id_of(part));
        });
        for (auto const& id : order_) {
            auto const& shared = parts_[id].shared;
            auto const same = [&](auto const& other) { return other.second.shared == shared; };
            if (shared.empty() || std::count_if(parts_.begin(), parts_.end(), same) < 2) continue;
            auto const known =
                std::find_if(models_.begin(), models_.end(), [&](auto const& m) { return m.second == shared; });
            if (known != models_.end()) {
                parts_[id].model = known->first;
                continue;
            }
            parts_[id].model = name_for(parts_[id]);
            models_.emplace_back(parts_[id].model, shared);
        }
    }

    std::vector<std::pair<std::string, Keys>> const& models() const { return models_; }

    std::string table(std::string const& id) const {
        auto const& entry = parts_.at(id);
        Keys keys;
        if (!entry.model.empty())
            keys.push_back(fmt::format("model = {}", toml_string(entry.model)));
        else
            keys = entry.shared;
        keys.insert(keys.end(), entry.own.begin(), entry.own.end());
        return keys.empty() ? "{}" : fmt::format("{{ {} }}", fmt::join(keys, ", "));
    }

private:
    struct Entry {
        PartKind kind = PartKind::battery;
        Keys shared; // what a model of it would hold
        Keys own;
        std::string model;
    };

    // A conductor is one of a kind by what it is made of, a battery by its label, anything else by all its keys.
    static bool is_of_a_kind(PartKind kind, std::string_view key) {
        auto const is = [&](auto... names) {
            return (... || (key.substr(0, key.find(' ')) == std::string_view(names)));
        };
        if (kind == PartKind::jumper || kind == PartKind::cable) return is("size", "insulation", "tinned");
        if (kind == PartKind::battery) return !is("charge", "health", "emf", "temperature", "made", "place", "role");
        return !is("state", "place", "position", "on");
    }

    // "no6", "mm2-16", "battery", "fuse-2"
    std::string name_for(Entry const& entry) const {
        std::string name(bankwright::name(entry.kind));
        if (entry.kind == PartKind::jumper || entry.kind == PartKind::cable)
            for (auto const& key : entry.shared)
                if (key.rfind("size = ", 0) == 0) name = for_size(key.substr(8, key.size() - 9));
        auto free = name;
        for (int n = 2; std::any_of(models_.begin(), models_.end(), [&](auto const& m) { return m.first == free; });
             ++n)
            free = fmt::format("{}-{}", name, n);
        return free;
    }
    static std::string for_size(std::string const& size) {
        auto const blank = size.find(' ');
        auto number = size.substr(0, blank);
        std::replace_if(
            number.begin(), number.end(), [](char c) { return c == '/' || c == '.'; }, '-');
        return size.find("AWG") != std::string::npos ? "no" + number : "wire-" + number;
    }

    std::map<std::string, Entry> parts_;
    std::vector<std::string> order_;
    std::vector<std::pair<std::string, Keys>> models_;
};

} // namespace bankwright::internal::writing
