"""Bank files broken by a machine: a rich one cut off at every byte, each of its values and parts replaced by what does not belong
there, bytes changed, lines taken out, doubled and exchanged; and files that
are large in one way or another.

A breakage knows where it is, so that it can be asked whether a finding lies on it. Which text is TOML at all says Python's own
reader, which shares nothing with ours.
"""
import datetime
import random
import re
import tomllib
from dataclasses import dataclass
from pathlib import Path

RICH = (Path(__file__).resolve().parent / "rich.toml").read_bytes()

# What a value is replaced by, as it stands in the file.
NASTY = {
    "empty": '""', "blank": '"   "', "no unit": '"12"', "only a unit": '"V"', "wrong unit": '"12 parsec"', "two units": '"12 V A"',
    "huge": '"1e308 V"', "beyond huge": '"1e999 V"', "tiny": '"5e-324 V"', "below tiny": '"1e-999 ohm"', "minus": '"-12 V"',
    "minus zero": '"-0 V"', "nan text": '"nan V"', "inf text": '"inf V"', "hexadecimal": '"0x1p3 V"', "comma": '"12,5 V"',
    "thousands": '"12,000 V"', "two points": '"1.2.3 V"', "letters": '"lots"', "NUL": '"a\\u0000b"', "escape": '"\\u001b[2J"',
    "bell": '"\\u0007"', "bidi": '"\\u202E12 V\\u202C"', "isolate": '"\\u2066x\\u2069"', "C1": '"\\u009b31m"', "no character": '"\\uFFFF"',
    "zalgo": '"' + "Z" + "\u0301" * 300 + '"', "10 kB": '"' + "x" * 10_000 + '"', "10 kB of digits": '"' + "9" * 10_000 + ' V"',
    "many lines": '"""' + "\n" * 50 + '"""', "percent": '"101 %"', "tolerance": '"4 mohm +/- 95 %"', "self": '"A+"', "script": '"<script>"',
    "integer": "7", "zero": "0", "negative": "-3", "2^31": "2147483648", "2^32 + 1": "4294967297", "2^63 - 1": "9223372036854775807",
    "float": "1.5", "float huge": "1e400", "nan": "nan", "inf": "-inf", "float -0": "-0.0", "true": "true", "date": "2024-02-29",
    "no such date": "2023-02-29", "time": "12:00:00", "date and time": "2024-02-29T12:00:00Z", "array": "[1, 2]", "empty array": "[]",
    "mixed array": '[1, "a", {}]', "table": "{ a = 1 }", "empty table": "{}", "nested": "[" * 31 + "]" * 31, "too nested": "[" * 40 + "]" * 40,
    "2^63": "9223372036854775808", "octal": "017", "underscores": "1__0", "bare word": "lots", "nothing": "", "open text": '"12 V',
    "open array": "[1, 2", "open table": "{ a = 1", "bad escape": '"\\q"', "half a surrogate": '"\\uD800"', "plus plus": "++1",
}

ORDINARY_TEXT = {"name", "color", "class", "reason", "rule", "part"}  # keys that any text will do for


@dataclass
class Breakage:
    name: str
    data: bytes
    line: int = 0          # of the damage; 0: not known
    column: int = 0        # the first that the damage may be blamed on, in characters
    end_column: int = 0    # exclusive
    lines: int = 1         # that the damage goes over
    sort: str = ""         # of the value before: "text", "integer", ...; "" for what is no value
    key: str = ""

    def document(self):
        """As TOML, or None if it is none."""
        try:
            return tomllib.loads(self.data.decode("utf-8").replace("\r\n", "\n"))
        except (UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError, ValueError):
            return None


def sort_of(value):
    for kind, word in ((bool, "boolean"), (int, "integer"), (float, "float"), (str, "text"), (datetime.datetime, "date and time"),
                       (datetime.date, "date"), (datetime.time, "time"), (list, "array"), (dict, "table")):
        if isinstance(value, kind):
            return word
    raise TypeError(value)


def values(text):
    """(line, first column of the key, key, first column of the value, value) of every value of the rich file, and of its parts."""
    for number, line in enumerate(text.splitlines(), 1):
        if line.startswith("#"):
            continue
        for found in re.finditer(r'([\w-]+)\s*=\s*("[^"]*"|\[\]|\{.*\}|[\w.-]+)', line):
            yield number, found.start(1) + 1, found[1], found.start(2) + 1, found[2]
            if found[2].startswith("{"):
                shift = found.start(2)
                for inner in re.finditer(r'([\w-]+)\s*=\s*("[^"]*"|[\w.-]+)', found[2]):
                    yield number, shift + inner.start(1) + 1, inner[1], shift + inner.start(2) + 1, inner[2]


