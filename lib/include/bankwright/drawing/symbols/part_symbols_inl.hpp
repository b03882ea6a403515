#pragma once

#include "bankwright/drawing/badges.hpp"
#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/symbols/part_symbols.hpp"
#include "bankwright/drawing/symbols/symbols.hpp"
#include "bankwright/drawing/text_fit.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::drawing {

namespace internal {

class PartPen {
public:
    PartPen(Pen& pen, PartPlace const& place, PartContext const& context)
        : pen_(pen), place_(place), box_(place.box), context_(context), mark_(context.marks.of(place.id)) {}

    void draw(Battery const& battery) {
        auto const middle = box_.center().x;
        symbols::cell(pen_, {middle, box_.y + 16.0}, place_.turned);
        for (int t = 0; t < 2; ++t) {
            auto const& terminal = place_.terminals[static_cast<std::size_t>(t)];
            post(terminal, t == 0);
            bool const left = terminal.pad.center().x < middle;
            pen_.text({left ? box_.x + 8.0 : box_.right() - 8.0, box_.y + 42.0},
                      fitted(context_.readings.volts_at(terminal.name), 58.0, 10.0),
                      {.size = 10.0, .anchor = left ? Anchor::start : Anchor::end});
        }
        auto const width = box_.width - 12.0;
        auto const say = [&](double y, std::string const& words, double size, bool bold) {
            pen_.text({middle, box_.y + y}, fitted(words, width, size, bold),
                      {.size = size, .bold = bold, .anchor = Anchor::middle});
        };
        say(63.0, place_.id, 15.0, true);
        say(78.0, nameplate(battery), 9.5, false);
        auto const charge = battery.charge ? print(*battery.charge) + " charged"
                            : battery.emf  ? with_signs(print(*battery.emf)) + " at rest"
                                           : std::string("taken as fully charged");
        say(91.0, charge, 9.5, false);
        if (auto const amperes = context_.readings.amperes(place_.id)) {
            auto const gives = std::abs(*amperes) < 1e-6 ? "" : *amperes > 0.0 ? "gives " : "takes ";
            say(104.0, context_.readings.volts_across(place_.id) + " across", 9.5, false);
            say(117.0, gives + printed_amperes(*amperes), 9.5, false);
        }
        if (mark_) draw_mark(pen_, {middle, box_.bottom() - 12.0}, *mark_, width);
    }

