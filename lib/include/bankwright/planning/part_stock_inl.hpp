#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/config/text_check.hpp"
#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/planning/part_stock.hpp"
#include "bankwright/planning/usual_parts.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::stocking {

inline bool is_fuse_class(std::string_view word) {
    auto const known = trip_class_named(word);
    return known && *known >= TripClass::iso_8820_3;
}

inline std::string text_of(DocumentValue const& model, std::string_view key) {
    auto const* entry = find_entry(model, key);
    return entry && entry->value.kind == DocumentValue::Kind::text ? entry->value.text : std::string();
}

// The section of a bank file that its keys belong into; empty for what no plan asks for.
inline std::string_view section_of(std::string_view name, DocumentValue const& model) {
    auto const has = [&](auto... keys) { return (... || (find_entry(model, keys) != nullptr)); };
    if (has("capacity")) return "batteries";
    if (has("interrupts", "class", "trips"))
        return is_fuse_class(text_of(model, "class")) || name.substr(0, 4) == "fuse" ? "fuses" : "breakers";
    if (has("contact", "max_size")) return "connectors";
    if (has("studs")) return "busbars";
    if (has("insulation")) return "cables";
    if (has("rating") && !has("outputs", "current", "power", "voltage", "drop", "closes_above", "position"))
        return "switches";
    return {};
}

inline std::string quoted(std::string_view name) {
    std::string out = "\"";
    for (char const c : name)
        out += c == '"' || c == '\\' ? fmt::format("\\{}", c) : std::string(1, c);
    return out + '"';
}

// Its last name, as far as a file may name it.
inline std::string path_for(std::string_view file) {
    auto name = std::string(file.substr(file.find_last_of('/') + 1));
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == '\\' || static_cast<unsigned char>(c) < 0x20; }, '_');
    return name.empty() ? "parts" : name;
}

// What cables of a wire are landed on.
inline constexpr std::string_view somewhere = "_somewhere";

// A bank file that has one part of each model, under the model's name.
inline std::string one_of_each(std::vector<PartListText> const& lists, std::vector<std::string> const& paths) {
    std::map<std::string_view, std::string> sections;
    sections["batteries"] =
        fmt::format("{} = {{ voltage = \"12 V\", chemistry = \"agm\", capacity = \"1 Ah\" }}\n", somewhere);
    for (auto const& list : lists) {
        if (!list.trouble.empty() || reason_to_refuse(list.text, {})) continue;
        auto const document = parse_document(without_mark(list.text));
        auto const* models = find_entry(document.root, models_section);
        if (!models || models->value.kind != DocumentValue::Kind::table) continue;
        for (auto const& model : models->value.entries) {
            auto const section = section_of(model.key, model.value);
            if (section.empty()) continue;
            auto const ends =
                fmt::format(", from = \"{0}+\", to = \"{0}-\", size = \"6 AWG\", length = \"1 ft\"", somewhere);
            sections[section] += fmt::format("{0} = {{ model = {0}{1} }}\n", quoted(model.key),
                                             section == "cables" ? ends : std::string());
        }
    }
    std::vector<std::string> named;
    for (auto const& path : paths)
        named.push_back(quoted(path));
    auto text = fmt::format("bankwright = 1\nparts = [{}]\n", fmt::join(named, ", "));
    for (auto const& [section, lines] : sections)
        text += fmt::format("[{}]\n{}", section, lines);
    return text;
}

template <class Part, class Size>
void sort_by(std::vector<Part>& parts, Size&& size) {
    std::stable_sort(parts.begin(), parts.end(), [&](Part const& a, Part const& b) { return size(a) < size(b); });
}

template <class Part>
double rating_of(Part const& part) {
    return part.rating ? part.rating->value() : 0.0;
}

inline PartStock stock_of(std::vector<PartListText> const& lists) {
    std::vector<std::string> paths;
    for (auto const& list : lists) {
        auto path = path_for(list.file);
        if (std::find(paths.begin(), paths.end(), path) != paths.end()) path = fmt::format("{}/{}", paths.size(), path);
        paths.push_back(std::move(path));
    }
    auto all = read(one_of_each(lists, paths), {}, [&](std::string const& path) {
        return lists[static_cast<std::size_t>(std::find(paths.begin(), paths.end(), path) - paths.begin())];
    });
    PartStock stock;
    for (auto& battery : all.bank.batteries)
        if (battery.id != somewhere) stock.batteries.push_back(std::move(battery));
    stock.breakers = std::move(all.bank.breakers);
    stock.fuses = std::move(all.bank.fuses);
    stock.connectors = std::move(all.bank.connectors);
    stock.switches = std::move(all.bank.switches);
    stock.busbars = std::move(all.bank.busbars);
    if (!all.bank.cables.empty()) stock.wire = all.bank.cables.front().conductor;
    stock.findings = std::move(all.findings);
    for (auto& finding : stock.findings)
        if (finding.file.empty()) finding.region.reset(); // it stands in no text of the user's
    stock.texts = std::move(all.part_lists);
    sort_by(stock.batteries, [](Battery const& b) { return b.capacity.value_or(Charge{}).value(); });
    for (auto* devices : {&stock.breakers, &stock.fuses})
        sort_by(*devices, [](ProtectiveDevice const& d) {
            return std::pair(rating_of(d), d.interrupts.value_or(Current{}).value());
        });
    sort_by(stock.connectors, rating_of<Connector>);
    sort_by(stock.switches, rating_of<Switch>);
    sort_by(stock.busbars, rating_of<Busbar>);
    return stock;
}

} // namespace internal::stocking

BANKWRIGHT_INLINE PartStock usual_parts() { return internal::stocking::stock_of(usual_part_lists()); }

BANKWRIGHT_INLINE PartStock part_stock(std::vector<PartListText> const& lists) {
    auto stock = internal::stocking::stock_of(lists);
    auto usual = usual_parts();
    auto const fill = [](auto& own, auto& others) {
        if (own.empty()) own = std::move(others);
    };
    fill(stock.batteries, usual.batteries);
    if (stock.breakers.empty() && stock.fuses.empty()) {
        stock.breakers = std::move(usual.breakers);
        stock.fuses = std::move(usual.fuses);
    }
    fill(stock.connectors, usual.connectors);
    fill(stock.switches, usual.switches);
    fill(stock.busbars, usual.busbars);
    if (!stock.wire.insulation) stock.wire = usual.wire;
    return stock;
}

} // namespace bankwright
