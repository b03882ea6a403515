"""Can a stranger's project use the library in each way that the README promises?"""
import os
import re
import shutil
import subprocess
import zlib
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
STRANGER = Path(__file__).resolve().parent / "stranger"


def run(*words, **more):
    done = subprocess.run([str(word) for word in words], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, **more)
    assert done.returncode == 0, f"{' '.join(map(str, words))}\n{done.stdout[-6000:]}"
    return done.stdout


def configure(source, build, *options):
    launcher = ["-DCMAKE_CXX_COMPILER_LAUNCHER=ccache"] if shutil.which("ccache") else []
    run("cmake", "-S", source, "-B", build, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug", "-DCMAKE_CXX_FLAGS_DEBUG=-O0", *launcher,
        *options)


@pytest.fixture(scope="module")
def library(tmp_path_factory):
    """lib/ alone, built and installed as a packager would; the build folder and the prefix."""
    build, prefix = tmp_path_factory.mktemp("library"), tmp_path_factory.mktemp("prefix")
    configure(ROOT / "lib", build, f"-DCMAKE_INSTALL_PREFIX={prefix}")
    run("cmake", "--build", build)
    run("cmake", "--install", build)
    return build, prefix


def check_programs(build, *programs):
    run("cmake", "--build", build, "--target", *programs)
    printed = {name: run(build / name) for name in programs}
    assert "the motor sees 2" in printed[programs[0]]
    assert len(set(printed.values())) == 1, f"the twins disagree: {printed}"


def test_the_installed_package_is_found(library, tmp_path):
    configure(STRANGER, tmp_path, f"-DCMAKE_PREFIX_PATH={library[1]}")
    check_programs(tmp_path, "header_only", "compiled", "mixed")


WITHOUT = [f"-DCMAKE_DISABLE_FIND_PACKAGE_{name}=ON" for name in ("Eigen3", "fmt", "nlohmann_json")]


def test_the_compiled_library_needs_nothing_that_only_its_bodies_use(library, tmp_path):
    configure(STRANGER, tmp_path, f"-DCMAKE_PREFIX_PATH={library[1]}", *WITHOUT)
    check_programs(tmp_path, "compiled")


def test_headers_alone_are_a_component_that_says_what_it_lacks(library, tmp_path):
    words = ["cmake", "-G", "Ninja", "-S", STRANGER, f"-DCMAKE_PREFIX_PATH={library[1]}", "-DASKED=COMPONENTS;header_only"]
    run(*words, "-B", tmp_path / "with")
    asked = subprocess.run([*words, "-B", tmp_path / "without", *WITHOUT], capture_output=True, text=True)
    assert asked.returncode != 0 and all(name in asked.stderr for name in ("Eigen3", "fmt", "nlohmann_json"))


def test_a_shared_library_shows_its_doors_and_nothing_else(tmp_path):
    configure(ROOT / "lib", tmp_path / "library", f"-DCMAKE_INSTALL_PREFIX={tmp_path / 'prefix'}", "-DBUILD_SHARED_LIBS=ON")
    run("cmake", "--build", tmp_path / "library")
    run("cmake", "--install", tmp_path / "library")
    configure(STRANGER, tmp_path / "stranger", f"-DCMAKE_PREFIX_PATH={tmp_path / 'prefix'}")
    check_programs(tmp_path / "stranger", "compiled")
    shown = run("nm", "-D", "--defined-only", "--demangle", next((tmp_path / "prefix").rglob("libbankwright.so")))
    # What it is called, not what a template of a door was made for.
    strangers = [line for line in shown.splitlines() if "bankwright::" not in line or " bankwright::internal::" in re.split("[<(]", line)[0]]
    assert "bankwright::operating_point(" in shown and not strangers, "\n".join(strangers[:20])


def test_who_says_nothing_gets_an_optimized_library(tmp_path):
    run("cmake", "-G", "Ninja", "-S", ROOT / "lib", "-B", tmp_path)
    assert "CMAKE_BUILD_TYPE:STRING=Release" in (tmp_path / "CMakeCache.txt").read_text()


def test_a_host_builds_only_what_it_links_to(tmp_path):
    (tmp_path / "CMakeLists.txt").write_text("cmake_minimum_required(VERSION 3.25)\nproject(host LANGUAGES CXX)\n"
                                             f'add_subdirectory("{ROOT / "lib"}" bankwright)\n')
    run("cmake", "-G", "Ninja", "-S", tmp_path, "-B", tmp_path / "build")
    run("cmake", "--build", tmp_path / "build")
    assert not list((tmp_path / "build").rglob("*.o"))


