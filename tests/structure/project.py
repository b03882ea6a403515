"""The project's own files, and layers.txt as data."""
import re
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
HEADERS = ROOT / "lib/include/bankwright"
UMBRELLA = HEADERS / "bankwright.hpp"


def project_files(*suffixes):
    """Every file that belongs to the project (tracked, or new and not ignored), as paths relative to its root."""
    listed = subprocess.run(["git", "-c", "safe.directory=*", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
                            cwd=ROOT, capture_output=True, text=True, check=True).stdout
    paths = sorted(Path(name) for name in set(listed.split("\0")) if name and (ROOT / name).is_file())
    return [path for path in paths if not suffixes or path.suffix in suffixes]


def read(path):
    return (ROOT / path).read_text(encoding="utf-8")


def library_headers():
    return [path for path in project_files(".hpp") if path.is_relative_to("lib/include/bankwright")]


def folder_of(header):
    """`units` of lib/include/bankwright/units/print.hpp; nothing for a header that stands above the folders."""
    inner = header.relative_to("lib/include/bankwright").parts
    return inner[0] if len(inner) > 1 else ""


def room_of(header):
    """`solver/linear` of lib/include/bankwright/solver/linear/star_mesh.hpp: the folder that it lies in."""
    return header.relative_to("lib/include/bankwright").parent.as_posix()


def doors(folder):
    """What lies at the top of a room, bodies aside: what others may include."""
    return {header.stem for header in library_headers() if room_of(header) == folder and not header.stem.endswith("_inl")}


def includes(path):
    """(line number, included name) of each #include."""
    for number, line in enumerate(read(path).splitlines(), 1):
        if found := re.match(r'\s*#\s*include\s*[<"]([^>"]+)[>"]', line):
            yield number, found.group(1)


def layers():
    """layers.txt: section -> its lines, comments dropped."""
    sections, current = {}, None
    for line in read("tests/structure/layers.txt").splitlines():
        if heading := re.match(r"\[(.+?)\]", line):
            current = sections.setdefault(heading.group(1), [])
        elif line.strip() and not line.startswith("#"):
            current.append(line)
    return sections


def road():
    """folder -> folders it may include, in the order of the road."""
    return {left.strip(): right.split() for left, right in (line.split(":") for line in layers()["road"])}


def windows():
    """what lies inside a room -> patterns of the files outside that may include it all the same."""
    return {left.strip(): right.split() for left, right in (line.split(" : ") for line in layers()["windows"])}


def listed_doors(section="doors"):
    """folder -> the doors that layers.txt names, all of them or those "between rooms"."""
    return {left.strip(): set(right.split()) for left, right in (line.split(" : ") for line in layers()[section])}


def third_party():
    """prefix of an include -> patterns of the files that may have it."""
    return {left.strip(): right.split() for left, right in (line.split(" : ") for line in layers()["third party"])}