    void draw(ProtectiveDevice const& device) {
        heading(nameplate(device), device.closed.value_or(true));
        auto const [left, right] = ends();
        if (place_.kind == PartKind::fuse)
            symbols::fuse(pen_, left, right, device.closed.value_or(true));
        else
            symbols::breaker(pen_, left, right, device.closed.value_or(true));
        two_terminals("line", "load");
        finish();
    }
    void draw(Switch const& one) {
        heading(nameplate(one), one.closed.value_or(true));
        auto const [left, right] = ends();
        symbols::disconnector(pen_, left, right, one.closed.value_or(true));
        two_terminals("1", "2");
        finish();
    }
    void draw(Shunt const& shunt) {
        heading(nameplate(shunt), true);
        auto const [left, right] = ends();
        pen_.line({left, right}, {});
        symbols::resistor(pen_, {(left.x + right.x) / 2.0, (left.y + right.y) / 2.0});
        two_terminals("1", "2");
        finish();
    }
    void draw(Relay const& relay) { // drawn at rest, as a relay is
        heading(nameplate(relay), true);
        auto const [left, right] = ends();
        symbols::disconnector(pen_, left, right, relay.closed.value_or(false));
        two_terminals("1", "2");
        finish();
    }
    void draw(Selector const& selector) {
        heading(nameplate(selector), true);
        auto const at = selector.position.value_or(SelectorPosition::first);
        auto const& common = place_.terminals[2];
        for (std::size_t t = 0; t < 2; ++t) {
            bool const closed = t == 0 ? joins_first(at) : joins_second(at);
            auto const here = lead_at(place_.terminals[t]), there = lead_at(common);
            pen_.line({here, there}, {.dashes = closed ? "" : "2 4"});
            device_terminal(place_.terminals[t], t == 0 ? "1" : "2");
        }
        device_terminal(common, "common");
        finish();
    }
    void draw(Converter const& converter) {
        heading(nameplate(converter), true);
        for (std::size_t t = 0; t < 4; ++t)
            polar_terminal(place_.terminals[t], t % 2 == 0);
        auto const y = std::max(place_.terminals[1].pad.bottom(), place_.terminals[3].pad.bottom()) + 18.0;
        caption({box_.x + 8.0, y}, place_.turned ? "out" : "in", Anchor::start);
        caption({box_.right() - 8.0, y}, place_.turned ? "in" : "out", Anchor::end);
        finish();
    }
    void draw(Busbar const& busbar) {
        heading(nameplate(busbar), true);
        auto const& pad = place_.terminals.front().pad;
        pen_.box({pad.x + 1.0, pad.y - 4.0, pad.width - 2.0, pad.height + 8.0}, {ink::outline, 1.5, {}, "#d9b36c"},
                 3.0);
        for (auto const y : landed_heights(pad))
            pen_.circle({pad.center().x, y}, 3.5, {ink::outline, 1.0, {}, ink::case_fill});
        pen_.text({box_.center().x, pad.bottom() + 18.0},
                  fitted(context_.readings.volts_at(place_.id), box_.width - 6.0, 10.0), {.anchor = Anchor::middle});
        finish();
    }
    void draw(Connector const& connector) {
        bool const mated = connector.mated.value_or(true);
        heading(nameplate(connector) + (mated ? "" : ", apart"), true);
        for (std::size_t pole = 0; pole < 2; ++pole) {
            auto const& receptacle = place_.terminals[pole];
            auto const& plug = place_.terminals[pole + 2];
            auto const& left = place_.turned ? plug : receptacle;
            auto const& right = place_.turned ? receptacle : plug;
            symbols::socket_and_plug(pen_, lead_at(left), lead_at(right), place_.turned, mated);
            polar_terminal(left, pole == 0);
            polar_terminal(right, pole == 0);
        }
        auto const y = std::max(place_.terminals[1].pad.bottom(), place_.terminals[3].pad.bottom()) + 18.0;
        caption({box_.x + 8.0, y}, place_.turned ? "plug" : "receptacle", Anchor::start);
        caption({box_.right() - 8.0, y}, place_.turned ? "receptacle" : "plug", Anchor::end);
        finish();
    }
    void draw(Motor const& motor) {
        heading(nameplate(motor), true);
        auto const middle = load_symbol();
        symbols::motor(pen_, middle);
        draws();
        finish();
    }
    void draw(Load const& load) {
        heading(nameplate(load), true);
        auto const middle = load_symbol();
        symbols::resistor(pen_, middle);
        draws();
        finish();
    }
    void draw(Charger const& charger) {
        heading(nameplate(charger), true);
        auto const middle = load_symbol();
        symbols::rectifier(pen_, middle);
        for (std::size_t t = 2; t < place_.terminals.size(); ++t)
            polar_terminal(place_.terminals[t], t % 2 == 0);
        draws();
        finish();
    }
    void draw(Run const&) {}

private:
    // --- words ------------------------------------------------------------------------------------------------------
    void heading(std::string const& plate, bool closed) {
        auto const middle = box_.center().x;
        auto const width = box_.width - 8.0;
        pen_.text({middle, box_.y + 16.0}, fitted(place_.id, width, 12.0, true),
                  {.size = 12.0, .bold = true, .anchor = Anchor::middle});
        auto const words = plate + (closed ? "" : plate.empty() ? "open" : ", open");
        pen_.text({middle, box_.y + 29.0}, fitted(words, width, 9.5), {.size = 9.5, .anchor = Anchor::middle});
    }
    void caption(Point at, std::string_view words, Anchor anchor) {
        pen_.text(at, words, {.size = 9.0, .anchor = anchor, .fill = ink::faint});
    }
    void finish() {
        if (mark_) draw_mark(pen_, {box_.center().x, box_.bottom() - 10.0}, *mark_, box_.width - 8.0);
    }

    // --- terminals --------------------------------------------------------------------------------------------------
    std::vector<double> landed_heights(Box const& pad) const {
        std::vector<double> heights;
        for (auto const& wire : context_.drawing.wires)
            for (auto const& end : {wire.path.front(), wire.path.back()})
                if (pad.holds(end)) heights.push_back(end.y);
        return heights;
    }
    // As wide as the lugs on it.
    void post(TerminalPlace const& terminal, bool plus) {
        auto const middle = terminal.pad.center();
        double half = 10.0;
        for (auto const& wire : context_.drawing.wires)
            for (auto const& end : {wire.path.front(), wire.path.back()})
                if (terminal.pad.holds(end)) half = std::max(half, std::abs(end.x - middle.x) + 6.0);
        pen_.box({middle.x - half, middle.y - 10.0, 2.0 * half, 20.0},
                 {ink::outline, 1.2, {}, plus ? ink::positive : ink::negative}, 10.0);
        symbols::polarity(pen_, middle, plus, 5.5);
    }
    void polar_terminal(TerminalPlace const& terminal, bool plus) {
        auto const& pad = terminal.pad;
        pen_.box(pad, {ink::outline, 1.0, {}, plus ? ink::positive : ink::negative}, 8.0);
        symbols::polarity(pen_, {pad.center().x, pad.y + 8.0}, plus, 4.5);
        bool const left = pad.center().x < box_.center().x;
        auto const room = place_.kind == PartKind::connector || place_.kind == PartKind::converter ? 56.0 : 70.0;
        auto const beside = plus ? pad.y + 3.0 : pad.y + 21.0; // of the line that leads inwards
        pen_.text({left ? pad.right() + 3.0 : pad.x - 3.0, beside},
                  fitted(context_.readings.volts_at(terminal.name), room, 9.5),
                  {.size = 9.5, .anchor = left ? Anchor::start : Anchor::end});
    }

