"""Builds the module from the library beside this folder; the version is the library's.

The module's own sources, and the library's in as many parts as there are processors, are compiled side by side;
BANKWRIGHT_BUILD_JOBS says on how many, CFLAGS adds options. Each part reads the same headers again: more would cost
more than it gains.
"""
import os
import re
from pathlib import Path

from pybind11.setup_helpers import ParallelCompile, Pybind11Extension, build_ext
from setuptools import setup

here = Path(__file__).resolve().parent
library = here.parent / "lib"
version = re.search(r'BANKWRIGHT_VERSION "([^"]+)"', (library / "include/bankwright/version.hpp").read_text()).group(1)
eigen = os.environ.get("EIGEN3_INCLUDE_DIR", "/usr/include/eigen3")


def unit(name, included):
    """A source file in build/, where setuptools wants it, that includes the given ones."""
    file = here / "build" / f"{name}.cpp"
    file.parent.mkdir(exist_ok=True)
    file.write_text("".join(f'#include "{path.as_posix()}"\n' for path in included))
    return str(file.relative_to(here))


def parts(sources, count):
    """The sources dealt out by how much they include, into parts that take about as long."""
    weight = {source: sum((library / "include" / name).stat().st_size
                          for name in re.findall(r'#include "(.*)"', source.read_text()))
              for source in sources}
    dealt = [[] for _ in range(count)]
    for source in sorted(sources, key=weight.get, reverse=True):
        min(dealt, key=lambda part: sum(map(weight.get, part))).append(source)
    return dealt


rooms = sorted(here.glob("src/*.cpp"))
bodies = parts(sorted((library / "src").glob("*.cpp")), os.cpu_count() or 1)
ParallelCompile("BANKWRIGHT_BUILD_JOBS").install()
setup(
    version=version,
    ext_modules=[
        Pybind11Extension(
            "bankwright._core",
            [unit("rooms", rooms)] + [unit(f"library_{number}", part) for number, part in enumerate(bodies) if part],
            depends=[str(path) for path in (*here.glob("src/*"), *library.rglob("*.?pp"))],
            include_dirs=[str(here / "src"), str(library / "include"), eigen],
            define_macros=[("FMT_HEADER_ONLY", "1"), ("BANKWRIGHT_COMPILED", "1")],
            cxx_std=20,
        )
    ],
    cmdclass={"build_ext": build_ext},
)
