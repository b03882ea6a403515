#include "bankwright/solver/lanes.hpp"

#include <fstream>
#include <sstream>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright::solver;

TEST_CASE("an instruction set is used if the system says that this processor has it") {
    std::ifstream cpuinfo("/proc/cpuinfo");
    std::string line;
    while (std::getline(cpuinfo, line) && line.rfind("flags", 0) != 0) {
    }
    if (!cpuinfo) return; // no such list here: another system, or another processor
    bool avx2 = false, fma = false, avx512 = false;
    std::istringstream flags(line);
    for (std::string flag; flags >> flag;) {
        avx2 = avx2 || flag == "avx2";
        fma = fma || flag == "fma";
        avx512 = avx512 || flag == "avx512f";
    }
    avx512 = avx512 && avx2 && fma; // what its kernels use beside it
    CHECK(runs_here(InstructionSet::portable));
    CHECK(runs_here(InstructionSet::avx2) == (avx2 && fma));
    CHECK(runs_here(InstructionSet::avx512) == avx512);
    CHECK(widest_here() == (avx512        ? InstructionSet::avx512
                            : avx2 && fma ? InstructionSet::avx2
                                          : InstructionSet::portable));
}
