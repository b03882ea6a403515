"""Is everything finished, named for what it is, and free of the machine it was written on?"""
import re
from pathlib import Path

import pytest
from project import project_files, read

UNFINISHED = re.compile(r"\b(TODO|FIXME|XXX|HACK|WIP|not (yet )?implemented|unimplemented|lorem ipsum|coming soon)\b", re.I)
SOMEBODYS_FOLDER = re.compile(r"(?<![\w.])/(?:home|work|Users|root)/\w")
VAGUE = {"utils", "util", "misc", "impl", "detail", "details", "common", "helpers", "auxiliary"}
TEXT = (".hpp", ".cpp", ".py", ".sh", ".txt", ".md", ".toml", ".ipynb", ".json", ".cmake", ".in", ".mjs", ".js", ".html")
THIS = Path("tests/structure/test_wording.py")

# Words that are not used here, and why: (pattern, what is said instead and why, where it may stand all the same).
AMERICAN = "American spelling"
ALIASES = ("lib/include/bankwright/units/unit_spelling_inl.hpp", "tests/unit/units/parse_test.cpp")  # what a user may write
THIRD_PARTY = ("lib/include/bankwright/config/reader/toml.hpp", "LICENSE")
BANNED = [
    (r"colour|\bgrey|harbour|neighbour|behaviour|favour|honour|labour|vapour|flavour", f"{AMERICAN}: color, gray, harbor", ()),
    (r"(?<![a-z])(kilo|centi|milli)?metres?(?![a-z])|(?<![a-z])litres?(?![a-z])", f"{AMERICAN}: meter, liter", ALIASES),
    (r"\bcentred?\b|\bcentres\b|\bfibre|\btheatre", f"{AMERICAN}: center, fiber", ()),
    (r"(equal|recogn|normal|linear|factor|optim|minim|maxim|summar|initial|organ|real|character|synchron|discret|vector|visual"
     r"|serial|util|standard|general|stabil|author)is(e[ds]?|ing|ations?|er)\b", f"{AMERICAN}: -ize", ()),
    (r"\b(un)?labelled(?!by)|modelled|moulded|travelled|cancelled|signalled|levelled|fuelled", f"{AMERICAN}: one l", ()),
    (r"aluminium|jewellery|judgement|catalogue|earthed|programme\b|licence|\btyre|\bkerb|\bplough|sulph[au]", AMERICAN, ()),
    (r"\b(mis)?spelt\b|\bspoilt\b|\blearnt\b|\bburnt\b|\btowards\b|\bwhilst\b|\bamongst\b|\bmains (charger|power|lead)", AMERICAN, ()),
    (r"wiring/split-bank|wiring/partial-tie|wiring/short-loop|conductor/thin-jumper|connection/hot-joint",
     "a rigger misread these ids; nothing is released under them", ()),
    (r"take[-_]off|TakeOff|taken off", "main lead posts, main leads; `remove` for taking something off: one word, one meaning", ()),
    (r"as[ _]drawn\b|so drawn|is let vary|drawn_bank|--draws", "as described, samples: `draws` is said of current alone", ()),
    (r"before closing any breaker", "a short through batteries flows as soon as the last lead touches, breaker open or not", ()),
    (r"take a battery lead off|it will spark", "nobody breaks a short by hand beside batteries that gas: keep clear", ()),
    (r"never ended|bears it", "nothing opens; the wire is spoiled after 0.24 s: what a rigger says", ()),
    (r"(every|each) rule is content|rules have (some|any)thing against", "passes every rule; rules set off", ()),
    (r"\bright to [0-9{]", "accurate to: a meter is not right to 0.5 %", ()),
    (r"have done what they can", "charging has ended", ()),
    (r"is no time above", "must be above 0", ()),
    (r"\b(is|{}) are wanted|\d+ (h|min|A|V) are wanted", "1 h is wanted", ()),
    (r"nothing that was thought of", "no fault that was tried fits these readings", ()),
    (r"date of make\b", "date of manufacture", ()),
]
ELSEWHERE_BANNED = [  # outside tests, where a citation names its author
    (r"kuphaldt", "authors of books stand in the citations of tests, not in rules, reports or documents",
     ("lib/", "apps/", "bindings/", "data/", "notebooks/", "README.md", "DEVELOPERS.md")),
    (r"\b(Xeon|EPYC|Ryzen|Intel|AMD)\b", "a benchmark names what its ratios hang on, no brand of processor", ("tests/bench/", "README.md")),
]


def lines_that_match(pattern, but=(), only=("",)):
    return [f"{path}:{number}: {line.strip()[:120]}" for path in project_files(*TEXT)
            if path != THIS and path.as_posix() not in but and path.as_posix().startswith(tuple(only))
            for number, line in enumerate(read(path).splitlines(), 1) if pattern.search(line)]


def test_nothing_is_left_unfinished():
    assert not (found := lines_that_match(UNFINISHED)), "\n".join(found)


def test_no_file_knows_the_machine_it_was_written_on():
    assert not (found := lines_that_match(SOMEBODYS_FOLDER)), "\n".join(found)


@pytest.mark.parametrize("words, why, but", BANNED, ids=[why for _, why, _ in BANNED])
def test_no_word_is_used_that_somebody_stumbled_over(words, why, but):
    found = lines_that_match(re.compile(words, re.I), (*but, *THIRD_PARTY))
    found += [str(path) for path in project_files() if re.search(words, path.as_posix(), re.I)]
    assert not found, f"{why}\n" + "\n".join(found)


@pytest.mark.parametrize("words, why, where", ELSEWHERE_BANNED, ids=[why for _, why, _ in ELSEWHERE_BANNED])
def test_no_name_is_named_that_is_nobodys_business(words, why, where):
    found = lines_that_match(re.compile(words), only=where) + [str(path) for path in project_files() if re.search(words, path.as_posix(), re.I)]
    assert not found, f"{why}\n" + "\n".join(found)


def test_one_name_is_one_boat():
    """Of the examples and notebooks: a boat of one name is of one length and kind."""
    boats = {}
    for path in project_files(".toml", ".ipynb"):
        if path.parts[0] in ("data", "notebooks"):
            for name, kind in re.findall(r'name = "(\w+), (an? [^"]+)"', read(path)):
                boats.setdefault(name, set()).add(kind)
    assert boats and not {name: kinds for name, kinds in boats.items() if len(kinds) > 1}


def test_names_say_what_is_inside():
    vague = [str(path) for path in project_files() if VAGUE & {*path.parent.parts, path.stem}]
    assert not vague, "\n".join(vague)


def test_file_names_are_snake_case():
    odd = [str(path) for path in project_files(".hpp", ".cpp", ".py") if not re.fullmatch(r"[a-z_][a-z0-9_]*", path.stem)]
    assert not odd, "\n".join(odd)


def test_doctest_names_hide_no_test():
    """CTest takes `;` in a name for a separator, and a skip needs a reason that is printed when it is met."""
    breaches = []
    for path in project_files(".cpp"):
        for number, line in enumerate(read(path).splitlines(), 1):
            if (name := re.search(r'(?:TEST_CASE|SUBCASE)\("([^"]*)"', line)) and ";" in name.group(1):
                breaches.append(f"{path}:{number}: `;` in a name")
            if re.search(r"doctest::(skip|may_fail|should_fail|expected_failures)\b", line):
                breaches.append(f"{path}:{number}: a test that may fail or be skipped reads green")
    assert not breaches, "\n".join(breaches)
