// Bodies of last_devices.hpp.
#pragma once

#include "bankwright/analyses/hookup/last_devices.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/graph/as_index.hpp"

#include <algorithm>
#include <cstddef>

namespace bankwright {

BANKWRIGHT_INLINE std::vector<std::pair<std::string, std::string>> load_terminals(Bank const& bank) {
    std::vector<std::pair<std::string, std::string>> ends;
    auto const add = [&](auto const& parts) {
        for (auto const& part : parts) {
            auto const names = terminals_of(part);
            for (std::size_t n = 0; n + 1 < names.size(); n += 2)
                ends.emplace_back(names[n], names[n + 1]);
        }
    };
    add(bank.motors);
    add(bank.loads);
    add(bank.chargers);
    add(bank.converters);
    return ends;
}

namespace internal {

class LastDevices {
public:
    LastDevices(Bank const& bank, PartialBank const& partial, bool with_selectors) : partial_(partial) {
        auto const& connections = partial.connections();
        Made made(connections.size(), 1);
        for (std::size_t c = 0; c < connections.size(); ++c) {
            auto const kind = connections[c].kind;
            bool const parts = kind == PartKind::breaker || kind == PartKind::switch_;
            if (!parts && !(with_selectors && kind == PartKind::selector)) continue;
            made[c] = 0;
            devices_.push_back(c);
        }
        for (auto const& [plus, minus] : load_terminals(bank))
            loads_.emplace_back(partial.node(plus), partial.node(minus));
        for (auto const& connector : bank.connectors)
            loads_.emplace_back(partial.node(connector.id + "+"), partial.node(connector.id + "-"));
        std::vector<std::pair<int, int>> kept;
        auto const island = partial.islands(made);
        for (auto const& load : loads_)
            if (!fed(island, load)) kept.push_back(load);
        auto const pins = static_cast<std::ptrdiff_t>(bank.connectors.size());
        keeps_plugs_ =
            std::none_of(loads_.end() - pins, loads_.end(), [&](auto const& pin) { return fed(island, pin); });
        loads_ = std::move(kept);
    }

    bool keeps_plugs() const { return keeps_plugs_; } // all of them

    std::vector<char> find() {
        open_.assign(partial_.connections().size(), 0);
        for (std::size_t size = 0; size <= most_tried && size <= devices_.size(); ++size) {
            best_breakers_ = -1;
            choose(0, size, 0);
            if (best_breakers_ >= 0) return best_;
        }
        return one_by_one();
    }

private:
    static constexpr std::size_t most_tried = 3; // beyond, the sets grow too many to try

    static bool fed(std::vector<int> const& island, std::pair<int, int> const& load) {
        return island[as_index(load.first)] == island[as_index(load.second)];
    }

    bool keeps_all_dead() const {
        Made made(open_.size());
        for (std::size_t c = 0; c < open_.size(); ++c)
            made[c] = !open_[c];
        auto const island = partial_.islands(made);
        for (auto const& load : loads_)
            if (fed(island, load)) return false;
        return true;
    }

    void choose(std::size_t first, std::size_t left, int breakers) {
        if (left == 0) {
            if (breakers <= best_breakers_ || !keeps_all_dead()) return;
            best_breakers_ = breakers;
            best_ = open_;
            return;
        }
        for (auto d = first; d + left <= devices_.size(); ++d) {
            open_[devices_[d]] = 1;
            choose(d + 1, left - 1, breakers + (partial_.connections()[devices_[d]].kind == PartKind::breaker));
            open_[devices_[d]] = 0;
        }
    }

    // Every device open, then each closed that feeds nothing: breakers are asked last, and so are most often left.
    std::vector<char> one_by_one() {
        for (auto const d : devices_)
            open_[d] = 1;
        for (bool const breakers : {false, true})
            for (auto const d : devices_) {
                if ((partial_.connections()[d].kind == PartKind::breaker) != breakers) continue;
                open_[d] = 0;
                if (!keeps_all_dead()) open_[d] = 1;
            }
        return open_;
    }

    PartialBank const& partial_;
    std::vector<std::size_t> devices_;
    std::vector<std::pair<int, int>> loads_;
    std::vector<char> open_;
    std::vector<char> best_;
    int best_breakers_ = -1;
    bool keeps_plugs_ = false;
};

} // namespace internal

BANKWRIGHT_INLINE std::vector<char> last_devices(Bank const& bank, PartialBank const& partial) {
    internal::LastDevices without(bank, partial, false);
    return without.keeps_plugs() ? without.find() : internal::LastDevices(bank, partial, true).find();
}

} // namespace bankwright
