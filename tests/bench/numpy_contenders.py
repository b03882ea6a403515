"""The same banks solved in Python: NumPy one matrix at a time and batched, NumPy elimination over arrays of banks, SciPy."""
import numpy as np
import scipy.sparse
import scipy.sparse.linalg


class Network:
    """Wiring of a bank: node pairs, which parameter is what. The reference is left out of the matrices."""

    def __init__(self, branches, emf, reference, load, parameters, nodes):
        self.branches, self.emf, self.reference, self.load = branches, emf, reference, load
        self.parameters, self.nodes = parameters, nodes
        self.rows = np.array([n for n in range(nodes) if n != reference])
        size = len(self.rows)
        place = {node: row for row, node in enumerate(self.rows)}
        incidence = np.zeros((len(branches), size))
        for b, (start, end) in enumerate(branches):
            if start in place:
                incidence[b, place[start]] = 1.0
            if end in place:
                incidence[b, place[end]] = -1.0
        self.incidence = incidence
        self.outer = np.einsum("bi,bj->bij", incidence, incidence).reshape(len(branches), size * size)
        self.with_emf = np.flatnonzero(emf >= 0)
        self.load_row = place[load]

    def right_hand_side(self, rows, g):
        right = -(g[:, self.with_emf] * rows[:, self.emf[self.with_emf]]) @ self.incidence[self.with_emf]
        right[:, self.load_row] -= rows[:, -1]
        return right

    def assemble(self, rows):
        g = 1.0 / rows[:, :len(self.branches)]
        size = len(self.rows)
        return (g @ self.outer).reshape(-1, size, size), self.right_hand_side(rows, g)

    def all_nodes(self, left):
        volts = np.zeros((len(left), self.nodes))
        volts[:, self.rows] = left
        return volts


def dense_one_by_one(network, rows):
    matrices, right = network.assemble(rows)
    return network.all_nodes(np.array([np.linalg.solve(m, r) for m, r in zip(matrices, right)]))


def dense_batched(network, rows):
    matrices, right = network.assemble(rows)
    return network.all_nodes(np.linalg.solve(matrices, right[:, :, None])[:, :, 0])


def scipy_sparse(network, rows):
    """The pattern is built once; each bank fills the values of its matrix and calls spsolve."""
    size = len(network.rows)
    pattern = scipy.sparse.csc_matrix((network.outer != 0).any(axis=0).reshape(size, size).astype(float))
    where = pattern.nonzero()
    terms = network.outer.reshape(-1, size, size)[:, where[0], where[1]]
    order = np.lexsort((where[0], where[1]))
    g = 1.0 / rows[:, :len(network.branches)]
    values, right = g @ terms[:, order], network.right_hand_side(rows, g)
    left = np.empty((len(rows), size))
    for i in range(len(rows)):
        pattern.data[:] = values[i]
        left[i] = scipy.sparse.linalg.spsolve(pattern, right[i])
    return network.all_nodes(left)


class Elimination:
    """Star-mesh elimination, every value an array over banks: what NumPy can do at its best. Steps are planned once and
    bound to rows of arrays that exist already, so that nothing is allocated or looked up on the way."""

    CHUNK = 4096  # the fastest of 256 to 8192 tried: fewer pay for Python, more leave the cache

    def __init__(self, network):
        self.network = network
        near = {n: set() for n in range(network.nodes)}
        for start, end in network.branches:
            near[start].add(end)
            near[end].add(start)
        slots, steps = {}, []

        def slot_of(a, b):
            return slots.setdefault((min(a, b), max(a, b)), len(slots))

        left = set(near) - {network.reference}
        while left:
            node = min(left, key=lambda n: (len(near[n]), n))
            around = sorted(near[node])
            steps.append((node, [(n, slot_of(node, n)) for n in around],
                          [(i, j, slot_of(around[i], around[j]))
                           for i in range(len(around)) for j in range(i + 1, len(around))]))
            for n in around:
                near[n] |= set(around) - {n}
                near[n].discard(node)
            left.remove(node)
        self.slots, self.steps = slots, steps
        self.of_branch = [slot_of(a, b) for a, b in network.branches]
        self.bound = {}

    def bind(self, count):
        network = self.network
        c, b = np.zeros((len(self.slots), count)), np.zeros((network.nodes, count))
        g, share = np.zeros((len(network.branches), count)), np.zeros((len(self.slots), count))
        fixed = {network.reference}
        steps = [(b[node], [(c[slot], share[slot], None if n in fixed else b[n]) for n, slot in around],
                  [(share[around[i][1]], c[around[j][1]], c[slot]) for i, j, slot in pairs])
                 for node, around, pairs in self.steps]
        return c, b, g, steps, np.empty(count), np.empty(count)

    def solve(self, rows):
        volts = np.empty((len(rows), self.network.nodes))
        for begin in range(0, len(rows), self.CHUNK):
            part = rows[begin:begin + self.CHUNK]
            volts[begin:begin + self.CHUNK] = self.solve_chunk(np.ascontiguousarray(part.T)).T
        return volts

    def solve_chunk(self, p):
        count, network = p.shape[1], self.network
        if count not in self.bound:
            self.bound[count] = self.bind(count)
        c, b, g, steps, total, term = self.bound[count]
        add, multiply = np.add, np.multiply
        c[:] = 0.0
        b[:] = 0.0
        np.reciprocal(p[:len(network.branches)], out=g)
        for branch, slot in enumerate(self.of_branch):
            c[slot] += g[branch]
        for branch in network.with_emf:
            multiply(g[branch], p[network.emf[branch]], out=term)
            b[network.branches[branch][0]] -= term
            b[network.branches[branch][1]] += term
        b[network.load] -= p[-1]
        for own, around, pairs in steps:
            np.copyto(total, around[0][0])
            for conductance, _, _ in around[1:]:
                add(total, conductance, out=total)
            np.reciprocal(total, out=total)
            for conductance, share, other in around:
                multiply(conductance, total, out=share)
                if other is not None:
                    multiply(share, own, out=term)
                    add(other, term, out=other)
            for share, conductance, both in pairs:
                multiply(share, conductance, out=term)
                add(both, term, out=both)
            multiply(own, total, out=own)
        b[network.reference] = 0.0
        for own, around, _ in reversed(steps):
            for _, share, other in around:
                if other is not None:
                    multiply(share, other, out=term)
                    add(own, term, out=own)
        return b
