// Banks at random: every kind of part, every key now and then, any value that a file may hold. Not sensible
// electrically.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/config/fields.hpp"
#include "bankwright/config/keys.hpp"

#include <cmath>
#include <random>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

namespace bankwright::test {

class AnyBank {
public:
    explicit AnyBank(unsigned seed) : random_(seed) {}

    Bank make() {
        Bank bank;
        if (chance(0.8)) bank.name = text();
        for_each_field(bank.system, Filler{*this, system_section, 0.7});
        add(bank.batteries, PartKind::battery, 6);
        add(bank.breakers, PartKind::breaker, 2);
        add(bank.fuses, PartKind::fuse, 2);
        add(bank.switches, PartKind::switch_, 2);
        add(bank.shunts, PartKind::shunt, 2);
        add(bank.relays, PartKind::relay, 2);
        add(bank.selectors, PartKind::selector, 2);
        add(bank.busbars, PartKind::busbar, 2);
        add(bank.connectors, PartKind::connector, 2);
        add(bank.motors, PartKind::motor, 2);
        add(bank.loads, PartKind::load, 2);
        add(bank.chargers, PartKind::charger, 2);
        add(bank.converters, PartKind::converter, 2);
        seat(bank.breakers, bank);
        seat(bank.fuses, bank);
        auto const terminals = terminals_of(bank);
        if (terminals.size() >= 2) {
            land(bank.jumpers, PartKind::jumper, terminals);
            land(bank.cables, PartKind::cable, terminals);
        }
        for (int i = below(3); i > 0; --i)
            bank.accepted.push_back(
                {text(), ids_.empty() || chance(0.5) ? "" : ids_[pick(ids_.size())], "because " + text()});
        for_each_field(bank.system, Doubter{*this, bank, {}});
        for_each_part(bank, [&](PartKind, auto const& part) {
            for_each_field(part, Doubter{*this, bank, id_of(part)});
        });
        return bank;
    }

private:
    // Sets each member with the given chance, within the range of its key.
    struct Filler {
        AnyBank& any;
        SectionSpec const& section;
        double chance;

        template <class T>
        void operator()(std::string_view name, std::optional<T>& member) {
            if (find_key(section, name)->kind == KeyKind::terminal) return; // a post of a battery, not any text
            if (any.chance(chance)) (*this)(name, member.emplace());
        }
        void operator()(std::string_view, TwoWords<std::optional<bool>> member) {
            if (any.chance(chance)) member.is_first = any.chance(0.5);
        }
        template <class T>
        void operator()(std::string_view name, T& member) {
            auto const& key = *find_key(section, name);
            if constexpr (std::is_same_v<T, bool>)
                member = any.chance(0.5);
            else if constexpr (std::is_same_v<T, std::string>)
                member = any.text();
            else if constexpr (std::is_same_v<T, Date>)
                member = {1990 + any.below(60), 1 + any.below(12), 1 + any.below(28)};
            else if constexpr (std::is_enum_v<T>)
                member = static_cast<T>(any.pick(key.choices.size()));
            else if constexpr (std::is_same_v<T, int>)
                member = static_cast<int>(key.range.least) +
                         any.below(static_cast<int>(std::min(key.range.most, 40.0) - key.range.least) + 1);
            else if constexpr (std::is_same_v<T, WireSize>)
                member = any.chance(0.2)   ? WireSize(Sae{2 * any.below(9) + 2})
                         : any.chance(0.5) ? WireSize(Awg{any.below(34) - 3})
                                           : WireSize(any.number(key.range) * si::square_meter);
            else if constexpr (std::is_same_v<T, std::vector<WireSize>>)
                for (int i = 0; i <= any.below(4); ++i)
                    member.push_back(any.chance(0.5) ? WireSize(Awg{any.below(34) - 3})
                                                     : WireSize(any.number(keys::copper_area) * si::square_meter));
            else if constexpr (std::is_same_v<T, std::vector<TripLimit>>)
                for (int i = 0; i <= any.below(4); ++i) // rising multiples, falling times
                    member.push_back({1.0 + i + any.below(100) / 100.0, any.below(9) * 0.1 * si::second,
                                      (1000.0 - 100.0 * i + any.below(50)) * si::second});
            else if constexpr (std::is_same_v<T, Price>)
                member = {any.below(1'000'000), any.chance(0.5) ? "USD" : "EUR"};
            else if constexpr (std::is_same_v<T, Dimensions>)
                member = {any.side(), any.side(), any.side()};
            else if constexpr (std::is_same_v<T, Temperature>)
                member = kelvin_point(any.number(key.range));
            else
                member = make(static_cast<T*>(nullptr), any.number(key.range));
        }
        template <class Meaning>
        static Fraction<Meaning> make(Fraction<Meaning>*, double value) {
            return Fraction<Meaning>::of(value);
        }
        template <class Q>
        static Q make(Q*, double value) {
            return Q::from_value(value);
        }
    };

    // Says of some values how far they may be off.
    struct Doubter {
        AnyBank& any;
        Bank& bank;
        std::string part;

        template <class T>
        void operator()(std::string_view name, std::optional<T> const& member) {
            if (member) (*this)(name, *member);
        }
        template <class T>
        void operator()(std::string_view name, T const&) {
            if (takes_tolerance(name) && any.chance(0.2))
                bank.tolerances.push_back({part, std::string(name), Spread::of(any.number({0.0, 0.9, true}))});
        }
    };

