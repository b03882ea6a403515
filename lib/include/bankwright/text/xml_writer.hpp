// Writes well-formed, indented XML (JUnit, SVG, the HTML report) and escapes everything that it is given.
#pragma once

#include "bankwright/text/escape.hpp"

#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bankwright {

class XmlWriter {
public:
    XmlWriter& declaration() {
        text_ += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
        return *this;
    }

    XmlWriter& open(std::string name) {
        finish_tag();
        bool const in_text = !open_.empty() && open_.back().in_text;
        if (!in_text) indent();
        text_ += '<' + name;
        open_.push_back({std::move(name), in_text});
        in_tag_ = true;
        return *this;
    }

    // Only directly after open(); anywhere else it throws std::logic_error.
    XmlWriter& attribute(std::string_view name, std::string_view value) {
        if (!in_tag_) throw std::logic_error("an attribute needs an open tag");
        text_ += ' ';
        text_ += name;
        text_ += "=\"";
        for (char const c : xml_escape(value)) { // a parser would turn bare line ends and tabs into blanks
            if (c == '\n')
                text_ += "&#10;";
            else if (c == '\t')
                text_ += "&#9;";
            else
                text_ += c;
        }
        text_ += '"';
        return *this;
    }

    // From here to its end the element is not indented.
    XmlWriter& text(std::string_view content) {
        finish_tag();
        text_ += xml_escape(content);
        if (!open_.empty()) open_.back().in_text = true;
        return *this;
    }

    XmlWriter& close() {
        if (open_.empty()) throw std::logic_error("nothing is open");
        auto const [name, in_text] = std::move(open_.back());
        open_.pop_back();
        if (in_tag_) {
            text_ += "/>";
            in_tag_ = false;
        } else {
            if (!in_text) indent();
            text_ += "</" + name + '>';
        }
        if (open_.empty()) text_ += '\n';
        return *this;
    }

    // <name>content</name>, also where content is empty: HTML reads <td/> as a mere <td>.
    XmlWriter& element(std::string name, std::string_view content) {
        return open(std::move(name)).text(content).close();
    }

    // What another writer has written, as it is, where no element may be left open: the only way past the escaping.
    XmlWriter& markup(std::string_view written) {
        finish_tag();
        indent();
        text_ += written;
        if (!written.empty() && written.back() == '\n') text_.pop_back();
        return *this;
    }

    // Closes what is still open.
    std::string str() && {
        while (!open_.empty())
            close();
        return std::move(text_);
    }

private:
    void finish_tag() {
        if (in_tag_) text_ += '>';
        in_tag_ = false;
    }
    void indent() {
        if (text_.empty() || (open_.empty() && text_.back() == '\n')) return;
        text_ += '\n';
        text_.append(2 * open_.size(), ' ');
    }

    struct Element {
        std::string name;
        bool in_text; // blanks would count here, so nothing is indented
    };

    std::string text_;
    std::vector<Element> open_;
    bool in_tag_ = false;
};

} // namespace bankwright
