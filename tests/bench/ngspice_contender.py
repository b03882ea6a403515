"""The same banks solved by ngspice, loaded into this process: every parameter altered, one operating point a bank."""
import ctypes
import ctypes.util


class VectorInfo(ctypes.Structure):
    _fields_ = [("name", ctypes.c_char_p), ("type", ctypes.c_int), ("flags", ctypes.c_short),
                ("real", ctypes.POINTER(ctypes.c_double)), ("complex", ctypes.c_void_p), ("length", ctypes.c_int)]


class Ngspice:
    """None of its messages are shown; a wrong answer shows when the answers are compared."""

    def __init__(self, network):
        name = ctypes.util.find_library("ngspice")
        if not name:
            raise OSError("libngspice was not found")
        self.lib = ctypes.CDLL(name)
        self.lib.ngGet_Vec_Info.restype = ctypes.POINTER(VectorInfo)
        text = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.c_char_p, ctypes.c_int, ctypes.c_void_p)
        leave = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.c_int, ctypes.c_bool, ctypes.c_bool, ctypes.c_int, ctypes.c_void_p)
        self.kept = [text(lambda *_: 0), text(lambda *_: 0), leave(lambda *_: 0)]  # must outlive the library's use
        self.lib.ngSpice_Init(*self.kept, None, None, None, None)
        self.network = network
        node = lambda n: "0" if n == network.reference else f"n{n}"
        lines = ["bank"]
        for b, (start, end) in enumerate(network.branches):
            middle = f"m{b}" if network.emf[b] >= 0 else node(end)
            lines.append(f"R{b} {node(start)} {middle} 1")
            if network.emf[b] >= 0:
                lines.append(f"V{b} {node(end)} {middle} 1")
        lines += [f"I0 {node(network.load)} 0 1", ".options reltol=1e-12 abstol=1e-15 vntol=1e-12", ".end"]
        array = (ctypes.c_char_p * (len(lines) + 1))(*[line.encode() for line in lines], None)
        self.lib.ngSpice_Circ(array)

    def command(self, text):
        self.lib.ngSpice_Command(text.encode())

    def solve(self, rows):
        """Volts by bank and node, as lists."""
        network, answers = self.network, []
        for row in rows:
            for b in range(len(network.branches)):
                self.command(f"alter R{b} = {float(row[b])!r}")
                if network.emf[b] >= 0:
                    self.command(f"alter V{b} = {float(row[network.emf[b]])!r}")
            self.command(f"alter I0 = {float(row[-1])!r}")
            self.command("op")
            answers.append([0.0 if n == network.reference else
                            self.lib.ngGet_Vec_Info(f"n{n}".encode()).contents.real[0] for n in range(network.nodes)])
            self.command("destroy all")
        return answers
