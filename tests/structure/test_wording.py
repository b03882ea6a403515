"""Is everything finished, named for what it is, and free of the machine it was written on?"""
import functools
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
    (r"\b(turn(ed|s|ing)?( it| the battery|s? `[^`]+`)?|(wrong|other|same) way|goes) round\b", "around: `round` is British here", ()),
    (r"\bput (this |that |it |them )?right\b", "correct: nobody says `put right` on an American dock", ()),
]
MESSAGES_BANNED = [  # in what is printed, told from comments by its quotes
    (r"\bexchange (the|its|what)\b|\bare exchanged\b", "swap: a rigger who reads `exchange the conductors` buys new ones"),
    (r"\bfor want of\b|whatever little|\bhang in the air|without end\b", "plain words: as nothing is stated, however little, keeps driving"),
    (r"\bis no (gauge|section|name for|model|terminal|cross-section|accuracy|number|SAE)|which is no\b", "is not a"),
    (r"stands? (once|twice)\b|take (this|that|one of|it)\b[^.]* out\b", "is there twice; remove"),
    (r"\bmend\b", "correct: a file is not mended"),
    (r"d\.c\.|a\.c\.", "DC, AC"),
    (r"\bnameplates behind\b|all that is behind it", "downstream: behind is a place in the boat"),
    (r"least voltage|lives? through|taken for granted|inside resistance|in the end, not", "minimum, survive, assumptions, internal resistance, at the end"),
    (r"battery full\b(?! (after|from|at|in))|\bbears? ", "fully charge; carry, withstand"),
    (r"with every load off [`a{]", "a comma after a clause that opens a sentence: `with every load off, ...`"),
    (r"% of it are|\{\} (are|were) (lost|asked for)", "an amount is singular: 1.9 V is lost"),
    (r"passed over|look for these rules", "ignored, check only: `skip` is an option's name"),
    (r"nobody's judgment|rinse eyes at once, long", "do not replace judgment; flush for 15 minutes, and get medical help"),
    (r"\bshall\b|says how it is used|\b[Ww]rite (it|them|the findings|the bank file) into\b", "must, shows how to use it, write to"),
    (r"in a inline", "an inline: the parser's own words are corrected too"),
]
SITE = re.compile(r"\b[a-z0-9-]+\.(com|org|cn|us|net|io|codes|edu|info|gov)\b")
STANDARD_SITES = re.compile(r"www\.w3\.org|json-schema\.org|docs\.oasis-open\.org|opensource\.org")
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


@functools.cache
def printed_texts():
    """Every text between quotes of the library, the command and the module: a list of (file, text), neighbors joined as the compiler does."""
    texts = []
    for path in project_files(".hpp", ".cpp"):
        if path.parts[0] not in ("lib", "apps", "bindings") or "tables" in path.parts or path.as_posix() in THIRD_PARTY: continue
        source = re.sub(r"^\s*(#include|//).*$", "", read(path), flags=re.M)
        for found in re.finditer(r'(?:"(?:[^"\\\n]|\\.)*"\s*)+', source):
            texts.append((path, "".join(re.findall(r'"((?:[^"\\\n]|\\.)*)"', found.group()))))
    return texts


@pytest.mark.parametrize("words, why", MESSAGES_BANNED, ids=[why for _, why in MESSAGES_BANNED])
def test_nothing_is_printed_that_a_rigger_misreads(words, why):
    found = [f"{path}: {text[:120]}" for path, text in printed_texts() if re.search(words, text)]
    assert not found, f"{why}\n" + "\n".join(found)


def test_sites_are_named_where_the_sources_stand_and_nowhere_else():
    """tests/standards cites; tables, rules, reports and documents say of what kind a source was."""
    found = [line for line in lines_that_match(SITE, only=("lib/", "apps/", "bindings/bankwright/", "data/tables/", "notebooks/", "README.md", "DEVELOPERS.md"),
                                               but=THIRD_PARTY) if not STANDARD_SITES.search(line)]
    assert not found, "\n".join(found)


def test_one_name_is_one_boat():
    """"Dunlin, a 14-ft skiff with a radio" may be the skiff with the bow motor; a 17-ft lake boat is another."""
    boats = {}
    for path in project_files(".toml", ".md", ".ipynb", ".py", ".cpp", ".hpp"):
        for name, hull in re.findall(r"\b([A-Z][a-z]+)\*?,? (?:is an invented |an? )(\d+-(?:ft|foot) [a-z]+)", read(path)):
            boats.setdefault(name, set()).add(hull.replace("foot", "ft"))
    assert len(boats) > 20 and not {name: hulls for name, hulls in boats.items() if len(hulls) > 1}


def test_every_notebook_says_the_caution_once_in_one_line():
    line = "*Before you touch a bank, disconnect it and read the cautions on its hook-up sheet; local codes and licensed practice decide.*"
    for path in project_files(".ipynb"):
        assert read(path).count(line) == 1 and read(path).count("local codes") == 1, path


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
