// What stands on every page, whatever it is about: its head, its foot, and how a drawing is put into it.
#pragma once

#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/style_sheet.hpp"
#include "bankwright/version.hpp"

#include <string>
#include <string_view>

namespace bankwright::page {

// What the page may do is said in its head: nothing but show itself.
inline void page_head(Html& html, std::string const& title, std::string_view more_style = {}) {
    html.open("head").open("meta").attribute("charset", "utf-8").close_empty();
    html.open("meta").attribute("http-equiv", "Content-Security-Policy");
    html.attribute("content",
                   "default-src 'none'; style-src 'unsafe-inline'; img-src data:; form-action 'none'; base-uri 'none'");
    html.close_empty();
    html.open("meta")
        .attribute("name", "viewport")
        .attribute("content", "width=device-width, initial-scale=1")
        .close_empty();
    html.open("meta")
        .attribute("name", "generator")
        .attribute("content", "bankwright " BANKWRIGHT_VERSION)
        .close_empty();
    html.open("link").attribute("rel", "icon").attribute("href", "data:,").close_empty();
    html.element("title", title).element("style", style_sheet);
    if (!more_style.empty()) html.element("style", more_style);
    html.close();
}

inline void page_foot(Html& html) {
    html.open("footer").element("p", "bankwright " BANKWRIGHT_VERSION, "faint small").close();
}

// What a picture says of itself: its "width" or "height" [px].
inline std::string measure_of(std::string_view svg, std::string_view name) {
    auto const mark = " " + std::string(name) + "=\"";
    auto const from = svg.find(mark) + mark.size();
    return std::string(svg.substr(from, svg.find('"', from) - from));
}

// A drawing as large as it wants to be; where that is more than a phone shows, it moves in a frame of its own.
inline void wiring_picture(Html& html, std::string const& svg) {
    html.open("div", "wide wiring").attribute("role", "region");
    html.attribute("aria-label", "Wiring diagram, moves in its frame").attribute("tabindex", "0");
    html.attribute("style", "--width: " + measure_of(svg, "width") + "px").picture(svg).close();
}

} // namespace bankwright::page
