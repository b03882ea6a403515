#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/sizing/strings.hpp"
#include "bankwright/units/literals.hpp"
#include "bankwright/wiring/arrangement.hpp"
#include "bankwright/wiring/wiring_graph.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <cstddef>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::stringing {

struct Strings {
    std::vector<std::vector<std::string>> batteries; // ids, from the negative end
};

inline std::optional<Strings> find_strings(Bank const& bank) {
    auto const graph = wiring_graph(bank);
    auto const verdict = judge(graph, graph.edges);
    auto const found = arrangement(graph, graph.edges, verdict);
    if (!verdict.right() || found.form != ArrangementForm::strings) return std::nullopt;
    Strings strings;
    for (auto const& string : found.strings) {
        strings.batteries.emplace_back();
        for (auto const edge : string)
            strings.batteries.back().push_back(graph.id(graph.edges[static_cast<std::size_t>(edge)]));
    }
    return strings;
}

template <class Act>
void for_each_run(Bank& bank, Act&& act) {
    for (auto* runs : {&bank.jumpers, &bank.cables})
        for (auto& run : *runs)
            act(run);
}

// The terminals of a string's batteries, and its two ends among them.
struct Posts {
    std::set<std::string> all;
    std::string negative;
    std::string positive;
};

inline Posts posts_of(std::vector<std::string> const& string) {
    Posts posts;
    for (auto const& id : string)
        posts.all.insert({id + "+", id + "-"});
    posts.negative = string.front() + "-";
    posts.positive = string.back() + "+";
    return posts;
}

// Every post of a battery that conductors alone, from post to post, join to the one given.
inline std::set<std::string> joined_to(Bank& bank, std::string const& post) {
    std::set<std::string> posts;
    for (auto const& battery : bank.batteries)
        posts.insert({battery.id + "+", battery.id + "-"});
    std::set<std::string> joined{post};
    for (std::size_t before = 0; before != joined.size();) {
        before = joined.size();
        for_each_run(bank, [&](Run const& run) {
            if (posts.count(run.from) == 0 || posts.count(run.to) == 0) return;
            if (joined.count(run.from) > 0) joined.insert(run.to);
            if (joined.count(run.to) > 0) joined.insert(run.from);
        });
    }
    return joined;
}

// A fuse of its own, or a busbar, between a string and the others says that this bank was built otherwise.
inline bool joined_by_conductors_alone(Bank bank, Strings const& strings) {
    auto const first = posts_of(strings.batteries.front());
    auto const negative = joined_to(bank, first.negative);
    auto const positive = joined_to(bank, first.positive);
    return std::all_of(strings.batteries.begin(), strings.batteries.end(), [&](auto const& string) {
        auto const posts = posts_of(string);
        return negative.count(posts.negative) > 0 && positive.count(posts.positive) > 0;
    });
}

// The bank with its first string alone: what was landed on an end of another is landed on the first one's.
inline std::optional<Bank> one_string(Bank bank, Strings const& strings) {
    if (!joined_by_conductors_alone(bank, strings)) return std::nullopt;
    auto const first = posts_of(strings.batteries.front());
    std::set<std::string> gone;
    for (std::size_t s = 1; s < strings.batteries.size(); ++s) {
        auto const posts = posts_of(strings.batteries[s]);
        gone.insert(posts.all.begin(), posts.all.end());
        for_each_run(bank, [&](Run& run) {
            for (auto* end : {&run.from, &run.to}) {
                if (*end == posts.negative) *end = first.negative;
                if (*end == posts.positive) *end = first.positive;
            }
        });
    }
    auto const idle = [&](Run const& run) {
        return run.from == run.to || gone.count(run.from) > 0 || gone.count(run.to) > 0;
    };
    for (auto* runs : {&bank.jumpers, &bank.cables})
        runs->erase(std::remove_if(runs->begin(), runs->end(), idle), runs->end());
    auto const other = [&](Battery const& battery) { return gone.count(battery.id + "+") > 0; };
    bank.batteries.erase(std::remove_if(bank.batteries.begin(), bank.batteries.end(), other), bank.batteries.end());

    // Within the string nothing but conductors from post to post, each between neighbors.
    auto const found = find_strings(bank);
    if (!found || found->batteries.size() != 1 || found->batteries.front() != strings.batteries.front())
        return std::nullopt;
    std::size_t inner = 0;
    for_each_run(bank, [&](Run const& run) { inner += first.all.count(run.from) > 0 && first.all.count(run.to) > 0; });
    if (inner + 1 != strings.batteries.front().size()) return std::nullopt;
    return bank;
}

