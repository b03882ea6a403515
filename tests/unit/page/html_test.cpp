#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/style_sheet.hpp"

#include <doctest/doctest.h>

using bankwright::page::Html;

namespace {

template <class Write>
std::string written(Write&& write) {
    Html html;
    html.open("div");
    write(html);
    html.close();
    return std::move(html).str();
}

bool contains(std::string const& text, std::string const& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("names between backquotes are set as names, the rest as it is") {
    auto const html = written([](Html& h) { h.paragraph("turn `B` around"); });
    CHECK(contains(html, "<p>turn <bdi class=\"name\">B</bdi> around</p>"));
    CHECK(contains(written([](Html& h) { h.paragraph("one ` alone"); }), "one <bdi class=\"name\"> alone</bdi>"));
}

TEST_CASE("a loop reads with arrows") {
    auto const html = written([](Html& h) { h.paragraph("the loop `B-` -B- `B+` -J2- `A-` adds up"); });
    CHECK(contains(
        html,
        "B-</bdi> \u2192 B \u2192 <bdi class=\"name\">B+</bdi> \u2192 J2 \u2192 <bdi class=\"name\">A-</bdi> adds up"));
}

TEST_CASE("whatever is written comes out as text") {
    auto const hostile = std::string("<script>alert('1')</script> & \" \u202e");
    auto const html = written([&](Html& h) {
        h.element("p", hostile, hostile).paragraph(hostile).items({hostile}).fact(hostile, hostile);
        h.table(hostile, {{hostile}}, {{hostile}});
    });
    CHECK_FALSE(contains(html, "<script"));
    CHECK_FALSE(contains(html, "\u202e"));
    CHECK(contains(html, "&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &amp; &quot; \\u{202e}"));
}

TEST_CASE("a table names its columns and rows, and moves sideways by itself") {
    auto const html = written([](Html& h) { h.table("Readings", {{"part"}, {"current", true}}, {{"A", "52.1 A"}}); });
    CHECK(contains(html, "role=\"region\" aria-label=\"Readings\" tabindex=\"0\""));
    CHECK(contains(html, "<caption>Readings</caption>"));
    CHECK(contains(html, "<th class=\"number\" scope=\"col\">current</th>"));
    CHECK(contains(html, "<th scope=\"row\">A</th>"));
    CHECK(contains(html, "<td class=\"number\">52.1 A</td>"));
}

TEST_CASE("an element with nothing in it is closed") {
    CHECK(contains(written([](Html& h) { h.open("td").close(); }), "<td></td>"));
    CHECK(contains(written([](Html& h) { h.open("input").close_empty(); }), "<input/>"));
}

TEST_CASE("the style sheet reads the same in HTML, where nothing in it is escaped, as it was written") {
    CHECK(bankwright::page::style_sheet.find_first_of("<>&\"'") == std::string_view::npos);
    CHECK(bankwright::page::style_sheet.find("url(") == std::string_view::npos);
    CHECK(bankwright::page::style_sheet.find("@import") == std::string_view::npos);
}
