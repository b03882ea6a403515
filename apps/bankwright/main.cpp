// bankwright, the command: arguments in, one command run, its outcome written.
#include "command_line.hpp"
#include "terminal.hpp"

#include <exception>

int main(int argc, char** argv) {
    try {
        auto const run = read_command_line(argc, argv);
        return static_cast<int>(deliver(run(standard_output_takes_color())));
    } catch (std::exception const& fault) {
        return static_cast<int>(deliver(own_fault(fault.what())));
    }
}
