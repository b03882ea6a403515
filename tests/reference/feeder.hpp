// What does a source feed along a line with stations on it? Found from the far end, with nothing but a scalar: a
// voltage assumed there gives every current and voltage back to the source, and the source can hold it or cannot. Plain
// doubles in SI units; nothing of the library.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace feeder {

// A voltage behind a resistance, with a charger across its posts that holds `charger_volts` with what it has.
struct Source {
    double volts = 0.0;         // [V]
    double ohms = 0.0;          // [ohm]
    double charger_volts = 0.0; // [V]
    double charger_amps = 0.0;  // [A], 0 for none

    // [V] at its posts when `amps` are drawn there.
    double held(double amps) const {
        double const alone = volts - ohms * amps, helped = alone + ohms * charger_amps;
        return std::max(alone, std::min(charger_volts, helped));
    }
};

struct Station {
    double ohms = 0.0;                                   // [ohm] of the way from the station before, there and back
    double watts = 0.0;                                  // [W] drawn whatever the voltage
    double amps = 0.0;                                   // [A] likewise
    double siemens = 0.0;                                // [S]
    double coefficient = 0.0, winding = 0.0, duty = 0.0; // of a motor: c [A/V2], R [ohm]; E + c R E2 = duty V

    double draws(double volts, double share) const {
        double const driven = duty * volts, bend = coefficient * winding;
        double const back = bend > 0.0 ? (std::sqrt(1.0 + 4.0 * bend * driven) - 1.0) / (2.0 * bend) : driven;
        return share * watts / volts + amps + siemens * volts + duty * coefficient * back * back;
    }
};

struct Line {
    Source source;
    std::vector<Station> stations; // the first is next to the source

    // [V] at the source's posts beyond what it can hold, were the last station at `last`, with all `watts` times
    // `share`. `volts`, if given, takes the voltages at the stations.
    double lacks(double last, double share, std::vector<double>* volts = nullptr) const {
        double v = last, amps = 0.0;
        if (volts) volts->assign(stations.size(), 0.0);
        for (std::size_t k = stations.size(); k-- > 0;) {
            if (volts) (*volts)[k] = v;
            amps += stations[k].draws(v, share);
            v += stations[k].ohms * amps;
        }
        return v - source.held(amps);
    }

    // [V] at the last station without any constant power, which is where everything is rising: one answer, by
    // bisection. Not above 0 if constant currents turn the line round.
    double unpowered() const {
        double low = 0.0, high = std::max(source.volts, source.charger_volts);
        for (int i = 0; i < 200 && high - low > 1e-16 * high; ++i) {
            double const middle = 0.5 * (low + high);
            (lacks(middle, 0.0) > 0.0 ? high : low) = middle;
        }
        return low;
    }
};

// The highest voltage at the last station that the source can hold; `lacking` is what is lacking at best if there is
// none.
struct Best {
    bool held = false;
    double last = 0.0;    // [V]
    double lacking = 0.0; // [V]
};

// Constant power can be held at a low voltage or at none: `lacks` falls and rises again. It is looked at on a grid
// below the unpowered voltage (of three loads each halves it at the most, before it collapses), and each dip is
// followed down by golden section.
inline Best best(Line const& line, double unpowered, double share) {
    int const points = 80;
    double const ratio = std::pow(0.02, 1.0 / points), golden = 0.6180339887498949;
    auto const lacks = [&](double v) { return line.lacks(v, share); };
    double least = HUGE_VAL;
    double above = unpowered, at = unpowered * ratio; // three neighbors: above, at, below
    double h_above = lacks(above), h_at = lacks(at);
    auto const root = [&](double low, double high) { // lacks(low) <= 0 < lacks(high)
        for (int i = 0; i < 100 && high - low > 1e-15 * high; ++i) {
            double const middle = 0.5 * (low + high);
            (lacks(middle) <= 0.0 ? low : high) = middle;
        }
        return low;
    };
    if (h_above <= 0.0) return {true, unpowered, 0.0};
    for (int i = 0; i < points; ++i) {
        double const below = at * ratio, h_below = lacks(below);
        if (h_at <= 0.0) return {true, root(at, above), 0.0};
        if (h_at <= h_above && h_at <= h_below) {
            double low = below, high = above;
            double x = high - golden * (high - low), y = low + golden * (high - low), h_x = lacks(x), h_y = lacks(y);
            for (int j = 0; j < 60 && high - low > 1e-9 * high; ++j) {
                if (std::min(h_x, h_y) <= 0.0) break;
                if (h_x < h_y)
                    high = y, y = x, h_y = h_x, x = high - golden * (high - low), h_x = lacks(x);
                else
                    low = x, x = y, h_x = h_y, y = low + golden * (high - low), h_y = lacks(y);
            }
            // the higher of the two, if it is held: the root above it is the highest
            if (h_y <= 0.0) return {true, root(y, above), 0.0};
            if (h_x <= 0.0) return {true, root(x, y), 0.0};
            least = std::min({least, h_x, h_y});
        }
        least = std::min(least, h_at);
        above = at, h_above = h_at, at = below, h_at = h_below;
    }
    return {false, 0.0, least};
}

// The largest share of the constant powers that can be held, by bisection; 1 if all can.
inline double most_share(Line const& line) {
    double const unpowered = line.unpowered();
    if (best(line, unpowered, 1.0).held) return 1.0;
    double low = 0.0, high = 1.0;
    while (high - low > 1e-12 * high)
        (best(line, unpowered, 0.5 * (low + high)).held ? low : high) = 0.5 * (low + high);
    return low;
}

} // namespace feeder
