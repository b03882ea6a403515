// Memory that fails at any one place, while a file is read: the reader throws std::bad_alloc and nothing else, leaks
// nothing (AddressSanitizer sees to that), and reads the same file as ever the next time.
#include "bankwright/config/read.hpp"
#include "bankwright/config/read_duty.hpp"
#include "bankwright/config/read_readings.hpp"
#include "bankwright/rules/settings.hpp"

#include <cstddef>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <new>
#include <string>

#include <doctest/doctest.h>

namespace {

long allocations_left = -1; // until one fails; below 0: none does
bool has_failed = false;

void* allocate(std::size_t size) {
    if (allocations_left == 0) {
        has_failed = true;
        throw std::bad_alloc();
    }
    if (allocations_left > 0) --allocations_left;
    if (void* memory = std::malloc(size > 0 ? size : 1)) return memory;
    throw std::bad_alloc();
}

} // namespace

// For the whole test program; the forms for arrays come here too.
void* operator new(std::size_t size) { return allocate(size); }
void* operator new(std::size_t size, std::nothrow_t const&) noexcept { // what a sort would like, and can do without
    return allocations_left == 0 ? nullptr : std::malloc(size > 0 ? size : 1);
}
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }

namespace {

using namespace bankwright;

std::string text_of(std::string const& file) {
    std::ifstream in(BANKWRIGHT_SOURCE_DIR "/" + file);
    return {std::istreambuf_iterator<char>(in), {}};
}

// Runs `act` with the first allocation failing and all after it, then the second, until one run meets no failure. How
// many runs failed.
template <class Act>
long fail_everywhere(Act const& act) {
    for (long which = 0;; ++which) {
        bool thrown = false;
        has_failed = false;
        allocations_left = which;
        try {
            act();
        } catch (std::bad_alloc const&) {
            thrown = true;
        }
        allocations_left = -1;
        REQUIRE(thrown == has_failed);
        if (!thrown) return which;
    }
}

void reads_the_same_afterwards(std::string const& text) {
    auto const before = read(text);
    CHECK(fail_everywhere([&] { static_cast<void>(read(text)); }) > 10);
    auto const after = read(text);
    CHECK(after.bank == before.bank);
    CHECK(after.findings.size() == before.findings.size());
}

} // namespace

TEST_CASE("wherever memory fails in a bank file, the reader throws bad_alloc and reads it whole the next time") {
    reads_the_same_afterwards(text_of("data/examples/bow-36v-miswired.toml"));
    reads_the_same_afterwards(text_of("data/examples/houseboat-12v.toml"));
}

TEST_CASE("wherever memory fails in a file with mistakes in it, too") {
    reads_the_same_afterwards("bankwright = 1\n[batteries]\nA = { voltage = \"12\" }\nA = { volts = 3 }\n");
    reads_the_same_afterwards("bankwright = 1\nname = \"a text that is longer than what fits into a string itself\n");
    reads_the_same_afterwards(
        "[batteries]\nA = { capacty = \"100 parsec\", chemistry = \"lead\" }\n[motor]\nx = [1, 2\n");
}

TEST_CASE("wherever memory fails in readings, settings and a day's duty, too") {
    auto const bank = read(text_of("data/examples/bow-36v.toml")).bank;
    auto const readings = text_of("data/examples/readings/bow-36v-reversed.toml");
    CHECK(fail_everywhere([&] { static_cast<void>(read_readings(readings, bank)); }) > 20);
    auto const settings = text_of("tests/fuzz/corpus/settings/all");
    CHECK(fail_everywhere([&] { static_cast<void>(read_settings(settings)); }) > 20);
    auto const duty = text_of("tests/fuzz/corpus/duty/trip");
    CHECK(fail_everywhere([&] { static_cast<void>(read_duty(duty)); }) > 20);
}
