// Every single mistake that can be made with the conductors and devices of a bank.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/terminals.hpp"

#include <algorithm>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace miswires {

using namespace bankwright;

struct Miswire {
    std::string what;                  // for people
    std::string kind;                  // for the table
    std::vector<std::string> culprits; // a finding that names one of these, first of all, names the cause
    std::function<void(Bank&)> make;   // names parts, so that one mistake can be made after another
};

inline Bank with(Bank bank, Miswire const& miswire) {
    miswire.make(bank);
    return bank;
}

inline std::string owner(Bank const& bank, std::string const& terminal) {
    std::string found;
    for_each_part(bank, [&](PartKind, auto const& part) {
        for (auto const& name : terminals_of(part))
            if (name == terminal) found = id_of(part);
    });
    return found;
}

template <class Do>
void for_each_conductor(Bank& bank, Do&& act) {
    for (auto* runs : {&bank.jumpers, &bank.cables})
        for (auto& run : *runs)
            act(run);
}

// What is landed on one terminal goes to the other, and the other way around.
inline void exchange(Bank& bank, std::string const& a, std::string const& b) {
    for_each_conductor(bank, [&](Run& run) {
        for (auto* end : {&run.from, &run.to}) {
            if (*end == a)
                *end = b;
            else if (*end == b)
                *end = a;
        }
    });
}

inline void take_out(Bank& bank, std::string const& id) {
    for (auto* runs : {&bank.jumpers, &bank.cables})
        runs->erase(std::remove_if(runs->begin(), runs->end(), [&](Run const& run) { return run.conductor.id == id; }),
                    runs->end());
}

inline void add_conductor(Bank& bank, Run run) {
    for_each_conductor(bank, [&](Run const& other) {
        if (other.conductor.id == run.conductor.id) run.conductor.id += "-2";
    });
    bank.cables.push_back(std::move(run));
}

class MiswireMaker {
public:
    explicit MiswireMaker(Bank const& good) : good_(good), terminals_(terminals_of(good)) {
        for (auto const* runs : {&good.jumpers, &good.cables})
            conductors_.insert(conductors_.end(), runs->begin(), runs->end());
    }

    std::vector<Miswire> all() {
        for (auto const& battery : good_.batteries)
            leads(battery.id, battery.id + "+", battery.id + "-", "battery turned");
        for (auto const& run : conductors_) {
            land_elsewhere(run);
            leave_out(run);
            double_up(run);
        }
        lay_across();
        for (auto const& m : good_.motors)
            leads(m.id, m.id + "+", m.id + "-", "leads exchanged");
        for (auto const& l : good_.loads)
            leads(l.id, l.id + "+", l.id + "-", "leads exchanged");
        for (auto const& c : good_.connectors) {
            leads(c.id, c.id + "+", c.id + "-", "receptacle exchanged");
            leads(c.id, c.id + ".plug+", c.id + ".plug-", "plug exchanged");
        }
        for (auto const& c : good_.chargers)
            leads(c.id, c.id + ".1+", c.id + ".1-", "charger exchanged");
        for (auto const* devices : {&good_.breakers, &good_.fuses})
            for (auto const& d : *devices) {
                leads(d.id, d.id + ".line", d.id + ".load", "device turned");
                bypass(d.id);
            }
        return std::move(made_);
    }

private:
    void leads(std::string const& id, std::string const& a, std::string const& b, char const* kind) {
        made_.push_back(
            {id + ": " + a + " and " + b + " exchanged", kind, {id}, [=](Bank& bank) { exchange(bank, a, b); }});
    }

    void land_elsewhere(Run const& run) {
        auto const& id = run.conductor.id;
        for (auto const from : {true, false})
            for (auto const& terminal : terminals_) {
                if (terminal == run.from || terminal == run.to) continue;
                made_.push_back({id + ": end moved from " + (from ? run.from : run.to) + " to " + terminal,
                                 "end on another post",
                                 {id},
                                 [=](Bank& bank) {
                                     for_each_conductor(bank, [&](Run& moved) {
                                         if (moved.conductor.id == id) (from ? moved.from : moved.to) = terminal;
                                     });
                                 }});
            }
    }

    void leave_out(Run const& run) {
        auto const& id = run.conductor.id;
        made_.push_back(
            {id + " missing", "conductor missing", {owner(good_, run.from), owner(good_, run.to)}, [=](Bank& bank) {
                 take_out(bank, id);
             }});
    }

    void double_up(Run twin) {
        twin.conductor.id += "-twin";
        made_.push_back({twin.conductor.id, "conductor doubled", {twin.conductor.id}, [=](Bank& bank) {
                             add_conductor(bank, twin);
                         }});
    }

    void lay_across() {
        Run extra;
        extra.conductor.id = "extra";
        extra.conductor.resistance = 0.4e-3 * si::ohm;
        for (std::size_t a = 0; a < terminals_.size(); ++a)
            for (std::size_t b = a + 1; b < terminals_.size(); ++b) {
                extra.from = terminals_[a];
                extra.to = terminals_[b];
                made_.push_back({"extra conductor " + extra.from + " to " + extra.to,
                                 "conductor across",
                                 {"extra"},
                                 [=](Bank& bank) { add_conductor(bank, extra); }});
            }
    }

    // Everything on its line stud goes to its load stud: it is there, and nothing flows through it.
    void bypass(std::string const& id) {
        std::vector<std::string> culprits{id};
        for (auto const& run : conductors_)
            if (run.from == id + ".line" || run.to == id + ".line") culprits.push_back(run.conductor.id);
        made_.push_back({id + " bypassed", "device bypassed", std::move(culprits), [=](Bank& bank) {
                             for_each_conductor(bank, [&](Run& run) {
                                 for (auto* end : {&run.from, &run.to})
                                     if (*end == id + ".line") *end = id + ".load";
                             });
                         }});
    }

    Bank const& good_;
    std::vector<std::string> terminals_;
    std::vector<Run> conductors_;
    std::vector<Miswire> made_;
};

} // namespace miswires
