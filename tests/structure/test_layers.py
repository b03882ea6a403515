"""Does data run one way, and through doors? Every include of the library is held against layers.txt."""
from fnmatch import fnmatch

from project import (doors, folder_of, includes, layers, library_headers, listed_doors, project_files, road, third_party,
                     windows)


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
            if parts[0] == "bankwright" and len(parts) >= 3 and parts[1] not in [folder, *road()[folder]]:
                breaches.append(f"{header}:{line} includes {name}")
            if parts == ["bankwright", "bankwright.hpp"] or ".." in parts:
                breaches.append(f"{header}:{line} includes {name}")
    assert not breaches, "\n".join(breaches)


def test_layers_names_every_door_and_no_other():
    listed = listed_doors()
    assert list(listed) == list(road())
    for folder in road():
        assert listed[folder] == doors(folder), f"{folder}/: listed only {listed[folder] - doors(folder)}, there only {doors(folder) - listed[folder]}"


def test_no_program_needs_a_door_that_is_between_rooms():
    between = {f"bankwright/{room}/{name}.hpp" for room, names in listed_doors("between rooms").items() for name in names}
    breaches = []
    for path in project_files(".hpp", ".cpp"):
        for line, name in includes(path):
            if name in between and path.parts[0] in ("apps", "bindings"):
                breaches.append(f"{path}:{line} includes {name}: take it out of that list, and the umbrella has it")
    assert not breaches, "\n".join(breaches)
    for folder, names in listed_doors("between rooms").items():
        assert names <= doors(folder), f"{folder}/ has no {names - doors(folder)}"


def may_look_into(path, room, name):
    """Is `name`, which lies within a room, for this file?"""
    if path.is_relative_to("lib/include/bankwright"):
        return folder_of(path) == room
    if path.is_relative_to(f"tests/unit/{room}") or path.is_relative_to("lib/src"):
        return True
    inner = name.removeprefix("bankwright/")
    return any(inner.startswith(opened) and fnmatch(path, pattern) for opened, patterns in windows().items() for pattern in patterns)


def test_what_lies_within_a_room_is_private_to_it():
    breaches = []
    for path in project_files(".hpp", ".cpp"):
        for line, name in includes(path):
            parts = name.split("/")
            if parts[0] == "bankwright" and len(parts) > 3 and not may_look_into(path, parts[1], name):
                breaches.append(f"{path}:{line} includes {name}, which is private to {parts[1]}/")
    assert not breaches, "\n".join(breaches)


def test_bodies_belong_to_the_header_beside_them():
    """`_inl` means the bodies of the x.hpp beside it: x.hpp includes them, and lib/src."""
    breaches = []
    for header in library_headers():
        if header.stem.endswith("_inl") and not header.with_name(header.name.replace("_inl", "")).exists():
            breaches.append(f"{header} has no header beside it whose bodies these are")
    for path in project_files(".hpp", ".cpp"):
        for line, name in includes(path):
            own = path.is_relative_to("lib/include") and name == path.relative_to("lib/include").as_posix().replace(".hpp", "_inl.hpp")
            if name.startswith("bankwright/") and name.endswith("_inl.hpp") and not own and not path.is_relative_to("lib/src"):
                breaches.append(f"{path}:{line} includes {name}")
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


def test_no_door_shows_what_only_bodies_use():
    """Who includes a door of the compiled library reads no fmt, Eigen, nlohmann/json or toml++, through whatever it includes."""
    graph = {header.relative_to("lib/include").as_posix(): [name for _, name in includes(header)] for header in library_headers()}
    breaches = []
    for room in road():
        for door in sorted(doors(room)):
            found, ahead = set(), [(f"bankwright/{room}/{door}.hpp",)]
            while ahead:
                way = ahead.pop()
                if way[-1].split("/")[0] in ("fmt", "Eigen", "nlohmann", "toml++"):
                    breaches.append(" -> ".join(way))
                elif way[-1] not in found:
                    found.add(way[-1])
                    ahead += [(*way, name) for name in graph.get(way[-1], []) if not name.endswith("_inl.hpp")]
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
