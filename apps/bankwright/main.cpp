// bankwright, the command: arguments in, one request run, its outcome written.
#include "command_line.hpp"
#include "terminal.hpp"

#include <exception>

int main(int argc, char** argv) {
    try {
        auto const colour = standard_output_takes_colour();
        auto const outcome =
            std::visit([&](auto const& request) { return run(request, colour); }, read_command_line(argc, argv));
        return static_cast<int>(deliver(outcome));
    } catch (std::exception const& fault) {
        return static_cast<int>(deliver(own_fault(fault.what())));
    }
}
