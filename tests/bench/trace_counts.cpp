// What a trace of three strings of four costs, for an instruction counter: trace_counts READINGS FURTHER makes a
// tracer, traces the first READINGS at once and FURTHER more one by one. trace_counts held prints the bytes that a
// tracer holds after a few visits to a boat, and after many.
#include "bankwright/analyses/trace.hpp"
#include "miswires/good_banks.hpp"
#include "traces/true_faults.hpp"

#include <cstdio>
#include <cstdlib>
#include <new>
#include <string>
#include <utility>
#include <vector>

#include <malloc.h>

using namespace bankwright;

namespace {

std::size_t held = 0; // bytes

TakenReading volts(char const* red, char const* black, double reads, bool is_loaded = false) {
    TakenReading reading;
    reading.what = VoltsRead{red, black, reads * si::volt};
    if (is_loaded) reading.moment = {};
    return reading;
}

// `main` resists, 50 mohm: found step by step, as a rigger would read.
std::vector<TakenReading> visit() {
    return {volts("troll+", "troll-", 38.4),        volts("troll+", "troll-", 35.5, true),
            volts("A3+", "A1-", 38.1, true),        volts("CB.load", "A1-", 38.05, true),
            volts("bow.plug+", "bow-", 35.6, true), volts("CB.line", "CB.load", 0.02, true)};
}

} // namespace

void* operator new(std::size_t bytes) {
    void* const memory = std::malloc(bytes);
    if (!memory) throw std::bad_alloc();
    held += malloc_usable_size(memory);
    return memory;
}
void operator delete(void* memory) noexcept {
    held -= malloc_usable_size(memory);
    std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept { operator delete(memory); }

int main(int count, char** words) {
    auto const bank = traces::on_a_boat(miswires::BankBuilder({3, 4, miswires::MainLeads::diagonal}).build());
    auto const all = visit();
    if (count == 2 && std::string(words[1]) == "held") {
        FaultTracer tracer(bank);
        for (int boat = 0; boat < 60; ++boat) {
            std::vector<TakenReading> readings;
            for (auto reading : all) {
                if (reading.moment.loads != LoadsAre::at_rest) { // another current each time
                    reading.moment.loads = LoadsAre::constant_current;
                    reading.moment.current = (20.0 + 0.1 * boat) * si::ampere;
                }
                readings.push_back(std::move(reading));
                tracer.trace(readings);
            }
            if (boat == 9 || boat == 59) std::printf("%zu\n", held);
        }
        return 0;
    }
    if (count != 3) return 2;
    auto const first = static_cast<std::size_t>(std::atoi(words[1])),
               further = static_cast<std::size_t>(std::atoi(words[2]));
    if (first + further > all.size()) return 2;
    std::vector<TakenReading> readings(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(first));
    if (first == 0) return 0;
    FaultTracer tracer(bank);
    tracer.trace(readings);
    for (std::size_t n = first; n < first + further; ++n) {
        readings.push_back(all[n]);
        tracer.trace(readings);
    }
}
