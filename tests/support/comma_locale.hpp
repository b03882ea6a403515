// A decimal comma as the program's locale, for as long as the object lives: both the C++ and the C one.
#pragma once

#include <clocale>
#include <cstdlib>
#include <filesystem>
#include <locale>
#include <string>

namespace bankwright::support {

struct CommaPoint : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

class CommaLocale {
public:
    CommaLocale()
        : c_before_(std::setlocale(LC_ALL, nullptr)),
          cpp_before_(std::locale::global(std::locale(std::locale::classic(), new CommaPoint))) {
        use_german();
        if (!c_has_comma()) {
            make_german();
            use_german();
        }
    }
    ~CommaLocale() {
        std::locale::global(cpp_before_);
        std::setlocale(LC_ALL, c_before_.c_str());
        unsetenv("LOCPATH");
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    CommaLocale(CommaLocale const&) = delete;
    CommaLocale& operator=(CommaLocale const&) = delete;

    // The C locale has the comma: the machine had a German one, or could make it.
    static bool c_has_comma() { return std::string(std::localeconv()->decimal_point) == ","; }

private:
    static void use_german() {
        for (char const* name : {"de_DE.UTF-8", "de_DE.utf8", "de_DE"})
            if (std::setlocale(LC_ALL, name)) return;
    }
    void make_german() {
        auto folder = (std::filesystem::temp_directory_path() / "bankwright-locale-XXXXXX").string();
        if (!mkdtemp(folder.data())) return;
        folder_ = folder;
        auto const command = "localedef -f UTF-8 -i de_DE " + folder + "/de_DE.UTF-8 2>/dev/null";
        if (std::system(command.c_str()) == 0) setenv("LOCPATH", folder.c_str(), 1);
    }

    std::string c_before_;
    std::locale cpp_before_;
    std::filesystem::path folder_;
};

} // namespace bankwright::support