def replaced_values():
    lines = RICH.decode().splitlines(keepends=True)
    for number, key_column, key, column, value in values(RICH.decode()):
        sort = sort_of(tomllib.loads(f"x = {value}")["x"])
        for name, nasty in NASTY.items():
            line = lines[number - 1]
            broken = line[:column - 1] + nasty + line[column - 1 + len(value):]
            data = "".join(lines[:number - 1] + [broken] + lines[number:]).encode()
            yield Breakage(f"line {number}, {key}: {name}", data, number, key_column, column + max(len(nasty), 1), 1 + nasty.count("\n"),
                           sort, key)


def cut_off():
    for length in range(len(RICH)):
        yield Breakage(f"cut off after {length} bytes", RICH[:length])


def changed_bytes(dice, count):
    """One to three bytes changed, put in or taken out, most of them such as mean something."""
    meaning = b"\"'[]{}=.,#\n\r\t\\ +-_%\x00\x1b\x7f\x80\xc3\xe2\xff\xef\xbb\xbf09aAeE"
    for number in range(count):
        data = bytearray(RICH)
        for _ in range(dice.randint(1, 3)):
            at = dice.randrange(len(data))
            byte = dice.choice(meaning) if dice.random() < 0.8 else dice.randrange(256)
            kind = dice.randrange(3)
            data[at:at + (kind != 0)] = bytes([byte]) if kind != 2 else b""
        yield Breakage(f"changed bytes {number}", bytes(data))


def changed_lines(dice, count):
    lines = RICH.splitlines(keepends=True)
    for number in range(count):
        broken = list(lines)
        for _ in range(dice.randint(1, 4)):
            at, other = dice.randrange(len(broken)), dice.randrange(len(broken))
            kind = dice.randrange(5)
            if kind == 0:
                del broken[at]
            elif kind == 1:
                broken.insert(other, broken[at])
            elif kind == 2:
                broken[at], broken[other] = broken[other], broken[at]
            elif kind == 3:
                broken[at] = broken[at].rstrip(b"\n")
            else:
                cut = dice.randrange(len(broken[at]) + 1)
                broken[at] = broken[at][:cut] + broken[other][min(cut, len(broken[other])):]
        yield Breakage(f"changed lines {number}", b"".join(broken))


HEAD = b"bankwright = 1\n"
BATTERY = b'{ voltage = "12 V", emf = "12 V", resistance = "1 mohm" }\n'
BREAKER = b'{ rating = "60 A" }\n'


def parts(section, count, text):
    """A section with so many parts; `text` says each part's line by its number."""
    return b"[" + section + b"]\n" + b"".join(text(i) for i in range(count))


def batteries(count):
    return parts(b"batteries", count, lambda i: b"b%d = " % i + BATTERY)


def breakers(count):
    return parts(b"breakers", count, lambda i: b"k%d = " % i + BREAKER)


def runs(section, *ends):
    """Conductors, by what they land on."""
    return parts(section, len(ends), lambda i: b'%s%d = { from = "%s", to = "%s", resistance = "1 mohm" }\n' % (section[:1], i, *ends[i]))


def on_posts(count, pair):
    return [(b"%s%s" % (a, sign), b"%s%s" % (b, sign)) for a, b in map(pair, range(count)) for sign in (b"+", b"-")]


def behind_breakers(count):
    """Each breaker's feed, from the one before."""
    return [(b"k%d.load" % (i - 1) if i else b"b0+", b"k%d.line" % i) for i in range(count)]


def loads(count):
    return parts(b"loads", count, lambda i: b'l%d = { power = "1 W" }\n' % i)


# Large in one way, with little in it: name -> what gives the bytes.
LARGE = {f"100 MB of {what}": lambda byte=byte: byte * 100_000_000 for what, byte in
         {"blanks": b" ", "line ends": b"\n", "a comment": b"#", "NUL": b"\0", "tabs": b"\t", "quotes": b'"'}.items()}
