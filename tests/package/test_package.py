"""Can a stranger's project use the library in each way that the README promises?"""
import os
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


def test_a_newer_minor_version_is_not_taken_for_ours(library, tmp_path):
    (tmp_path / "CMakeLists.txt").write_text("cmake_minimum_required(VERSION 3.25)\nproject(other LANGUAGES CXX)\n"
                                             "find_package(bankwright 0.999 REQUIRED)\n")
    asked = subprocess.run(["cmake", "-G", "Ninja", "-S", tmp_path, "-B", tmp_path / "build", f"-DCMAKE_PREFIX_PATH={library[1]}"],
                           capture_output=True, text=True)
    assert asked.returncode != 0 and "0.999" in asked.stderr


def test_the_library_s_folder_can_be_added(tmp_path):
    configure(STRANGER, tmp_path, f"-DLIBRARY_FROM={ROOT / 'lib'}")
    check_programs(tmp_path, "compiled", "mixed")  # of "header_only", the file that is quick to compile


def test_pkg_config_finds_it_and_a_bare_compiler_builds_with_it(library, tmp_path):
    prefix = library[1]
    found = next(prefix.rglob("bankwright.pc")).parent
    flags = run("pkg-config", "--cflags", "bankwright", env=os.environ | {"PKG_CONFIG_PATH": str(found)}).split()
    (tmp_path / "main.cpp").write_text('#include "second.hpp"\n#include <stdexcept>\n'
                                       'int main() try { volts_at_motor({}); } catch (std::out_of_range const&) { return 0; }\n')
    run("g++", "-std=c++20", "-O0", f"-I{STRANGER}", tmp_path / "main.cpp", STRANGER / "second.cpp", *flags, "-o", tmp_path / "program")
    run(tmp_path / "program")


def test_the_installed_headers_are_the_library_s_and_nothing_else(library):
    def headers(folder):
        return {path.relative_to(folder) for path in folder.rglob("*") if path.is_file()}

    assert headers(library[1] / "include") == headers(ROOT / "lib/include")


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
