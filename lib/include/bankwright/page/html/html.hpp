// How is HTML written? Elements with a class each, prose with names in it, tables, lists. Every word goes through
// XmlWriter, which escapes it: there is no other place that does, and none that needs to.
#pragma once

#include "bankwright/text/quoted_names.hpp"
#include "bankwright/text/xml_writer.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bankwright::page {

struct Column {
    std::string head;
    bool is_number = false; // aligned right
};

class Html {
public:
    Html& open(std::string tag, std::string_view kind = {}) {
        xml_.open(std::move(tag));
        return kind.empty() ? *this : attribute("class", kind);
    }
    // Only directly after open().
    Html& attribute(std::string_view name, std::string_view value) {
        xml_.attribute(name, value);
        return *this;
    }
    Html& text(std::string_view words) {
        xml_.text(words);
        return *this;
    }
    // Never <td/>: HTML knows no such thing but for the few elements that are always empty.
    Html& close() {
        xml_.text({}).close();
        return *this;
    }
    Html& close_empty() { // meta, link, input, br
        xml_.close();
        return *this;
    }
    Html& element(std::string tag, std::string_view words, std::string_view kind = {}) {
        return open(std::move(tag), kind).text(words).close();
    }
    // What stands between backquotes is the name of a part or terminal, and is set as one.
    Html& prose(std::string_view words) {
        text({}); // so that nothing is indented before a name
        for_each_piece(words, [&](std::string_view piece, bool is_name) {
            if (is_name)
                element("bdi", piece, "name");
            else
                text(piece);
        });
        return *this;
    }
    Html& paragraph(std::string_view words, std::string_view kind = {}) { return open("p", kind).prose(words).close(); }
    Html& items(std::vector<std::string> const& words, std::string_view kind = {}) {
        open("ul", kind);
        for (auto const& item : words)
            open("li").prose(item).close();
        return close();
    }
    // A term and what is to be said of it, inside a <dl>.
    Html& fact(std::string_view term, std::string_view words) {
        return open("div").element("dt", term).open("dd").prose(words).close().close();
    }
    // A chapter of the page, with its heading; closed by close().
    Html& chapter(std::string_view id, std::string_view heading, std::string_view kind = {}) {
        open("section", kind).attribute("id", id).attribute("aria-labelledby", std::string(id) + "-heading");
        return open("h2").attribute("id", std::string(id) + "-heading").text(heading).close();
    }
    // The same, unfolded by a tap, and on paper. A link to what lies within it unfolds it, so that there the mark stands.
    Html& folded_chapter(std::string_view id, std::string_view heading, std::string_view kind = {}) {
        open("details", kind.empty() ? "chapter" : std::string("chapter ") + std::string(kind)).open("summary");
        element("h2", heading).close();
        return open("div", "mark").attribute("id", id).close();
    }
    // What is looked up, not read: closed by close().
    Html& fold(std::string_view summary, std::string_view kind = {}) {
        return open("details", kind).element("summary", summary);
    }
    Html& fold_under(std::string_view heading) { // of the third rank
        return open("details", "part").open("summary").element("h3", heading).close();
    }
    // The first column names the row. A table too wide for the screen moves sideways by itself, not the page.
    Html& table(std::string_view caption, std::vector<Column> const& columns,
                std::vector<std::vector<std::string>> const& rows) {
        open("div", "wide").attribute("role", "region").attribute("aria-label", caption).attribute("tabindex", "0");
        open("table").element("caption", caption).open("thead").open("tr");
        for (auto const& column : columns)
            open("th", column.is_number ? "number" : "").attribute("scope", "col").prose(column.head).close();
        close().close().open("tbody");
        for (auto const& row : rows) {
            open("tr");
            for (std::size_t i = 0; i < row.size(); ++i) {
                bool const heads = i == 0;
                open(heads ? "th" : "td", columns[i].is_number ? "number" : "");
                if (heads) attribute("scope", "row");
                prose(row[i]).close();
            }
            close();
        }
        return close().close().close();
    }
    // A picture that another writer has written.
    Html& picture(std::string_view svg) {
        xml_.markup(svg);
        return *this;
    }

    std::string str() && { return "<!doctype html>\n" + std::move(xml_).str(); }

private:
    XmlWriter xml_;
};

} // namespace bankwright::page
