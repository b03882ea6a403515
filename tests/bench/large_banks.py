"""Invented banks of many equal parts, as text: what a command costs as there are more of one kind."""

HEAD = 'bankwright = 1\nname = "invented, {} {}"\n'
BATTERY = '{ chemistry = "agm", voltage = "12 V", capacity = "100 Ah", resistance = "4 mohm" }'
BREAKER = '[breakers]\nCB = { rating = "60 A", interrupts = "20000 A", voltage = "32 V" }\n'
MOTOR = '[motors]\nM = { voltage = "12 V", current = "40 A" }\n'


def cable(name, begin, end, length="1 ft"):
    return f'{name} = {{ from = "{begin}", to = "{end}", size = "4 AWG", length = "{length}" }}\n'


def main_leads(top, bottom):
    return cable("feed", top, "CB.line", "5 in") + cable("main", "CB.load", "M+", "5 ft") + cable("back", "M-", bottom, "5 ft")


def _two_batteries(count, what, further, parts):
    """Two batteries in parallel, a breaker and a motor, and `further` cables and `parts`."""
    return (HEAD.format(count, what) + f"[batteries]\nB0 = {BATTERY}\nB1 = {BATTERY}\n[cables]\n"
            + cable("p", "B0+", "B1+") + cable("n", "B0-", "B1-") + main_leads("B0+", "B1-") + further + BREAKER + MOTOR + parts)


def parallel(count):
    """So many batteries in parallel, linked one to the next."""
    links = "".join(cable(f"p{i}", f"B{i}+", f"B{i + 1}+") + cable(f"n{i}", f"B{i}-", f"B{i + 1}-") for i in range(count - 1))
    return (HEAD.format(count, "in parallel") + "[batteries]\n" + "".join(f"B{i} = {BATTERY}\n" for i in range(count))
            + "[cables]\n" + links + main_leads("B0+", f"B{count - 1}-") + BREAKER + MOTOR)


def tied(count):
    """So many strings of two, tied to the next at both ends and at mid-height."""
    bank = HEAD.format(count, "tied strings") + "[batteries]\n" + "".join(f"A{i} = {BATTERY}\nB{i} = {BATTERY}\n" for i in range(count)) + "[cables]\n"
    bank += "".join(cable(f"j{i}", f"A{i}+", f"B{i}-") for i in range(count))
    for i in range(count - 1):
        bank += cable(f"p{i}", f"B{i}+", f"B{i + 1}+") + cable(f"m{i}", f"A{i}+", f"A{i + 1}+") + cable(f"n{i}", f"A{i}-", f"A{i + 1}-")
    return bank + main_leads("B0+", "A0-") + BREAKER + MOTOR.replace('"12 V"', '"24 V"')


def series(count):
    """So many cells in series."""
    cells = "".join(f'B{i} = {{ chemistry = "flooded", cells = 1, capacity = "100 Ah", resistance = "1 mohm" }}\n' for i in range(count))
    jumpers = "".join(cable(f"j{i}", f"B{i}+", f"B{i + 1}-") for i in range(count - 1))
    return (HEAD.format(count, "in series") + "[batteries]\n" + cells + "[jumpers]\n" + jumpers + "[cables]\n"
            + main_leads(f"B{count - 1}+", "B0-").replace("M+", "L+").replace("M-", "L-") + BREAKER + '[loads]\nL = { current = "40 A" }\n')


def motors(count):
    """So many motors on two batteries."""
    return _two_batteries(count, "motors", "".join(cable(f"m{i}p", "CB.load", f"M{i}+") + cable(f"m{i}n", f"M{i}-", "B1-") for i in range(count)),
                          "".join(f'M{i} = {{ voltage = "12 V", current = "2 A" }}\n' for i in range(count)))


def loads(count):
    """So many loads on two batteries."""
    return _two_batteries(count, "loads", "".join(cable(f"l{i}p", "CB.load", f"L{i}+") + cable(f"l{i}n", f"L{i}-", "B1-") for i in range(count)),
                          "[loads]\n" + "".join(f'L{i} = {{ current = "0.2 A" }}\n' for i in range(count)))


def chargers(count):
    """So many chargers at work on two batteries."""
    return _two_batteries(count, "chargers", "".join(cable(f"c{i}p", f"C{i}.1+", "B0+") + cable(f"c{i}n", f"C{i}.1-", "B1-") for i in range(count)),
                          "[chargers]\n" + "".join(f'C{i} = {{ voltage = "14.4 V", current = "10 A", connected = true }}\n' for i in range(count)))
