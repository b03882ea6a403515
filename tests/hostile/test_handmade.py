"""Bank files broken by hand: what editors, copying, spreadsheets, other programs and bad will make of one. @( and )@ stand around the
damage, and are taken out before the file is read: the first finding of that rule must begin there.
"""
import json
import subprocess

import pytest

A = 'A = { chemistry = "agm", voltage = "12 V", capacity = "90 Ah" }\n'
HEAD = "bankwright = 1\n[batteries]\n"

# name: (file, exit status, rule; "" where nothing is wrong)
BROKEN = {
    # Bytes.
    "a byte order mark": (b"\xef\xbb\xbfbankwright = 1\n", 0, ""),
    "two byte order marks": (b"\xef\xbb\xbf@(\xef\xbb\xbf)@bankwright = 1\n", 2, "file/syntax"),
    "a byte order mark on line 2": (b"bankwright = 1\n@(\xef\xbb\xbf)@name = 'x'\n", 2, "file/syntax"),
    "UTF-16, little end first": ("bankwright = 1\n".encode("utf-16-le").join([b"\xff\xfe", b""]), 2, "file/syntax"),
    "UTF-16, big end first": ("bankwright = 1\n".encode("utf-16-be").join([b"\xfe\xff", b""]), 2, "file/syntax"),
    "UTF-16 without a mark": (b"b@(\0)@a\0n\0k\0", 2, "file/syntax"),
    "UTF-32": ("@()@bankwright = 1\n".encode("utf-32"), 2, "file/syntax"),
    "returns and line ends": (b"bankwright = 1\r\n# here\r\n\r\nname = 'x'\r\n[system]\r\n", 0, ""),
    "returns alone": (b"bankwright = 1@(\r)@[batteries]\r", 2, "file/syntax"),
    "a return within a line": (b"bankwright = 1 @(\r)@ \n", 2, "file/syntax"),
    "a return in a comment": (b"# a @(\r)@ b\nbankwright = 1\n", 2, "file/syntax"),
    "a NUL": (b"bankwright = 1\nname = \"a@(\0)@b\"\n", 2, "file/syntax"),
    "a NUL in a comment": (b"bankwright = 1\n# @(\0)@\n", 2, "file/syntax"),
    "a NUL at the end": (b"bankwright = 1\n@(\0)@", 2, "file/syntax"),
    "latin-1": (b"bankwright = 1\nname = \"M@(\xf6)@we\"\n", 2, "file/syntax"),
    "a degree sign of latin-1": (b"bankwright = 1\n[system]\nambient = \"25 @(\xb0)@C\"\n", 2, "file/syntax"),
    "an overlong slash": (b"bankwright = 1\nname = \"@(\xc0)@\xaf\"\n", 2, "file/syntax"),
    "half a surrogate": (b"bankwright = 1\nname = \"@(\xed)@\xa0\x80\"\n", 2, "file/syntax"),
    "beyond Unicode": (b"bankwright = 1\nname = \"@(\xf4)@\x90\x80\x80\"\n", 2, "file/syntax"),
    "a character cut in two": (b"bankwright = 1\nname = \"@(\xe2)@\x82", 2, "file/syntax"),
    "a byte that is never one": (b"@(\xff)@bankwright = 1\n", 2, "file/syntax"),
    "a bell in a text": (b"bankwright = 1\nname = \"@(\x07)@\"\n", 2, "file/syntax"),
    "an escape in a comment": (b"bankwright = 1\n# @(\x1b[2J)@\n", 2, "file/syntax"),
    "a DEL in a text": (b"bankwright = 1\nname = \"@(\x7f)@\"\n", 2, "file/syntax"),
    "a page feed between lines": (b"bankwright = 1\n@(\x0c)@\n", 2, "file/syntax"),
    "a no-break space": ("bankwright = 1\nname @(\u00a0)@= 'x'\n", 2, "file/syntax"),
    "quotation marks of a word processor": ("bankwright = 1\nname = @(\u201c)@x\u201d\n", 2, "file/syntax"),
    "a minus sign of a word processor": (HEAD + "A = { chemistry = 'agm', voltage = '12 V', capacity = '90 Ah', @(temperature = '\u22125 degC')@ }\n", 1, "file/bad-value"),
    "full-width digits": ("bankwright = @(\uff11)@\n", 2, "file/syntax"),
    "a text that turns the line round": (HEAD + "@(\"\u202eA\" = {})@\n", 1, "file/bad-value"),
    "an invisible letter in a name": (HEAD + "@(\"A\u200b\" = {})@\n", 1, "file/bad-value"),
    "a name in Greek": (HEAD + "@(\u0391)@ = {}\n", 2, "file/syntax"),
    # Lines and brackets.
    "nothing at all": ("@()@", 1, "file/missing-key"),
    "one line end": ("@()@\n", 1, "file/missing-key"),
    "a comment alone": ("@()@# nothing", 1, "file/missing-key"),
    "half a key": ("bankw@()@", 2, "file/syntax"),
    "a key without a value": ("bankwright = @()@", 2, "file/syntax"),
    "a value without a key": ("@(=)@ 1\n", 2, "file/syntax"),
    "two values on a line": ("bankwright = 1 @(name)@ = 'x'\n", 2, "file/syntax"),
    "half a header": ("bankwright = 1\n[@(batteries)@\nA = {}\n", 2, "file/syntax"),
    "a header without a name": ("bankwright = 1\n@([])@\n", 2, "file/syntax"),
    "a header of two": ("bankwright = 1\n[batteries]@([cables])@\n", 2, "file/syntax"),
    "one bracket too many": ("bankwright = 1\n@([[batteries])@\n", 2, "file/syntax"),
    "a header with a bracket that is round": ("bankwright = 1\n@([))@\n", 2, "file/syntax"),
    "a header twice": (HEAD + A + "@([batteries])@\nB = {}\n", 2, "file/duplicate-id"),
    "a section that is a value": ("bankwright = 1\n@(batteries = 3)@\n", 1, "file/bad-value"),
    "a section that is an array": ("bankwright = 1\n@([[batteries]])@\nA = {}\n", 1, "file/bad-value"),
    "a part that is a number": (HEAD + "@(A = 3)@\n", 1, "file/bad-value"),
    "a part over two lines": (HEAD + "A = {@()@ chemistry = \"agm\",\n@()@voltage = \"12 V\" }\n", 2, "file/syntax"),
    "a comma at the end of a part": (HEAD + "A = { chemistry = \"agm\"@(, })@\n", 2, "file/syntax"),
    "no comma between two keys": (HEAD + "A = { chemistry = \"agm\" @(voltage)@ = \"12 V\" }\n", 2, "file/syntax"),
    "two commas": (HEAD + "A = { chemistry = \"agm\"@(,,)@ voltage = \"12 V\" }\n", 2, "file/syntax"),
    "a part that is never closed": (HEAD + "A = {@( chemistry = \"agm\"\n)@", 2, "file/syntax"),
    "a text that is never closed": (HEAD + "A = { chemistry = @(\"agm }\n)@", 2, "file/syntax"),
    "a long text that is never closed": ("bankwright = 1\nname = @(\"\"\"x\n\n)@", 2, "file/syntax"),
    "a key twice": ("bankwright = 1\nname = 'a'\n@(name)@ = 'b'\n", 1, "file/duplicate-id"),
    "a part twice": (HEAD + A + "@(A)@ = {}\n", 1, "file/duplicate-id"),
    "a key twice in a part": (HEAD + "A = { chemistry = 'agm', @(chemistry = )@'gel' }\n", 2, "file/duplicate-id"),
    "a part in two sections": (HEAD + A + "[busbars]\n@(A = {})@\n", 1, "file/duplicate-id"),
    "a dotted key over a part": (HEAD + A + "@(A.charge)@ = '90 %'\n", 2, "file/syntax"),
    # Numbers and words.
    "a version as a text": ("@(bankwright = \"1\")@\n", 1, "file/bad-value"),
    "a version of tomorrow": ("@(bankwright = 2)@\n", 2, "file/bad-value"),
    "a version of 64 bits that ends in 1": ("@(bankwright = 4294967297)@\n", 2, "file/bad-value"),
    "a version that overflows": ("bankwright = @(9223372036854775808)@\n", 2, "file/syntax"),
    "a number with a comma": ("bankwright = 1@(,0)@\n", 2, "file/syntax"),
    "a number that begins with 0": ("bankwright = @(01)@\n", 2, "file/syntax"),
    "True, as other languages write it": ("bankwright = 1\n[chargers]\nC = { isolated = @(True)@ }\n", 2, "file/syntax"),
    "null, as other languages write it": ("bankwright = 1\nname = @(null)@\n", 2, "file/syntax"),
    "JSON": ("@({)@\"bankwright\": 1}\n", 2, "file/syntax"),
    "a page of the web": ("@(<)@!doctype html>\n", 2, "file/syntax"),
    "a table with commas": ("id@(,)@voltage\nA,12\n", 2, "file/syntax"),
    "a merge that was left": ("bankwright = 1\n@(<<<<<<<)@ HEAD\nname = 'a'\n=======\n", 2, "file/syntax"),
    "a part list": ("@(bankwright-parts = 1)@\n", 2, "file/not-a-bank"),
    "a key of a prototype": (HEAD + "A = { chemistry = 'agm', voltage = '12 V', capacity = '90 Ah', @(__proto__ = 1)@ }\n", 1, "file/unknown-key"),
    "a pattern that some readers run": ("bankwright = 1\nname = \"%s%n{0}{}$(id)`id`\"\n", 0, ""),
    "an id of a path": (HEAD + "@(\"../../x\" = {})@\n", 1, "file/bad-value"),
    "an id of 10,000 letters": (HEAD + "@(" + "A" * 10_000 + " = {})@\n", 1, "file/too-large"),
    "thirty-three brackets": ("bankwright = 1\nname = " + "[" * 32 + "@([)@" + "]" * 33 + "\n", 2, "file/too-large"),
    "thirty-three dots": ("a.b.c.d.e.f.g.h.i.j.k.l.m.n.o.p.q.r.s.t.u.v.w.x.y.z.a.b.c.d.e.f@(.)@g = 1\n", 2, "file/too-large"),
    "a model of itself": ("bankwright = 1\n[models]\nm = { @(model = 'm')@ }\n", 1, "file/unknown-key"),
    "a model that is not there": (HEAD + "A = { @(model = 'm')@ }\n", 1, "file/bad-value"),
    "a conductor from a post to itself": (HEAD + A + "[cables]\nc = { from = 'A+', @(to = 'A+')@, resistance = '1 ohm' }\n", 1, "file/bad-value"),
    "a conductor to itself": (HEAD + A + "[cables]\nc = { from = 'A+', @(to = 'c')@, resistance = '1 ohm' }\n", 1, "file/unknown-terminal"),
    "an accept of a number": ("bankwright = 1\n@(accept = 3)@\n", 1, "file/bad-value"),
    "an accept without a rule": ("bankwright = 1\n@([[accept]])@\nreason = 'x'\n", 1, "file/missing-key"),
}


