// Every single mistake that can be made with the conductors and devices of a bank.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/terminals.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace miswires {

using namespace bankwright;

struct Miswire {
    std::string what;                  // for people
    std::string kind;                  // for the table
    std::vector<std::string> culprits; // a finding that names one of these, first of all, names the cause
    Bank bank;
};

inline std::string owner(Bank const& bank, std::string const& terminal) {
    std::string found;
    for_each_part(bank, [&](PartKind, auto const& part) {
        for (auto const& name : terminals_of(part))
            if (name == terminal) found = id_of(part);
    });
    return found;
}

class MiswireMaker {
public:
    explicit MiswireMaker(Bank const& good) : good_(good), terminals_(terminals_of(good)) {}

    std::vector<Miswire> all() {
        turn_batteries();
        land_elsewhere();
        leave_out();
        double_up();
        swap_leads();
        return std::move(made_);
    }

private:
    // Conductors, by position: jumpers first, then cables.
    static Run& conductor(Bank& bank, std::size_t i) {
        return i < bank.jumpers.size() ? bank.jumpers[i] : bank.cables[i - bank.jumpers.size()];
    }
    std::size_t conductors() const { return good_.jumpers.size() + good_.cables.size(); }

    void add(std::string what, std::string kind, std::vector<std::string> culprits, Bank bank) {
        made_.push_back({std::move(what), std::move(kind), std::move(culprits), std::move(bank)});
    }

    static void exchange(Bank& bank, std::string const& a, std::string const& b) {
        for (auto* runs : {&bank.jumpers, &bank.cables})
            for (auto& run : *runs)
                for (auto* end : {&run.from, &run.to}) {
                    if (*end == a)
                        *end = b;
                    else if (*end == b)
                        *end = a;
                }
    }

    void turn_batteries() {
        for (auto const& battery : good_.batteries) {
            auto bank = good_;
            exchange(bank, battery.id + "+", battery.id + "-");
            add(battery.id + " turned round", "battery turned", {battery.id}, std::move(bank));
        }
    }

    void land_elsewhere() {
        for (std::size_t i = 0; i < conductors(); ++i)
            for (auto const from : {true, false})
                for (auto const& terminal : terminals_) {
                    auto bank = good_;
                    auto& run = conductor(bank, i);
                    auto& end = from ? run.from : run.to;
                    if (terminal == run.from || terminal == run.to) continue;
                    auto const what = run.conductor.id + ": end moved from " + end + " to " + terminal;
                    end = terminal;
                    add(what, "end on another post", {run.conductor.id}, std::move(bank));
                }
    }

    void leave_out() {
        for (std::size_t i = 0; i < conductors(); ++i) {
            auto bank = good_;
            auto const lost = conductor(bank, i);
            if (i < bank.jumpers.size())
                bank.jumpers.erase(bank.jumpers.begin() + static_cast<std::ptrdiff_t>(i));
            else
                bank.cables.erase(bank.cables.begin() + static_cast<std::ptrdiff_t>(i - bank.jumpers.size()));
            add(lost.conductor.id + " missing", "conductor missing", {owner(good_, lost.from), owner(good_, lost.to)},
                std::move(bank));
        }
    }

    void double_up() {
        for (std::size_t i = 0; i < conductors(); ++i) {
            auto bank = good_;
            auto twin = conductor(bank, i);
            twin.conductor.id += "-twin";
            bank.cables.push_back(twin);
            add(twin.conductor.id, "conductor doubled", {twin.conductor.id}, std::move(bank));
        }
        for (std::size_t a = 0; a < terminals_.size(); ++a)
            for (std::size_t b = a + 1; b < terminals_.size(); ++b) {
                auto bank = good_;
                Run extra;
                extra.conductor.id = "extra";
                extra.conductor.resistance = 0.4e-3 * si::ohm;
                extra.from = terminals_[a];
                extra.to = terminals_[b];
                bank.cables.push_back(extra);
                add("extra conductor " + terminals_[a] + " to " + terminals_[b], "conductor across", {"extra"},
                    std::move(bank));
            }
    }

    void swap_leads() {
        auto const both = [&](std::string const& id, std::string const& plus, std::string const& minus,
                              char const* kind) {
            auto bank = good_;
            exchange(bank, plus, minus);
            add(id + ": " + plus + " and " + minus + " exchanged", kind, {id}, std::move(bank));
        };
        for (auto const& m : good_.motors)
            both(m.id, m.id + "+", m.id + "-", "leads exchanged");
        for (auto const& l : good_.loads)
            both(l.id, l.id + "+", l.id + "-", "leads exchanged");
        for (auto const& c : good_.connectors) {
            both(c.id, c.id + "+", c.id + "-", "leads exchanged");
            both(c.id, c.id + ".plug+", c.id + ".plug-", "leads exchanged");
        }
        for (auto const* devices : {&good_.breakers, &good_.fuses})
            for (auto const& d : *devices)
                both(d.id, d.id + ".line", d.id + ".load", "device turned");
    }

    Bank const& good_;
    std::vector<std::string> terminals_;
    std::vector<Miswire> made_;
};

} // namespace miswires
