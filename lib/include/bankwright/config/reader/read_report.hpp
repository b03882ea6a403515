// Collects what is wrong with a file: one place that knows the limits and how a finding names what it is about.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/source_map.hpp"
#include "bankwright/config/document.hpp"
#include "bankwright/config/file_rules.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/config/reader/read_value.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/text/closest.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace bankwright::internal::reader {

// What a finding is about.
struct Subject {
    std::string part; // as findings and the source map name it: "A", "[system]", "[[accept]] 1"; empty: the file itself
    std::string words; // as a message names it: "battery `A`", "the system"
    Region region;
};

inline std::string help_with(std::optional<std::string> const& near, std::string otherwise) {
    return near ? fmt::format("did you mean `{}`?", *near) : std::move(otherwise);
}

inline void add_to_map(SourceMap& map, std::string const& part, DocumentEntry const& entry) {
    map.add_with_keys(part, entry.region, entry.value.entries);
}

class Report {
public:
    explicit Report(ReadLimits const& limits) : limits_(limits) {}

    void add(RuleInfo const& rule, std::string const& part, std::string_view key, Region region, std::string message,
             std::string help) {
        if (findings_.size() >= limits_.findings) {
            ++left_out_;
            return;
        }
        Finding finding;
        finding.rule = std::string(rule.id);
        finding.level = rule.level;
        finding.message = std::move(message);
        finding.help = std::move(help);
        if (!part.empty()) finding.parts.push_back(part);
        finding.key = std::string(key);
        finding.region = region;
        finding.file = file_;
        findings_.push_back(std::move(finding));
    }

    void add(Subject const& subject, KeySpec const& key, Region region, Trouble trouble) {
        auto const of = subject.words.empty() ? std::string() : " of " + subject.words;
        add(*trouble.rule, subject.part, key.name, region, fmt::format("`{}`{} {}", key.name, of, trouble.message),
            std::move(trouble.help));
    }

    // One that is made already.
    void add(Finding finding) {
        finding.file = file_;
        findings_.push_back(std::move(finding));
    }

    std::size_t size() const { return findings_.size(); }

    // Beside each value that is read: how far it may be off, where the file says so.
    void note(Tolerance tolerance) { tolerances_.push_back(std::move(tolerance)); }
    std::vector<Tolerance> take_tolerances() { return std::move(tolerances_); }

    // From here on findings stand in this part list; empty: in the bank file.
    void set_file(std::string file) { file_ = std::move(file); }

    // True where one more finding would only be counted, which this does: its words need not be made.
    bool is_full() {
        if (findings_.size() < limits_.findings) return false;
        ++left_out_;
        return true;
    }

    // The nearest of the names. A file full of mistakes does not get an edit distance for each: the work is bounded.
    template <class Names>
    std::optional<std::string> nearest(std::string_view word, Names const& names) {
        if (findings_.size() >= limits_.findings || names.size() > comparisons_left_) return std::nullopt;
        comparisons_left_ -= names.size();
        return closest(word, names);
    }

    // In the order of the text, part lists after the bank file.
    Findings take() {
        std::stable_sort(findings_.begin(), findings_.end(), [](Finding const& a, Finding const& b) {
            auto const x = a.region->begin;
            auto const y = b.region->begin;
            if (a.file != b.file) return a.file < b.file;
            return x.line != y.line ? x.line < y.line : x.column < y.column;
        });
        if (left_out_ > 0) {
            auto const count = left_out_;
            auto const place = findings_.empty() ? Region{{1, 1}, {1, 1}} : *findings_.back().region;
            left_out_ = 0;
            limits_.findings += 1;
            set_file(findings_.empty() ? std::string() : findings_.back().file);
            add(file_too_large, {}, {}, place,
                fmt::format("{} more findings; at most {} are shown", count, limits_.findings - 1),
                "correct these first");
        }
        return std::move(findings_);
    }

private:
    ReadLimits limits_;
    std::string file_;
    Findings findings_;
    std::vector<Tolerance> tolerances_;
    std::size_t left_out_ = 0;
    std::size_t comparisons_left_ = 200'000;
};

} // namespace bankwright::internal::reader
