"""Does data run one way? Every include of the library is held against layers.txt."""
from fnmatch import fnmatch

from project import folder_of, includes, layers, library_headers, project_files, road, third_party


def test_layers_are_listed_lowest_first():
    seen = set()
    for folder, allowed in road().items():
        assert set(allowed) <= seen, f"{folder} may include {set(allowed) - seen}, which come after it"
        seen.add(folder)


def test_every_folder_of_the_library_is_in_the_list():
    found = {folder_of(header) for header in library_headers()} - {""}
    assert found <= set(road()), f"not in layers.txt: {found - set(road())}"


def test_a_folder_includes_only_folders_below_it():
    breaches = []
    for header in library_headers():
        folder = folder_of(header)
        if not folder:
            continue
        for line, name in includes(header):
            parts = name.split("/")
            if parts[0] == "bankwright" and len(parts) == 3 and parts[1] not in [folder, *road()[folder]]:
                breaches.append(f"{header}:{line} includes {name}")
            if parts == ["bankwright", "bankwright.hpp"] or ".." in parts:
                breaches.append(f"{header}:{line} includes {name}")
    assert not breaches, "\n".join(breaches)


def test_only_what_uses_all_of_the_library_includes_the_umbrella():
    allowed = ("apps/*", "bindings/*", "tests/package/*", "tests/fuzz/*", "lib/include/bankwright/bankwright.hpp")
    breaches = [f"{path}:{line}" for path in project_files(".hpp", ".cpp") for line, name in includes(path)
                if name == "bankwright/bankwright.hpp" and not any(fnmatch(path, pattern) for pattern in allowed)]
    assert not breaches, "\n".join(breaches)


def test_each_third_party_library_lives_in_its_place():
    breaches = []
    for path in project_files(".hpp", ".cpp"):
        for line, name in includes(path):
            for prefix, places in third_party().items():
                in_a_test = path.is_relative_to("tests") and not path.is_relative_to("tests/package")
                if name.startswith(prefix) and not in_a_test and not any(fnmatch(path, place) for place in places):
                    breaches.append(f"{path}:{line} includes {name}; it belongs in {' '.join(places)}")
    assert not breaches, "\n".join(breaches)


def test_declaring_headers_are_light_and_the_library_touches_no_file_or_clock():
    heavy = set(" ".join(layers()["heavy"]).split())
    never = set(" ".join(layers()["never"]).split())
    breaches = []
    for header in library_headers():
        for line, name in includes(header):
            if name in never or (name in heavy and not header.stem.endswith("_inl")):
                breaches.append(f"{header}:{line} includes {name}")
    assert not breaches, "\n".join(breaches)


def test_no_header_includes_itself_on_a_round_trip():
    """A header may end with its bodies, and they include it; any longer circle leaves something undeclared to somebody."""
    graph = {header.relative_to("lib/include").as_posix(): [name for _, name in includes(header)] for header in library_headers()}
    done, circles = set(), set()

    def walk(name, above):
        if name in above:
            circle = above[above.index(name):]
            if not (len(circle) == 2 and sum("_inl" in name for name in circle) == 1):
                circles.add(" -> ".join([*circle, name]))
        elif name in graph and name not in done:
            for included in graph[name]:
                walk(included, [*above, name])
            done.add(name)

    for name in graph:
        walk(name, [])
    assert not circles, "\n".join(sorted(circles))
