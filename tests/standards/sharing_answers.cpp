#include "standards/sharing_answers.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "support/jon_boat.hpp"

#include <stdexcept>

namespace standards {
namespace {

using namespace bankwright;
using support::plain_run;

double const ohms = 0.02, amperes = 100.0;

std::string id(int n) { return "B" + std::to_string(n); }

Bank batteries_and_load(int batteries) {
    Bank bank;
    for (int n = 1; n <= batteries; ++n)
        bank.batteries.push_back(support::plain_battery(id(n), 12.6, ohms));
    auto load = support::named<Load>("load");
    load.current = amperes * si::ampere;
    bank.loads = {load};
    return bank;
}

std::vector<double> shares(Bank const& bank) {
    auto const point = operating_point(bank);
    if (point.status != solver::Status::solved) throw std::runtime_error("a bank in parallel is not solved");
    std::vector<double> found;
    for (auto const& battery : bank.batteries)
        found.push_back(reading_of(point, battery.id).current.value() / amperes);
    return found;
}

} // namespace

std::vector<double> shares_of_row(Row const& row) {
    if (row.main_leads != "one end" && row.main_leads != "diagonal")
        throw std::out_of_range("no main leads " + row.main_leads);
    auto bank = batteries_and_load(row.batteries);
    for (int n = 1; n < row.batteries; ++n) {
        auto const link = "link" + std::to_string(n);
        bank.jumpers.push_back(plain_run(link + "p", id(n) + "+", id(n + 1) + "+", row.positive_link * ohms));
        bank.jumpers.push_back(plain_run(link + "n", id(n) + "-", id(n + 1) + "-", row.negative_link * ohms));
    }
    bank.cables = {plain_run("plus", id(row.batteries) + "+", "load+", 0.0),
                   plain_run("minus", "load-", id(row.main_leads == "diagonal" ? 1 : row.batteries) + "-", 0.0)};
    return shares(bank);
}

std::vector<double> shares_of_star(std::vector<double> const& leads) {
    auto bank = batteries_and_load(static_cast<int>(leads.size()));
    for (std::size_t i = 0; i < leads.size(); ++i) {
        auto const& name = bank.batteries[i].id;
        bank.cables.push_back(plain_run("plus" + name, name + "+", "load+", leads[i] * ohms));
        bank.cables.push_back(plain_run("minus" + name, "load-", name + "-", leads[i] * ohms));
    }
    return shares(bank);
}

double sharing_answer(Case const& c) {
    double const link = c.number("link");
    auto const found = shares_of_row({static_cast<int>(c.number("batteries")), link, link, c.word("main_leads")});
    double const share = found.at(static_cast<std::size_t>(c.number("battery")) - 1);
    return c.unit == "%" ? 100.0 * share : share * c.number("load");
}

} // namespace standards