LARGE |= {name: lambda body=body: HEAD + body() + b"\n" for name, body in {
    "a million blanks": lambda: b" " * 1_000_000,
    "a million line ends": lambda: b"\n" * 1_000_000,
    "a million returns": lambda: b"\r\n" * 500_000,
    "a comment of a million": lambda: b"#" * 1_000_000,
    "a million quotes": lambda: b'"' * 1_000_000,
    "a million apostrophes": lambda: b"'" * 1_000_000,
    "a million brackets": lambda: b"x = " + b"[" * 1_000_000,
    "a million braces": lambda: b"x = " + b"{a=" * 333_000,
    "a long name": lambda: b'name = "' + b"x" * 1_000_000 + b'"',
    "a long key": lambda: b"x" * 1_000_000 + b" = 1",
    "a long number": lambda: b"x = " + b"9" * 1_000_000,
    "a long fraction": lambda: b'[system]\nvoltage = "0.' + b"9" * 1_000_000 + b' V"',
    "a long exponent": lambda: b'[system]\nvoltage = "1e' + b"9" * 1_000_000 + b' V"',
    "a long array": lambda: b"name = [" + b"1," * 500_000 + b"]",
    "a long chain of dots": lambda: b"a" + b".a" * 500_000 + b" = 1",
    "escapes": lambda: b'name = "' + b"\\u202e" * 160_000 + b'"',
    "90,000 sections": lambda: b"".join(b"[t%d]\n" % i for i in range(90_000)),
    "90,000 accepts": lambda: b"[[accept]]\n" * 90_000,
    "90,000 batteries": lambda: parts(b"batteries", 90_000, lambda i: b"b%d={}\n" % i),
    "100,000 whole batteries": lambda: batteries(100_000),
    "a battery 100,000 times": lambda: b"[batteries]\n" + b"A={}\n" * 100_000,
    "findings without end on one line": lambda: b"batteries = { z = {" + b" " * 900_000 + b"y = 1 }" +
        b"".join(b', b%d = { voltage = "1", x = 1 }' % i for i in range(1_900)) + b" }",
    # As many parts as are read, in the shapes that searches would take longest over.
    "a long string": lambda: batteries(950) + runs(b"jumpers", *((b"b%d+" % i, b"b%d-" % (i + 1)) for i in range(949))),
    "a ring": lambda: batteries(950) + runs(b"jumpers", *((b"b%d+" % i, b"b%d-" % ((i + 1) % 950)) for i in range(950))),
    "a ring that is searched": lambda: batteries(150) + runs(b"jumpers", *((b"b%d+" % i, b"b%d-" % ((i + 1) % 150)) for i in range(150))),
    "all parallel": lambda: batteries(660) + runs(b"jumpers", *on_posts(659, lambda i: (b"b%d" % i, b"b%d" % (i + 1)))),
    "all on one": lambda: batteries(660) + runs(b"jumpers", *on_posts(659, lambda i: (b"b%d" % (i + 1), b"b0"))),
    "all loose": lambda: batteries(1990),
    "every post on every post": lambda: batteries(43) + runs(b"jumpers", *((b"b%d+" % i, b"b%d-" % k) for i in range(43) for k in range(43))),
    "breakers on nothing": lambda: breakers(1990),
    "breakers in a row": lambda: batteries(1) + breakers(980) + runs(b"cables", *behind_breakers(980)),
    "a load behind every breaker": lambda: batteries(1) + breakers(490) + loads(490) + runs(b"cables", *behind_breakers(490)) +
        runs(b"jumpers", *((b"k%d.load" % i, b"l%d+" % i) for i in range(490))),
    "a load behind every breaker, and back": lambda: batteries(1) + breakers(390) + loads(390) + runs(b"cables", *behind_breakers(390)) +
        runs(b"jumpers", *((b"k%d.load" % i, b"l%d+" % i) for i in range(390)), *((b"l%d-" % i, b"b0-") for i in range(390))),
    "660 loads": lambda: batteries(1) + loads(660) + runs(b"cables", *on_posts(660, lambda i: (b"b0", b"l%d" % i))),
    "busbars in a row": lambda: batteries(1) + parts(b"busbars", 660, lambda i: b"s%d = { studs = 2 }\n" % i) + breakers(1) +
        runs(b"cables", (b"b0+", b"k0.line"), (b"k0.load", b"s0"), *((b"s%d" % i, b"s%d" % (i + 1)) for i in range(659))),
}.items()}


def everything(seed=1):
    dice = random.Random(seed)
    yield from replaced_values()
    yield from cut_off()
    yield from changed_bytes(dice, 1500)
    yield from changed_lines(dice, 1500)
