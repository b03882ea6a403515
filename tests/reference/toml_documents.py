"""Random documents by the grammar of TOML 1.0, and the same with a mistake somewhere: what another reader is asked about too.

Source: the grammar of toml.io/en/v1.0.0 (from memory).
"""

BLANKS = ["", "", "", " ", "\t", "  "]
ENDS = ["\n", "\n", "\n", "\r\n"]
LETTERS = "abcXYZ019-_"
SIGNS = ['"', "'", "[", "]", "{", "}", "=", ".", ",", "#", "\n", "\\", "+", "-", "_", "0", ":", "e", "T", " ", "\t", "\r", "\x00", "\x07", "\x7f", "é", "\ufeff"]


class Writer:
    def __init__(self, dice):
        self.dice = dice

    def one(self, *choices):
        return self.dice.choice(choices)

    def blank(self):
        return self.dice.choice(BLANKS)

    def times(self, least, most, make):
        return [make() for _ in range(self.dice.randint(least, most))]

    def digits(self, least=1, most=5):
        text = "".join(self.times(least, most, lambda: self.one(*"0123456789")))
        at = self.dice.randint(0, len(text))
        return text[:at] + "_" + text[at:] if 0 < at < len(text) and self.dice.random() < 0.3 else text

    def whole(self):
        return self.one("", "", "+", "-") + self.one("0", self.one(*"123456789") + self.one("", self.digits()))

    def number(self):
        exponent = self.one("e", "E") + self.one("", "+", "-") + self.one(*"0123456789") + self.one("", "7")
        return self.one(self.whole(), self.whole() + "." + self.digits(), self.whole() + exponent, self.whole() + "." + self.digits() + exponent,
                        "0x" + self.one("0", "dead_BEEF", "7f"), "0o" + self.one("0", "17", "7_7"), "0b" + self.one("0", "1", "10_01"),
                        self.one("", "+", "-") + self.one("inf", "nan"))

    def moment(self):
        date = f"{self.dice.randint(1, 9999):04}-{self.dice.randint(1, 12):02}-{self.dice.randint(1, 29):02}"
        time = f"{self.dice.randint(0, 23):02}:{self.dice.randint(0, 59):02}:{self.dice.randint(0, 59):02}" + self.one("", ".5", ".123456")
        zone = self.one("", "Z", "z", "+01:30", "-23:59")
        return self.one(date, time, date + self.one("T", "t", " ") + time + zone)

    def basic(self, long=False):
        pieces = ["a", " ", "#", "'", "é", "\U0001f600", "\t", "[", "=", "\\n", "\\t", '\\"', "\\\\", "\\u00e9", "\\U0001F600", "\\b"]
        inner = "".join(self.times(0, 6, lambda: self.one(*pieces, *(["\n", '" ', "\\\n  ", "\r\n"] if long else []))))
        return f'"""{inner}"""' if long else f'"{inner}"'

    def literal(self, long=False):
        pieces = ["a", " ", "#", '"', "é", "\\", "\t", "[", "="] + (["\n", "' ", "\r\n"] if long else [])
        quotes = "'" * (3 if long else 1)
        return quotes + "".join(self.times(0, 6, lambda: self.one(*pieces))) + quotes

    def text(self):
        return self.one(self.basic(), self.literal(), self.basic(True), self.literal(True))

    def gap(self):  # between the items of an array: line ends and comments may stand there
        return self.one("", " ", self.blank() + self.one(*ENDS), self.blank() + "# comment" + self.one(*ENDS) + self.blank())

    def array(self, depth):
        items = self.times(0, 3, lambda: self.gap() + self.value(depth + 1) + self.gap())
        return "[" + ",".join(items) + (self.one("", "," + self.gap()) if items else self.gap()) + "]"

    def table(self, depth):
        items = self.times(0, 3, lambda: self.blank() + self.pair(depth + 1) + self.blank())
        return "{" + (",".join(items) if items else self.blank()) + "}"

    def value(self, depth=0):
        deep = [] if depth > 3 else [lambda: self.array(depth), lambda: self.table(depth)]
        return self.one(self.number, self.moment, self.text, lambda: self.one("true", "false"), *deep)()

    def name(self):
        return self.one("".join(self.times(1, 3, lambda: self.one(*LETTERS))), self.basic(), self.literal())

    def key(self):
        return (self.blank() + "." + self.blank()).join(self.times(1, self.one(1, 1, 3), self.name))

    def pair(self, depth=0):
        return self.key() + self.blank() + "=" + self.blank() + self.value(depth)

    def line(self):
        kind = self.dice.random()
        middle = (self.pair() if kind < 0.6 else f"[{self.blank()}{self.key()}{self.blank()}]" if kind < 0.75 else
                  f"[[{self.blank()}{self.key()}{self.blank()}]]" if kind < 0.85 else "")
        return self.blank() + middle + self.blank() + self.one("", "", "# comment é")

    def document(self):
        lines = self.times(1, 8, self.line)
        return "".join(line + self.one(*ENDS) for line in lines[:-1]) + lines[-1] + self.one("", "\n")

    def with_a_mistake(self):
        text = self.document()
        for _ in range(self.dice.randint(1, 2)):
            at = self.dice.randrange(len(text) + 1)
            sign = self.one(*SIGNS)
            text = self.one(text[:at] + sign + text[at:], text[:at] + text[at + 1:], text[:at] + sign + text[at + 1:],
                            text[:at] + text[at:at + 4] * 2 + text[at + 4:])
        return text