def test_a_host_s_own_toml_is_as_it_chose(library, tmp_path):
    """After ours: toml++ with exceptions, its own asserts and functions."""
    (tmp_path / "host.cpp").write_text('#include "bankwright/bankwright.hpp"\n#include <toml++/toml.h>\n'
                                       "static_assert(TOML_EXCEPTIONS);\n"
                                       'toml::table read() { try { return toml::parse("a = 1"); } '
                                       "catch (toml::parse_error const&) { return {}; } }\n")
    run("g++", "-fsyntax-only", *flags_of(library[1], "bankwright", "--cflags"), tmp_path / "host.cpp")


def test_a_newer_minor_version_is_not_taken_for_ours(library, tmp_path):
    (tmp_path / "CMakeLists.txt").write_text("cmake_minimum_required(VERSION 3.25)\nproject(other LANGUAGES CXX)\n"
                                             "find_package(bankwright 0.999 REQUIRED)\n")
    asked = subprocess.run(["cmake", "-G", "Ninja", "-S", tmp_path, "-B", tmp_path / "build", f"-DCMAKE_PREFIX_PATH={library[1]}"],
                           capture_output=True, text=True)
    assert asked.returncode != 0 and "0.999" in asked.stderr


def test_the_library_s_folder_can_be_added(tmp_path):
    configure(STRANGER, tmp_path, f"-DLIBRARY_FROM={ROOT / 'lib'}")
    check_programs(tmp_path, "compiled", "mixed")  # of "header_only", the file that is quick to compile


def flags_of(prefix, name, *asked):
    found = next(prefix.rglob(f"{name}.pc")).parent
    return run("pkg-config", *asked, name, env=os.environ | {"PKG_CONFIG_PATH": str(found)}).split()


@pytest.mark.parametrize("name, asked", [("bankwright", ["--cflags", "--libs"]), ("bankwright-header-only", ["--cflags"])])
def test_pkg_config_finds_it_and_a_bare_compiler_builds_with_it(library, tmp_path, name, asked):
    (tmp_path / "main.cpp").write_text('#include "second.hpp"\n#include <stdexcept>\n'
                                       'int main() try { volts_at_motor({}); } catch (std::out_of_range const&) { return 0; }\n')
    run("g++", "-O0", f"-I{STRANGER}", tmp_path / "main.cpp", STRANGER / "second.cpp", "-o", tmp_path / "program",
        *flags_of(library[1], name, *asked))
    run(tmp_path / "program")


def test_licenses_are_installed(library):
    installed = {path.name for path in library[1].rglob("share/doc/bankwright/*")}
    assert {"LICENSE", "third-party-notices.txt"} <= installed


def test_the_installed_headers_are_the_library_s_and_nothing_else(library):
    def files(folder, pattern):
        return {path.relative_to(folder) for path in folder.rglob(pattern) if path.is_file()}

    assert files(library[1] / "include", "*") == files(ROOT / "lib/include", "*.hpp")


def test_headers_stand_alone(library):
    """Each declares and each body compiles from its own includes. Compiled mode, where a header pulls in no other's bodies:
    so a missing include is not hidden by them, and each body is read once. Five minutes for all of them on two cores: an eighth
    is drawn by what is written in them, all with BANKWRIGHT_EVERY_HEADER=1."""
    include = library[1] / "include"

    def complaints(header):
        done = subprocess.run(["g++", "-std=c++20", "-DBANKWRIGHT_COMPILED", "-fsyntax-only", f"-I{include}", "-isystem/usr/include/eigen3",
                               "-w", "-x", "c++", header], capture_output=True, text=True)
        return f"{header.relative_to(include)}\n{done.stderr[:2000]}" if done.returncode else ""

    headers = sorted(include.rglob("*.hpp"))
    assert len(headers) > 100
    if not os.environ.get("BANKWRIGHT_EVERY_HEADER"):
        headers = [header for header in headers if zlib.crc32(header.read_bytes()) % 8 == 0]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        wrong = list(filter(None, pool.map(complaints, headers)))
    assert not wrong, "\n".join(wrong)