class Names {
public:
    explicit Names(Bank const& bank) {
        for_each_part(bank, [&](PartKind, auto const& part) { taken_.insert(id_of(part)); });
    }
    std::string fresh(std::string const& wanted) {
        auto name = wanted;
        for (int n = 2; !taken_.insert(name).second; ++n)
            name = fmt::format("{}-{}", wanted, n);
        return name;
    }

private:
    std::set<std::string> taken_;
};

// A link as the jumpers are, or where there is none as the conductor at the string's positive end is.
inline Run link_like(Bank const& bank, Posts const& posts) {
    using namespace literals;
    constexpr auto beside = 12_in; // from post to post of neighboring batteries [common practice, no source]
    Run link;
    for (auto const* runs : {&bank.jumpers, &bank.cables})
        for (auto const& run : *runs) {
            bool const joins = runs == &bank.jumpers || run.from == posts.positive || run.to == posts.positive;
            if (!joins || !link.conductor.id.empty()) continue;
            link = run;
            if (runs == &bank.cables) {
                link.conductor.length = beside;
                link.conductor.resistance.reset();
            }
        }
    if (!link.conductor.size) link.conductor.resistance = link.conductor.resistance.value_or(1.0_mohm);
    return link;
}

inline void add_string(Bank& bank, std::vector<std::string> const& first, std::vector<Run> const& inner, Run link,
                       Posts& last, int number, Names& names) {
    std::vector<std::string> copies;
    for (auto const& id : first) {
        auto battery =
            *std::find_if(bank.batteries.begin(), bank.batteries.end(), [&](Battery const& b) { return b.id == id; });
        battery.id = names.fresh(fmt::format("{}-{}", id, number));
        copies.push_back(battery.id);
        bank.batteries.push_back(std::move(battery));
    }
    auto const copied = [&](std::string const& terminal) {
        for (std::size_t b = 0; b < first.size(); ++b)
            for (auto const* pole : {"+", "-"})
                if (terminal == first[b] + pole) return copies[b] + pole;
        return terminal;
    };
    for (auto run : inner) {
        run.conductor.id = names.fresh(fmt::format("{}-{}", run.conductor.id, number));
        run.from = copied(run.from);
        run.to = copied(run.to);
        bank.jumpers.push_back(std::move(run));
    }
    auto const next = posts_of(copies);
    for (bool const plus : {false, true}) {
        link.conductor.id = names.fresh(fmt::format("link-{}-{}", plus ? "p" : "n", number));
        link.conductor.color = plus ? "red" : "black";
        link.from = plus ? last.positive : last.negative;
        link.to = plus ? next.positive : next.negative;
        bank.jumpers.push_back(link);
    }
    last = next;
}

} // namespace internal::stringing

BANKWRIGHT_INLINE std::optional<int> string_count(Bank const& bank) {
    auto const strings = internal::stringing::find_strings(bank);
    if (!strings || !internal::stringing::one_string(bank, *strings)) return std::nullopt;
    return static_cast<int>(strings->batteries.size());
}

BANKWRIGHT_INLINE Bank with_strings(Bank const& bank, int count) {
    using namespace internal::stringing;
    if (count < 1) throw std::invalid_argument("a bank has at least one string");
    auto const strings = find_strings(bank);
    auto one = strings ? one_string(bank, *strings) : std::nullopt;
    if (!one) throw std::invalid_argument("this bank is not made of strings that can be repeated");
    auto const& first = strings->batteries.front();
    auto const ends = posts_of(first);
    std::vector<Run> inner;
    for_each_run(*one, [&](Run const& run) {
        if (ends.all.count(run.from) > 0 && ends.all.count(run.to) > 0) inner.push_back(run);
    });
    auto last = ends;
    Names names(*one);
    auto const link = link_like(*one, ends);
    std::set<std::string> before;
    for_each_run(*one, [&](Run const& run) { before.insert(run.conductor.id); });
    for (int number = 2; number <= count; ++number)
        add_string(*one, first, inner, link, last, number, names);
    // Diagonal: what was landed on the first string's negative end moves to the last one's.
    for_each_run(*one, [&](Run& run) {
        if (before.count(run.conductor.id) == 0) return;
        for (auto* end : {&run.from, &run.to})
            if (*end == ends.negative) *end = last.negative;
    });
    return *one;
}

} // namespace bankwright
