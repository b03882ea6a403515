"""Does the library keep to itself? It reads no file, environment, locale or clock, and holds nothing that it could write to: so threads
need no lock, and the same bank gives the same answer everywhere."""
import re
import shutil
import subprocess

import pytest
from project import ROOT, library_headers, project_files, read
from test_headers import bare

# Words of the C and C++ libraries that ask the machine for something.
OUTSIDE = re.compile(r"\b(getenv|secure_getenv|setenv|putenv|fopen|freopen|[io]?fstream|filebuf|FILE|setlocale|localeconv|imbue|"
                     r"system_clock|steady_clock|high_resolution_clock|gettimeofday|clock_gettime|localtime|gmtime|strftime|mktime|"
                     r"rand|srand|random_device|printf|puts|cout|cerr|clog|cin|thread_local|getrandom|popen|exit|abort|_exit)\b\s*[({;<]?")
CALLS = re.compile(r"(?<![\w.>:])(?:std::)?(time|clock|system|signal)\s*\(\s*(NULL|nullptr|0|&|\")")
# What the archive may not ask the linker for: as nm prints it.
SYMBOLS = re.compile(r" U (getenv|secure_getenv|f?open(?:64)?|freopen|setlocale|time|clock|gettimeofday|clock_gettime|localtime.*|rand|"
                     r"std::chrono::.*::now\(\)|std::basic_[io]?f?stream.*|std::ios_base::Init.*|std::random_device.*|std::c(?:out|err|log|in))$")
# What an object remembers of itself, though it is constant: it belongs to one call, or its header says that threads may not share it.
REMEMBERS = ("rules/seen.hpp", "solver/linear/pack_network.hpp")
LIBRARY = [path for path in project_files(".cpp") if path.is_relative_to("lib")] + library_headers()


def test_the_source_asks_the_machine_for_nothing():
    found = []
    for path in LIBRARY:
        for number, line in enumerate(bare(read(path)).splitlines(), 1):
            if match := OUTSIDE.search(line) or CALLS.search(line):
                found.append(f"{path}: {match[0].strip()}: {line.strip()[:100]}")
    assert not found, "\n".join(found)


def test_nothing_static_can_be_written_to():
    """`static` and namespace-scope `inline` variables are constants."""
    found = []
    for path in LIBRARY:
        for line in bare(read(path)).splitlines():
            if re.match(r"\s*static\b(?!_)(?!.*\b(?:const|constexpr)\b)[^()]*(?:=|;|\{[^}]*\};)", line):
                found.append(f"{path}: {line.strip()[:100]}")
            if re.match(r"inline\b(?!.*\b(?:const|constexpr|namespace)\b)[^()]*(?:=|;)", line):
                found.append(f"{path}: {line.strip()[:100]}")
            lambda_of_its_own = re.search(r"\) mutable\b", line)
            if re.search(r"\b(mutable|const_cast)\b", line) and not lambda_of_its_own and not str(path).endswith(REMEMBERS):
                found.append(f"{path}: {line.strip()[:100]}")
    assert not found, "\n".join(found)


@pytest.fixture(scope="module")
def archive():
    found = next((path for build in ("release", "dev") if (path := ROOT / f"build/{build}/lib/libbankwright.a").exists()), None)
    if not found or not shutil.which("objdump"):
        pytest.skip("no compiled library, or no objdump")
    return found


def printed(*words):
    return subprocess.run(words, capture_output=True, text=True, check=True).stdout.splitlines()


def test_the_compiled_library_asks_for_nothing_outside(archive):
    asked = printed("nm", "-C", archive)
    assert any(" T bankwright::read(" in line for line in asked), "is this the library?"
    found = {line.strip() for line in asked if SYMBOLS.search(line)}
    assert not found, "\n".join(sorted(found))


def test_the_compiled_library_has_no_data_that_can_be_written(archive):
    """Objects in .data and .bss; addresses that the loader fills in (.data.rel) are constants, as the source says. Sanitizers put tables of their own there, and
    Eigen notes the sizes of the processor's caches, once, behind a guard."""
    objects = [line for line in printed("objdump", "-t", "-C", archive) if re.search(r"\s\.(data(?!\.rel)|bss|tdata|tbss)\S*\t", line)]
    found = [line for line in objects if not re.search(r"\s\.(?:data|t?bss|tdata)\S*\t0{16}|asan|tsan|ubsan|\.L[A-Z]|DW\.ref\.|guard variable|m_cacheSizes", line)]
    assert not found, "\n".join(found[:30])
