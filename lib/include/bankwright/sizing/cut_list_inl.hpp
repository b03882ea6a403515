#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/sizing/cut_list.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/units/quantities.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::cutting {

// All common practice, no source.
inline constexpr double slack = 1.10;
inline constexpr int screws_of_a_device = 2;
inline constexpr int screws_of_a_receptacle = 4;
inline constexpr double inch = 0.0254; // [m]
inline Length heat_shrink_of_a_ring() { return inch * si::meter; }

struct Landing {
    std::string on;
    bool ring = true;
};

inline Landing landing_on(PartKind kind) {
    switch (kind) {
    case PartKind::battery:
        return {"battery post", true};
    case PartKind::breaker:
    case PartKind::fuse:
        return {"stud of a breaker or fuse", true};
    case PartKind::switch_:
        return {"stud of a switch", true};
    case PartKind::shunt:
        return {"stud of a shunt", true};
    case PartKind::relay:
        return {"stud of a relay", true};
    case PartKind::selector:
        return {"stud of a selector", true};
    case PartKind::converter:
        return {"terminal of a converter", true};
    case PartKind::busbar:
        return {"stud of a busbar", true};
    case PartKind::connector:
        return {"plug or receptacle, 1/4 in stripped, strands twisted, set screw hand-tight", false};
    case PartKind::charger:
        return {"charger's lead", true};
    default:
        return {"lead of a motor or load", true};
    }
}

inline std::map<std::string, PartKind> owners(Bank const& bank) {
    std::map<std::string, PartKind> kinds;
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        for (auto const& terminal : terminals_of(part))
            kinds.emplace(terminal, kind);
    });
    return kinds;
}

inline void add_end(CutList& list, WireSize size, PartKind kind) {
    auto const landing = landing_on(kind);
    auto const what = landing.ring ? "ring terminal" : "stripped end";
    if (landing.ring) list.heat_shrink += heat_shrink_of_a_ring();
    for (auto& end : list.ends)
        if (end.what == what && end.size == size && end.on == landing.on) {
            ++end.count;
            return;
        }
    list.ends.push_back({what, size, landing.on, 1});
}

inline void add_wire(CutList& list, Cut const& cut) {
    for (auto& total : list.wire)
        if (total.size == cut.size && total.color == cut.color) {
            ++total.pieces;
            total.length += cut.cut;
            return;
        }
    list.wire.push_back({cut.size, cut.color, 1, cut.cut});
}

inline void add_price(CutList& list, std::optional<Price> const& price) {
    if (!price) {
        ++list.without_price;
        return;
    }
    for (auto& sum : list.prices)
        if (sum.currency == price->currency) {
            sum.hundredths += price->hundredths;
            return;
        }
    list.prices.push_back(*price);
}

inline void add_article(CutList& list, std::string what, std::string detail, std::string const& part, int screws,
                        std::optional<Price> const& price = {}) {
    list.screws += screws;
    add_price(list, price);
    for (auto& article : list.articles)
        if (article.what == what && article.detail == detail && article.each == price) {
            article.parts.push_back(part);
            return;
        }
    list.articles.push_back({std::move(what), std::move(detail), {part}, price});
}

template <class Quantity>
void tell(std::string& detail, std::optional<Quantity> const& value, std::string const& before = {}) {
    if (value) detail += (detail.empty() ? "" : ", ") + before + print(*value);
}

