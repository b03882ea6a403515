"""Accuracy: voltages against nodal analysis in quadruple precision; the same cases are tests in tests/reference."""
import ctypes

from measuring import library, value_entry

CASES = (("ordinary conductors, 0.1 to 8 mohm", 1e-4, 8e-3, 1e-14), ("conductors over 6 decades, 1 uohm to 1 ohm", 1e-6, 1.0, 1e-12),
         ("conductors over 18 decades, 1 nohm to 1 Gohm", 1e-9, 1e9, 1e-6))


def goals(quick):
    lib = library("bench_accuracy")
    lib.accuracy_worst.restype = ctypes.c_double
    count = 100 if quick else 1000
    print(f"\n3s4p: worst error of {count} banks, of the largest voltage")
    for who in ("one bank", "lanes"):
        for title, low, high, most in CASES:
            worst = lib.accuracy_worst(who.encode(), count, ctypes.c_double(low), ctypes.c_double(high))
            print(f"{who + ': ' + title:<60}{worst:>10.1e}")
            yield value_entry(f"{who}: {title}", worst, most)
