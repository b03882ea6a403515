#include "moment_options.hpp"

#include "common_options.hpp"

#include <string>

using namespace bankwright;

void add_current_and_throttle(std::vector<Option>& options, Moment& moment) {
    auto take_current = quantity<Current>("--current", moment.current, load_current_problem);
    options.push_back({.names = "--current",
                       .kind = option::Typed{[&moment, take = take_current.read](std::string const& typed) {
                           moment.loads = LoadsAre::constant_current;
                           return take(typed);
                       }},
                       .help = "Every motor (or the one load) draws this, such as \"40 A\"",
                       .stands_for = "CURRENT"});
    options.push_back({.names = "--throttle",
                       .kind = quantity<Throttle>("--throttle", moment.throttle, throttle_problem),
                       .help = "Of every motor, such as \"60 %\"",
                       .stands_for = "SHARE",
                       .excludes = {"--current"}});
}

void add_moment(std::vector<Option>& options, Moment& moment) {
    add_current_and_throttle(options, moment);
    options.push_back({.names = "--rest",
                       .kind = option::Flag{[&moment] { moment.loads = LoadsAre::at_rest; }},
                       .help = "Every motor and load off",
                       .excludes = {"--current", "--throttle"}});
}