inline void add_devices(CutList& list, Bank const& bank) {
    for (auto const* devices : {&bank.breakers, &bank.fuses})
        for (auto const& device : *devices) {
            std::string detail;
            tell(detail, device.rating);
            tell(detail, device.voltage);
            tell(detail, device.interrupts, "interrupts ");
            add_article(list, devices == &bank.breakers ? "breaker" : "fuse and holder", detail, device.id,
                        screws_of_a_device, device.price);
        }
    for (auto const& part : bank.switches) {
        std::string detail;
        tell(detail, part.rating);
        add_article(list, "switch", detail, part.id, screws_of_a_device, part.price);
    }
    for (auto const& part : bank.shunts) {
        std::string detail;
        tell(detail, part.rating);
        tell(detail, part.drop);
        add_article(list, "shunt", detail, part.id, screws_of_a_device);
    }
    for (auto const& part : bank.relays) {
        std::string detail;
        tell(detail, part.rating);
        tell(detail, part.closes_above, "closes above ");
        add_article(list, "combining relay", detail, part.id, screws_of_a_device);
    }
    for (auto const& part : bank.selectors) {
        std::string detail;
        tell(detail, part.rating);
        add_article(list, "battery selector", detail, part.id, screws_of_a_device);
    }
    for (auto const& part : bank.converters) {
        std::string detail;
        tell(detail, part.voltage);
        tell(detail, part.power);
        add_article(list, "converter", detail, part.id, screws_of_a_device);
    }
    for (auto const& part : bank.busbars) {
        std::string detail;
        tell(detail, part.rating);
        if (part.studs) detail += fmt::format("{}{} studs", detail.empty() ? "" : ", ", *part.studs);
        add_article(list, "busbar", detail, part.id, screws_of_a_device, part.price);
    }
    for (auto const& part : bank.connectors) {
        std::string detail;
        tell(detail, part.rating);
        add_article(list, "receptacle and plug", detail, part.id, screws_of_a_receptacle, part.price);
        ++list.receptacle_holes;
    }
    for (auto const& part : bank.chargers) {
        std::string detail;
        tell(detail, part.voltage);
        tell(detail, part.current);
        if (part.outputs.value_or(1) > 1) detail += fmt::format(", {} outputs", *part.outputs);
        add_article(list, "charger", detail, part.id, 0, part.price);
    }
}

inline void add_batteries(CutList& list, Bank const& bank) {
    Mass mass{};
    bool all = !bank.batteries.empty();
    for (auto const& battery : bank.batteries) {
        std::string detail;
        tell(detail, battery.voltage);
        if (battery.chemistry) detail += fmt::format("{}{}", detail.empty() ? "" : " ", label_name(*battery.chemistry));
        tell(detail, battery.capacity);
        all = all && battery.mass.has_value();
        if (battery.mass) mass += *battery.mass;
        add_price(list, battery.price);
        auto const alike = std::find_if(list.batteries.begin(), list.batteries.end(), [&](BatteryTotal const& total) {
            return total.what == detail && total.each == battery.mass && total.price == battery.price &&
                   total.size == battery.size;
        });
        if (alike != list.batteries.end())
            ++alike->count;
        else
            list.batteries.push_back({detail, 1, battery.mass, battery.price, battery.size});
    }
    if (all) list.battery_mass = mass;
}

} // namespace internal::cutting

BANKWRIGHT_INLINE CutList cut_list(Bank const& bank) {
    CutList list;
    auto const kinds = internal::cutting::owners(bank);
    for (auto const* runs : {&bank.jumpers, &bank.cables})
        for (auto const& run : *runs) {
            auto const& conductor = run.conductor;
            if (!conductor.size || !conductor.length) {
                list.not_cut.push_back(conductor.id);
                continue;
            }
            Cut cut{conductor.id,
                    *conductor.size,
                    conductor.color.value_or(""),
                    *conductor.length,
                    *conductor.length * internal::cutting::slack,
                    run.from,
                    run.to};
            internal::cutting::add_wire(list, cut);
            for (auto const& end : {run.from, run.to})
                if (auto const kind = kinds.find(end); kind != kinds.end())
                    internal::cutting::add_end(list, cut.size, kind->second);
            list.cuts.push_back(std::move(cut));
        }
    std::stable_sort(list.wire.begin(), list.wire.end(),
                     [](WireTotal const& a, WireTotal const& b) { return b.size.area() < a.size.area(); });
    internal::cutting::add_devices(list, bank);
    internal::cutting::add_batteries(list, bank);
    return list;
}

} // namespace bankwright