    template <class Part>
    void add(std::vector<Part>& parts, PartKind kind, int most) {
        for (int i = below(most + 1); i > 0; --i) {
            Part part;
            part.id = id();
            for_each_field(part, Filler{*this, section_spec(kind), 0.4});
            complete(part);
            parts.push_back(std::move(part));
        }
    }

    // A device sits on a post of a battery, or on a busbar.
    void seat(std::vector<ProtectiveDevice>& devices, Bank const& bank) {
        std::vector<std::string> posts;
        for (auto const& battery : bank.batteries)
            posts.insert(posts.end(), {battery.id + "+", battery.id + "-"});
        for (auto const& busbar : bank.busbars)
            posts.push_back(busbar.id);
        for (auto& device : devices)
            if (posts.empty())
                device.on.reset();
            else if (device.on)
                device.on = posts[pick(posts.size())];
    }

    void land(std::vector<Run>& runs, PartKind kind, std::vector<std::string> const& terminals) {
        for (int i = below(8); i > 0; --i) {
            Run run;
            run.conductor.id = id();
            for_each_field(run, Filler{*this, section_spec(kind), 0.4});
            auto const from = pick(terminals.size());
            run.from = terminals[from];
            run.to = terminals[(from + 1 + pick(terminals.size() - 1)) % terminals.size()];
            if (!run.conductor.resistance && !(run.conductor.size && run.conductor.length))
                run.conductor.resistance = number(keys::ohms_or_none) * si::ohm;
            runs.push_back(std::move(run));
        }
    }

    // What a part cannot do without, and what must not contradict itself.
    void complete(Battery& battery) {
        if (!battery.voltage) battery.voltage = 12.0 * si::volt;
        if (!battery.chemistry) battery.chemistry = Chemistry::gel;
        if (!battery.capacity) battery.capacity = number(keys::coulombs) * si::coulomb;
        if (battery.cells && battery.dead_cells && *battery.dead_cells > *battery.cells)
            battery.dead_cells = battery.cells;
        if (!battery.weak_cells || !battery.weak_capacity ||
            (battery.cells && *battery.weak_cells + battery.dead_cells.value_or(0) > *battery.cells)) {
            battery.weak_cells.reset();
            battery.weak_capacity.reset();
        }
        if (battery.low_cutoff && battery.high_cutoff && !(*battery.low_cutoff < *battery.high_cutoff))
            battery.low_cutoff.reset();
    }
    void complete(ProtectiveDevice& device) {
        if (!device.rating) device.rating = number(keys::amperes) * si::ampere;
    }
    void complete(Motor& motor) {
        if (!motor.voltage) motor.voltage = 12.0 * si::volt;
        if (!motor.current) motor.current = 30.0 * si::ampere;
        if (motor.winding)
            motor.winding = number({0.0, std::min(1e6, 0.9 * (*motor.voltage / *motor.current).value())}) * si::ohm;
    }
    void complete(Load& load) {
        auto const watts = number(keys::watts_or_none) * si::watt;
        if (load.current)
            load.power.reset(), load.resistance.reset();
        else if (load.power)
            load.resistance.reset();
        else if (!load.resistance)
            load.power = watts;
        if (load.min_voltage && load.max_voltage && !(*load.min_voltage < *load.max_voltage)) load.min_voltage.reset();
    }
    void complete(Shunt& shunt) {
        if (!shunt.resistance && !(shunt.rating && shunt.drop)) shunt.resistance = number(keys::ohms_or_none) * si::ohm;
    }
    void complete(Relay& relay) {
        if (relay.closes_above && relay.opens_below && !(*relay.opens_below < *relay.closes_above))
            relay.opens_below.reset();
    }
    void complete(Converter& converter) {
        if (!converter.voltage) converter.voltage = number(keys::volts) * si::volt;
        if (!converter.power) converter.power = number(keys::watts) * si::watt;
    }
    template <class Part>
    void complete(Part&) {}

    bool chance(double probability) { return std::uniform_real_distribution<double>(0.0, 1.0)(random_) < probability; }
    int below(int most) { return std::uniform_int_distribution<int>(0, most - 1)(random_); }
    std::size_t pick(std::size_t size) { return static_cast<std::size_t>(below(static_cast<int>(size))); }

    Length side() { return (chance(0.7) ? 1e-3 * (1 + below(600)) : number({0.0, 10.0, true})) * si::meter; }

    // Now round, now with all its bits; over many decades; at times an end of the range.
    double number(Range const& range) {
        double const least = range.least > 0.0 ? range.least : range.most * 1e-12;
        double value = least * std::pow(range.most / least, std::uniform_real_distribution<double>(0.0, 1.0)(random_));
        if (chance(0.3)) value = std::round(value * 1000.0) / 1000.0;
        if (chance(0.05)) value = range.most;
        if (chance(0.05)) value = range.least;
        return range.holds(value) ? value : range.most;
    }

    std::string id() {
        constexpr std::string_view letters = "ABCxyz019_";
        std::string made(1, letters[pick(letters.size())]);
        if (chance(0.3)) made += '-';
        made += std::to_string(ids_.size());
        if (chance(0.3)) made += "-" + std::string(1, letters[pick(letters.size())]);
        ids_.push_back(made);
        return made;
    }

    std::string text() {
        constexpr std::array<std::string_view, 14> pieces{"red", "\"", "\\", "\n", "\t",   "#",    "=",
                                                          "é",   "Ω",  "⚓",  "'",  "\x7F", "\x01", " "};
        std::string made;
        for (int i = below(6); i > 0; --i)
            made += pieces[pick(pieces.size())];
        return made;
    }

    std::mt19937 random_;
    std::vector<std::string> ids_;
};

} // namespace bankwright::test