    // --- devices in a line -------------------------------------------------------------------------------------------
    TerminalPlace const& terminal_on(bool left) const {
        return place_.terminals[static_cast<std::size_t>(left == place_.turned)];
    }
    // Where the part's own lead meets a terminal: at its first lug.
    static Point lead_at(TerminalPlace const& terminal) {
        return {terminal.pad.center().x, terminal.pad.y + measures::terminal_half};
    }
    std::pair<Point, Point> ends() const { return {lead_at(terminal_on(true)), lead_at(terminal_on(false))}; }
    void two_terminals(std::string_view first, std::string_view second) {
        for (bool const left : {true, false})
            device_terminal(terminal_on(left), left == place_.turned ? second : first);
    }
    void device_terminal(TerminalPlace const& terminal, std::string_view words) {
        auto const& pad = terminal.pad;
        bool const left = pad.center().x < box_.center().x;
        pen_.box({pad.x + 2.0, pad.y + 2.0, pad.width - 4.0, pad.height - 4.0}, {ink::outline, 1.5, {}, ink::paper},
                 6.0);
        auto const x = left ? pad.right() + 1.0 : pad.x - 1.0;
        auto const anchor = left ? Anchor::start : Anchor::end;
        pen_.text({x, pad.y + 27.0}, fitted(context_.readings.volts_at(terminal.name), 51.0, 9.5),
                  {.size = 9.5, .anchor = anchor});
        caption({x, pad.y + 39.0}, words, anchor);
    }
    // --- what draws or gives ----------------------------------------------------------------------------------------
    // Leads from the first two terminals to where the symbol stands; returns its middle.
    Point load_symbol() {
        auto const& plus = place_.terminals[0].pad;
        auto const& minus = place_.terminals[1].pad;
        Point const middle{box_.right() - 28.0, (plus.y + minus.y) / 2.0 + 8.0};
        for (auto const* pad : {&plus, &minus})
            pen_.line({{pad->center().x, pad->y + 8.0}, {middle.x, pad->y + 8.0}, middle}, {});
        polar_terminal(place_.terminals[0], true);
        polar_terminal(place_.terminals[1], false);
        return middle;
    }
    void draws() {
        auto const amperes = context_.readings.amperes(place_.id);
        if (!amperes) return;
        // A charger with several outputs has no voltage of its own.
        auto const volts = place_.terminals.size() > 2 ? "" : context_.readings.volts_across(place_.id);
        double lowest = 0.0;
        for (auto const& terminal : place_.terminals)
            lowest = std::max(lowest, terminal.pad.bottom());
        pen_.text({box_.center().x, lowest + 20.0},
                  fitted(printed_amperes(*amperes) + (volts.empty() ? "" : " at " + volts), box_.width - 8.0, 9.5),
                  {.size = 9.5, .anchor = Anchor::middle});
    }

    Pen& pen_;
    PartPlace const& place_;
    Box const& box_;
    PartContext const& context_;
    Mark const* mark_;
};

} // namespace internal

BANKWRIGHT_INLINE void draw_part_ground(Pen& pen, PartPlace const& place) {
    if (place.in_fault_loop)
        pen.box({place.box.x - 5.0, place.box.y - 5.0, place.box.width + 10.0, place.box.height + 10.0},
                {ink::fault, 5.0, "10 5"}, 11.0);
    bool const battery = place.kind == PartKind::battery;
    if (place.kind == PartKind::busbar) return; // nothing stands round a bar
    pen.box(place.box, {ink::outline, battery ? 2.0 : 1.0, {}, battery ? ink::case_fill : ink::paper},
            battery ? 9.0 : 5.0);
    if (battery)
        pen.box({place.box.x + 4.0, place.box.y + 4.0, place.box.width - 8.0, place.box.height - 8.0}, {"#c9c9c2", 1.0},
                6.0);
}

BANKWRIGHT_INLINE void draw_part(Pen& pen, PartPlace const& place, PartContext const& context) {
    internal::PartPen drawer(pen, place, context);
    for_each_part(context.bank, [&, seen = std::vector<std::size_t>(part_kind_names.size(), 0)](
                                    PartKind kind, auto const& part) mutable {
        auto const index = seen[static_cast<std::size_t>(kind)]++;
        if (kind == place.kind && index == place.index) drawer.draw(part);
    });
}

} // namespace bankwright::drawing
