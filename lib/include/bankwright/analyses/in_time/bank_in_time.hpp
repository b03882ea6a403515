// A bank at one moment of a run or a charge, as the integration sees it: charges in, currents, voltages and powers out.
#pragma once

#include "bankwright/analyses/in_time/charge_rates.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/open_circuit_curve.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/curve_lanes.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/port_map.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/topology.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// [W] Where the power is at one moment: given = battery_heat + wiring_heat + used - charged.
struct PowerSplit {
    double given = 0.0;        // by the cells' electromotive forces; negative while they charge
    double battery_heat = 0.0; // in the batteries' resistances
    double wiring_heat = 0.0;  // in conductors, joints and contacts
    double used = 0.0;         // by motors and loads, and lost in converters
    double charged = 0.0;      // by the chargers
};

class BankInTime {
public:
    // `charging`: a battery that takes current does so behind what it accepts at a charger's voltage; one that gives
    // has its own resistance.
    BankInTime(Bank const& bank, Moment const& moment, bool charging = false);

    // From here on this happens; who has dropped out stays out.
    void change(Moment const& moment);
    Moment const& moment() const { return moment_; }

    // What flows at these states of charge and lags of what is at hand (devices/battery_recovery.hpp) [1], by battery.
    // False: there is no operating point.
    bool solve(double const* charge, double const* lag);

    // Of the moment last solved.
    double charge_solved(std::size_t battery) const { return charge_[battery]; }                  // [1]
    double at_hand(std::size_t battery) const { return charge_[battery] - lag_.data()[battery]; } // [1] the level there
    // [A] positive when it discharges; 0 once it has dropped out
    double amperes(std::size_t battery) const { return amperes_.data()[battery]; }
    double volts(std::size_t battery) const; // [V] across its posts
    // [1/s] by battery, of its state of charge, negative when it discharges, and of the lag
    void rates(double* charge_rates, double* lag_rates);
    ChargeRates::Slopes rate_slopes(std::size_t battery) const {
        return rates_at_.slopes_at(battery, amperes(battery), whole_.data()[battery]);
    }
    double load_volts(std::size_t load) const; // [V] by load_ids()
    bool draws() const;                        // any motor or load carries current
    PowerSplit powers() const;

    std::vector<std::string> const& load_ids() const { return load_ids_; } // motors and loads
    struct Output {
        std::string name;     // "ch.1"
        double volts = 0.0;   // [V] at its terminals
        double amperes = 0.0; // [A] that it gives
        bool limited = false; // it gives all it can, and its voltage is what the bank makes of that
    };
    std::vector<Output> outputs() const; // of every charger that gives
    std::size_t output_count() const { return output_places_.size(); }

    void drop_out(std::size_t battery); // its protective disconnect opens
    bool has_dropped_out(std::size_t battery) const { return branch_[battery] < 0; }

private:
    void build_network();
    void start_over();
    bool renew_resistances(); // false: one is another than before
    bool turn(bool one_by_one);
    solver::Status solve_once();
    void make_map();
    solver::Status solve_by_map();
    solver::Status solve_afresh();
    void take_out(std::size_t battery);
    Element load_element(int load) const; // of a load of the circuit
    double watts(Element const& element) const;
    double branch_amps(int branch) const { return answer_.data()[network_.circuit.nodes + branch]; }
    double node_volts(int node) const { return answer_.data()[node]; }

    Bank const& bank_;
    Moment moment_;
    bool charging_;
    Network network_;
    solver::Topology topology_;
    std::optional<solver::PortMap> map_; // of the resistances as they are, once they have stayed so
    std::vector<char> gives_;            // by battery, of one that is charged: it discharges all the same
    bool stay_ = false;                  // all resistances are stated, and do so
    int steady_ = 0;                     // solves since a resistance changed
    solver::LaneRows answer_{0};         // [V] by node, then [A] by branch, of the moment last solved
    std::vector<double> load_amps_;      // [A] likewise
    std::vector<double> charge_;         // [1] last solved, as asked; whole_ is within 0..1
    std::vector<OpenCircuitCurve> curves_;
    std::vector<std::size_t> curve_of_; // by battery
    solver::CurveLanes<4> curve_lanes_;
    ChargeRates rates_at_;
    solver::LaneRows lag_, whole_, shown_, emfs_, amperes_; // [1] three times, [V], [A] by battery
    std::vector<double> least_;                             // [1] that can be at hand
    std::vector<double> sources_;                           // [V] of the batteries that have not dropped out
    std::vector<int> branch_;                               // by battery, in the circuit; -1 once it has dropped out
    std::vector<int> wiring_;                               // the circuit's other branches
    std::vector<std::string> load_ids_;
    std::vector<Element> load_elements_;
    struct OutputPlace {
        std::string name;
        Element element;
    };
    std::vector<OutputPlace> output_places_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/in_time/bank_in_time_inl.hpp"
#endif
