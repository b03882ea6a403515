// What is wrong with a bank that does not read as described? The inverse of the operating point: every fault
// that the parts can have is put into the drawing and solved, and ranked by how likely it makes the readings.
//
// Bayes' theorem over the faults. A reading of a faulty wiring is normal around what the solver gives, with the meter's
// error and, to first order, the spread of every battery's voltage and every resistance (expected_readings.hpp), which
// one reading shares with the next. Values that a fault leaves open (how much a joint resists) are summed over.
#pragma once

#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/analyses/trace/taken_reading.hpp"
#include "bankwright/analyses/trace_options.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/reading_sheet.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/units/quantities.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct Diagnosis {
    std::vector<Fault> faults;             // none: as described
    double probability = 0.0;              // of it and of what is alike
    double misfit = 0.0;                   // root mean square of what the readings are off by [standard deviations]
    std::vector<std::vector<Fault>> alike; // what no reading tells from it, the likelier first
};

// Red and black, or the part around which the clamp goes.
struct NextReading {
    struct Expected {
        std::vector<Fault> faults;
        Voltage reads{};
        Voltage spread{}; // one standard deviation, the meter's error included
        Current flows{};  // of a current, instead
        Current flows_spread{};
    };
    std::string red;
    std::string black;
    std::string part;
    std::vector<std::string> places; // where it is taken: one, or that of red and that of black, with a longer lead
    Moment moment;
    std::vector<Expected> expected; // the likelier first
    double bits = 0.0;              // information that it is expected to give
    bool again = false;             // it was taken, and is doubted
};

struct TraceResult {
    std::vector<Diagnosis> diagnoses;      // the likeliest first; together 1 less what was left out below 0.1 %
    std::optional<NextReading> next;       // none where one is certain or nothing would tell more
    bool explained = true;                 // the likeliest is within TraceOptions::explained
    std::vector<DoubtfulReading> doubtful; // in the order of the readings; but for their errors left out
    bool current_at_rest = false; // one that is not unlikely has a battery give much current with every load off
};

// Why a bank cannot be traced: it has no battery, or so many parts that it would take minutes. None if it can.
std::optional<std::string> unfit_for_trace(Bank const& bank);

// Keeps what it has solved: trace again with one reading more, and it costs little; the first call prepares for that.
// What it holds does not grow with the calls. Throws std::invalid_argument where
// build() does, for a bank that is unfit, for a reading that names no terminal or part of it, and for a reading, moment
// or option out of its range (network/option_limits.hpp).
class FaultTracer {
public:
    FaultTracer(Bank const& bank, TraceOptions const& options = {});
    ~FaultTracer();
    FaultTracer(FaultTracer const&) = delete;
    FaultTracer& operator=(FaultTracer const&) = delete;
    TraceResult trace(std::vector<TakenReading> const& readings);

private:
    friend TraceResult trace(Bank const& bank, std::vector<TakenReading> const& readings, TraceOptions const& options);
    static TraceResult once(Bank const& bank, std::vector<TakenReading> const& readings, TraceOptions const& options);

    class Search;
    std::unique_ptr<Search> search_;
};

// The instruments of a sheet, and what it says of the time before.
TraceOptions trace_options(ReadingSheet const& sheet);

// A sheet's readings at their moments, in its order: voltages, then currents.
std::vector<TakenReading> readings_of(ReadingSheet const& sheet);

TraceResult trace(Bank const& bank, std::vector<TakenReading> const& readings, TraceOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace_inl.hpp"
#endif