def places(data):
    """(the file, (line, column) of the damage's first character, the same of what follows it)"""
    data = data if isinstance(data, bytes) else data.encode("utf-8")
    before, _, rest = data.partition(b"@(")
    inside, mark, after = rest.rpartition(b")@")
    if not mark:
        return data, None, None
    inside = inside.replace(b"@(", b"").replace(b")@", b"")

    def place(text):
        text = text[3:] if text.startswith(b"\xef\xbb\xbf") and not before == b"" else text
        line = text[text.rfind(b"\n") + 1:]
        return text.count(b"\n") + 1, len(line.decode("utf-8", errors="replace")) + 1

    return before + inside + after, place(before), place(before + inside)


@pytest.mark.parametrize("name", BROKEN)
def test_what_is_broken_by_hand(command, tmp_path, name):
    text, status, rule = BROKEN[name]
    data, begin, end = places(text)
    (tmp_path / "x.toml").write_bytes(data)
    done = subprocess.run([command, "check", "x.toml", "--format", "json"], cwd=tmp_path, capture_output=True, timeout=60)
    findings = json.loads(done.stdout)["files"][0]["findings"]
    seen = [(finding["rule"], finding["line"], finding["column"], finding["message"]) for finding in findings]
    assert done.returncode == status, seen
    if not rule:
        assert seen == []
        return
    first = next((one for one in seen if one[0] == rule), None)
    assert first, seen
    assert begin is None or begin <= first[1:3] <= end, (begin, end, seen)
