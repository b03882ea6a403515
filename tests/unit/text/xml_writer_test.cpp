#include "bankwright/text/xml_writer.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("elements nest, are indented and are closed at the end") {
    XmlWriter xml;
    xml.declaration()
        .open("a")
        .attribute("n", "1 < 2")
        .open("b")
        .close()
        .element("c", "x & y")
        .open("d")
        .attribute("e", "");
    CHECK(std::move(xml).str() == "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                                  "<a n=\"1 &lt; 2\">\n"
                                  "  <b/>\n"
                                  "  <c>x &amp; y</c>\n"
                                  "  <d e=\"\"/>\n"
                                  "</a>\n");
}

TEST_CASE("no blank is added where there is text") {
    XmlWriter xml;
    xml.open("p").text("one ").open("b").open("i").text("two").close().close().text(" three").close();
    CHECK(std::move(xml).str() == "<p>one <b><i>two</i></b> three</p>\n");
}

TEST_CASE("an empty element() keeps both of its tags") {
    XmlWriter xml;
    CHECK(std::move(xml.element("td", "")).str() == "<td></td>\n");
}

TEST_CASE("line ends and tabs in an attribute reach the reader as such") {
    XmlWriter xml;
    xml.open("a").attribute("n", "x\ny\tz");
    CHECK(std::move(xml).str() == "<a n=\"x&#10;y&#9;z\"/>\n");
}

TEST_CASE("an attribute without an open tag and a close too many are the caller's mistakes") {
    XmlWriter xml;
    CHECK_THROWS_AS(xml.attribute("a", "b"), std::logic_error);
    CHECK_THROWS_AS(xml.close(), std::logic_error);
    xml.open("a").text("t");
    CHECK_THROWS_AS(xml.attribute("a", "b"), std::logic_error);
}
