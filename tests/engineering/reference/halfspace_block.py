"""Rigid block in elastic ground by finite elements: the reference of docs/ground-validation.md.

A quarter of the ground in a box of quadratic bricks (scikit-fem's 20-node element), factored by CHOLMOD (cvxopt) in an
order of nested planes. Cells narrow by a power towards every edge of the block and every end of its contact, on both sides
of it, and grow by one ratio far out, so that a larger box only adds rows outside and a finer mesh has the same far field.
The block is the boundary: base and bonded sides get the rigid motion, free walls nothing; a hole may be wider than the
block. Outer boundary held fast: its error goes with one over the box's reach and is taken out with two boxes. Cells at the
block: its error is taken out with three meshes.

Run with: pip install scikit-fem scipy cvxopt; OMP_NUM_THREADS=1 python3 halfspace_block.py
It writes halfspace_block.json beside itself, case by case. Names of cases as arguments run those alone; `--check` solves one mesh
of every contact again, in minutes, and compares. The whole takes about a quarter of an hour of one core, and 4 GB.
"""

import json
import os
import sys
import time

import cvxopt
import cvxopt.cholmod
import numpy as np
from scipy.interpolate import CubicSpline
from scipy.sparse import coo_matrix, tril
from skfem import Basis, BilinearForm, ElementHexS2, MeshHex

HERE = os.path.dirname(os.path.abspath(__file__))
OUT = os.path.join(HERE, "halfspace_block.json")
PLACES = [0.75, 1.0, 1.25, 1.5, 2.0]
POWER = 3.5
GROWTH = 1.9
GROUPS = {"z": ("z",), "x": ("x", "ry"), "y": ("y", "rx"), "rz": ("rz",)}
SIGNS = {"z": (1, 1), "x": (-1, 1), "y": (1, -1), "rz": (-1, -1)}
AXES = {"x": 0, "y": 1, "z": 2, "rx": 3, "ry": 4, "rz": 5}


def one_sided(start, end, count, power=POWER):
    """Cells from start to end that narrow towards end."""
    return start + (end - start) * (1 - (1 - np.linspace(0, 1, count + 1)) ** power)


def two_sided(start, end, count):
    middle = (start + end) / 2
    half = one_sided(middle, end, max(2, (count + 1) // 2))
    return np.concatenate([start + end - half[::-1], half[1:]])


def from_edge(start, length, count, rows):
    """Cells that widen from an edge over a length, then grow by one ratio."""
    near = start + length - one_sided(0, length, count)[::-1]
    # The first far cell does not depend on the count, so that every mesh has the same boxes.
    far = near[-1] + 0.5 * length * np.cumsum(GROWTH ** np.arange(rows))
    return np.concatenate([near, far])


def joined(*parts):
    return np.unique(np.round(np.concatenate(parts), 12))


def sides(half, gap, count, rows, length):
    hole = [two_sided(half, half + gap, 4)] if gap > 0 else []
    return joined(one_sided(0, half, count), *hole, from_edge(half + gap, length, count, rows))


def depths(depth, marks, count, rows, length):
    """Lines down: the surface, every mark, the base, and on."""
    ends = sorted({0.0, depth} | {mark for mark in marks if 0 < mark < depth})
    parts = [one_sided(0, ends[1], count)]
    parts += [two_sided(low, high, count + 1) for low, high in zip(ends[1:], ends[2:])]
    return joined(*parts, from_edge(depth, length, count, rows))


def with_lines(nodes, wanted):
    """Moves the nearest line that is not an edge of the block to each wanted depth, or adds one."""
    for value in wanted:
        if np.abs(nodes - value).min() > 1e-9:
            nodes = np.sort(np.append(nodes, value))
    return nodes


def reference_cell():
    """Integrals of products of slopes on the unit brick: slope k of one function, slope l of the other."""
    basis = Basis(MeshHex.init_tensor(*[np.array([0.0, 1.0])] * 3), ElementHexS2(), intorder=5)

    def form(k, l):
        return BilinearForm(lambda u, v, w: v.grad[k] * u.grad[l])

    dofs = basis.element_dofs[:, 0]
    return np.array([[form(k, l).assemble(basis).toarray()[np.ix_(dofs, dofs)] for l in range(3)] for k in range(3)])


def nested(ranks, leaf=80):
    """Nested planes of vertices: an order in which the factor stays small."""
    order = []

    def split(index):
        here = ranks[:, index]
        low, high = here.min(axis=1), here.max(axis=1)
        axis = int(np.argmax(high - low))
        values = here[axis]
        plane = 2 * int(round(np.median(values) / 2))
        if len(index) < leaf or plane <= low[axis] or plane >= high[axis]:
            order.append(index)
            return
        split(index[values < plane])
        split(index[values > plane])
        order.append(index[values == plane])

    split(np.arange(ranks.shape[1]))
    return np.concatenate(order)


class Model:
    def __init__(self, half, depth, count, rows, modulus, nu, marks=(), lines=(), gap=0.0, gap_depth=None):
        a, b = half
        length = (a + b) / 2
        gap_depth = depth if gap_depth is None else gap_depth
        xs, ys = sides(a, gap, count, rows, length), sides(b, gap, count, rows, length)
        zs = with_lines(depths(depth, (*marks, gap_depth), count, rows, length), lines)
        mesh = MeshHex.init_tensor(xs, ys, zs)
        corners = mesh.p[:, mesh.t]
        middle = corners.mean(axis=1)
        void = (middle[0] < a) & (middle[1] < b) & (middle[2] < depth)
        void |= (middle[0] < a + gap) & (middle[1] < b + gap) & (middle[2] < gap_depth)
        self.half, self.depth, self.reach = half, depth, float(xs[-1] - a)
        self.mesh = mesh.remove_elements(np.flatnonzero(void))
        basis = Basis(self.mesh, ElementHexS2(), intorder=1)
        self.dofs, self.nodes = basis.element_dofs, basis.doflocs
        self.matrix = self.assemble(modulus, nu)
        self.places = np.repeat(self.nodes, 3, axis=1)
        self.component = np.tile(np.arange(3), self.nodes.shape[1])
        ends = [np.repeat(np.unique(np.round(np.concatenate([line, (line[1:] + line[:-1]) / 2]), 12))[None], 1) for line in (xs, ys, zs)]
        self.ranks = np.repeat(np.stack([np.searchsorted(ends[i], self.nodes[i] - 1e-9) for i in range(3)]), 3, axis=1)

    def assemble(self, modulus, nu):
        corners = self.mesh.p[:, self.mesh.t]
        size = corners.max(axis=1) - corners.min(axis=1)
        volume = size.prod(axis=0)
        shear = modulus(corners[2].min(axis=0), corners[2].max(axis=0)) * volume
        lame = 2 * nu / (1 - 2 * nu)
        slopes = reference_cell()
        count = self.dofs.shape[0]
        rows, columns = np.repeat(np.arange(count), count), np.tile(np.arange(count), count)
        parts = []
        for i in range(3):
            for j in range(3):
                scale = shear / (size[i] * size[j])
                block = np.outer((slopes[j, i] + lame * slopes[i, j]).ravel(), scale)
                if i == j:
                    block = block + sum(np.outer(slopes[k, k].ravel(), shear / size[k] ** 2) for k in range(3))
                parts.append((block.ravel(), (3 * self.dofs[rows] + i).ravel(), (3 * self.dofs[columns] + j).ravel()))
        values, at, to = (np.concatenate([part[k] for part in parts]) for k in range(3))
        size = 3 * (int(self.dofs.max()) + 1)
        return coo_matrix((values, (at, to)), shape=(size, size)).tocsc()

    def motion(self, which):
        """Displacement (x, y, down) of the block's points for a unit of a motion; right-handed, z up, about the base."""
        x, y, z = self.places
        above, nought = self.depth - z, 0 * z
        fields = {
            "x": (1 + nought, nought, nought),
            "y": (nought, 1 + nought, nought),
            "z": (nought, nought, nought - 1),
            "rx": (nought, -above, -y),
            "ry": (above, nought, x),
            "rz": (-y, x, nought),
        }[which]
        return np.choose(self.component, fields)

    def solve(self, group, contact):
        """Fields for the motions of one class of symmetry, their stiffness, and the seconds that the processor took."""
        x, y, z = self.places
        (a, b), (start, end), eps = self.half, contact, 1e-9
        inside = (x < a + eps) & (y < b + eps) & (z < self.depth + eps)
        base = inside & (z > self.depth - eps)
        side = inside & ((x > a - eps) | (y > b - eps)) & (z >= start - eps) & (z <= end + eps) & (end > start)
        held = base | side
        fixed = (x > x.max() - eps) | (y > y.max() - eps) | (z > z.max() - eps)
        for axis, place in ((0, x), (1, y)):
            same = SIGNS[group][axis] > 0
            fixed = fixed | ((place < eps) & ((self.component == axis) if same else (self.component != axis)))
        known, free = np.flatnonzero(fixed | held), np.flatnonzero(~(fixed | held))
        motions = GROUPS[group]
        values = np.stack([np.where(held, self.motion(which), 0.0) for which in motions], axis=1)
        free = free[nested(self.ranks[:, free])]
        began = time.process_time()
        lower = tril(self.matrix[free][:, free]).tocoo()
        sparse = cvxopt.spmatrix(cvxopt.matrix(lower.data), cvxopt.matrix(lower.row.astype(int)), cvxopt.matrix(lower.col.astype(int)), lower.shape)
        cvxopt.cholmod.options["supernodal"] = 2
        factor = cvxopt.cholmod.symbolic(sparse, p=cvxopt.matrix(np.arange(len(free)).astype(int)))
        cvxopt.cholmod.numeric(sparse, factor)
        asked = cvxopt.matrix(-(self.matrix[free][:, known] @ values[known]))
        cvxopt.cholmod.solve(factor, asked)
        values[free] = np.array(asked)
        return values, 4 * values.T @ (self.matrix @ values), time.process_time() - began

    def surface(self, field, axis):
        """Displacement down at the places along an axis, by a spline through the surface's nodes."""
        along, across, down = self.places[axis], self.places[1 - axis], self.places[2]
        on = np.flatnonzero((np.abs(across) < 1e-9) & (np.abs(down) < 1e-9) & (self.component == 2) & (along > self.half[axis] - 1e-9))
        order = on[np.argsort(along[on])]
        return [float(value) for value in CubicSpline(along[order], field[order])(PLACES)]


def uniform(top, bottom):
    return 1 + 0 * top


def root(top, bottom):
    """Mean over a cell of the root of depth, one at a metre."""
    return (bottom**1.5 - top**1.5) / 1.5 / (bottom - top)


def layered(below, ratio):
    """Ground of another modulus below, or above, a depth."""
    return lambda top, bottom: np.where((top + bottom) / 2 > below, ratio, 1.0)


def soft_above(depth, ratio):
    return lambda top, bottom: np.where((top + bottom) / 2 < depth, ratio, 1.0)


def one(model, contact, groups):
    stiffness, surfaces, seconds = np.zeros((6, 6)), {}, 0.0
    for group in groups:
        values, found, took = model.solve(group, contact)
        seconds += took
        at = [AXES[motion] for motion in GROUPS[group]]
        stiffness[np.ix_(at, at)] = found
        for column, motion in enumerate(GROUPS[group]):
            if motion != "rz":
                axis = 1 if motion in ("y", "rx") else 0
                surfaces[motion] = model.surface(values[:, column], axis)
    return dict(stiffness=stiffness.round(9).tolist(), surface=surfaces, seconds=round(seconds, 2))


def case(name, contacts, half=(0.5, 0.5), depth=1.0, nu=0.35, modulus=uniform, lines=(), gap=0.0, gap_depth=None, meshes=None, finest=None, only=None):
    """Every contact on every mesh, a mesh being cells at the block and rows far out; what is there already is kept."""
    groups = ("z", "x", "rz") if half[0] == half[1] else ("z", "x", "y", "rz")
    kept = json.load(open(OUT)) if os.path.exists(OUT) else {}
    answers = kept.get(name, {}).get("answers", {})
    for label, contact in contacts.items():
        # The stress is most singular between a bonded base and a free wall, and wants the finest cells there.
        for count, rows in only or meshes or ((COMPARED + BOTH + (finest or NONE_FINER)) if label == "none" else (COMPARED + BOTH + FINER)):
            mesh = "%d cells, %d rows" % (count, rows)
            if mesh in answers.get(label, {}):
                continue
            model = Model(half, depth, count, rows, modulus, nu, marks=contact, lines=lines, gap=gap, gap_depth=gap_depth)
            found = one(model, contact, groups)
            found.update(cells=count, reach=round(model.reach, 6), unknowns=int(model.matrix.shape[0]))
            answers.setdefault(label, {})[mesh] = found
            print(name, label, mesh, found["unknowns"], found["seconds"], np.diag(found["stiffness"]).round(4), flush=True)
            record(name, dict(half=half, depth=depth, nu=nu, gap=gap, contacts=contacts, places=PLACES, answers=answers))


def record(name, value):
    kept = json.load(open(OUT)) if os.path.exists(OUT) else {}
    kept[name] = value
    with open(OUT, "w") as out:
        json.dump(kept, out, separators=(",", ":"))
        out.write("\n")


def contacts(depth):
    return {"full": (0.0, depth), "half": (depth / 2, depth), "none": (depth, depth)}


def some(depth, *names):
    return {name: contacts(depth)[name] for name in names}


# Two boxes; three meshes, the finest where the stress is most singular; and the mesh on which one ground is held against another.
BOTH = ((4, 6), (4, 8))
FINER = ((3, 6), (6, 6))
NONE_FINER = ((6, 6), (9, 6))
COMPARED = ((3, 8),)
THIN = (0.04, 0.12, 0.25, 0.4, 0.58)
WIDER = ((3, 6), (4, 6), (6, 6))
CUBE = dict(half=(0.5, 0.5), depth=1.0)
SMALL = dict(half=(0.4, 0.4), depth=0.8)
LONG = dict(half=(0.6, 0.4), depth=1.0)
CASES = {
    # The same ground everywhere: three shapes, three Poisson's ratios.
    "cube 1, 0.35": lambda **more: case("cube 1, 0.35", contacts(1.0), **CUBE, **more),
    "cube 0.8, 0.25": lambda **more: case("cube 0.8, 0.25", contacts(0.8), nu=0.25, **SMALL, **more),
    "long, 0.45": lambda **more: case("long, 0.45", contacts(1.0), nu=0.45, finest=FINER, **LONG, **more),
    # Modulus with the root of depth, as confining pressure makes it; one at a metre. Both on a mesh with thin cells near the
    # surface, where that modulus changes most.
    "root": lambda **more: case("root", contacts(1.0), modulus=root, lines=THIN, meshes=COMPARED, **CUBE, **more),
    "even, thin": lambda **more: case("even, thin", contacts(1.0), lines=THIN, meshes=COMPARED, **CUBE, **more),
    "root, long": lambda **more: case("root, long", some(1.0, "full", "none"), nu=0.45, modulus=root, lines=THIN, meshes=COMPARED, **LONG, **more),
    "even, thin, long": lambda **more: case("even, thin, long", some(1.0, "full", "none"), nu=0.45, lines=THIN, meshes=COMPARED, **LONG, **more),
    # Topsoil of a third of the modulus.
    "topsoil 0.3 m": lambda **more: case("topsoil 0.3 m", contacts(1.0), modulus=soft_above(0.3, 1 / 3), lines=(0.3,), meshes=COMPARED, **CUBE, **more),
    "topsoil 0.2 m, long": lambda **more: case("topsoil 0.2 m, long", some(1.0, "full", "none"), nu=0.45, modulus=soft_above(0.2, 1 / 3), lines=(0.2,), meshes=COMPARED, **LONG, **more),
    # Rock of fifty times the modulus below the base.
    "rock 0.5 m": lambda **more: case("rock 0.5 m", contacts(1.0), modulus=layered(1.5, 50.0), lines=(1.5,), meshes=COMPARED, **CUBE, **more),
    "rock 2 m": lambda **more: case("rock 2 m", some(1.0, "full", "none"), modulus=layered(3.0, 50.0), lines=(3.0,), meshes=COMPARED, **CUBE, **more),
    "rock 1 m, long": lambda **more: case("rock 1 m, long", some(1.0, "full", "none"), nu=0.45, modulus=layered(2.0, 50.0), lines=(2.0,), meshes=COMPARED, **LONG, **more),
    # Nearer rock, and rock of ten times the modulus: what the sides gain in sway.
    "rock 0.25 m": lambda **more: case("rock 0.25 m", some(1.0, "full"), modulus=layered(1.25, 50.0), lines=(1.25,), meshes=COMPARED, **CUBE, **more),
    "rock 0.1 m, ten times": lambda **more: case("rock 0.1 m, ten times", some(1.0, "full"), modulus=layered(1.1, 10.0), lines=(1.1,), meshes=COMPARED, **CUBE, **more),
    "rock 0.25 m, ten times": lambda **more: case("rock 0.25 m, ten times", some(1.0, "full"), modulus=layered(1.25, 10.0), lines=(1.25,), meshes=COMPARED, **CUBE, **more),
    "rock 1 m, ten times": lambda **more: case("rock 1 m, ten times", some(1.0, "full"), modulus=layered(2.0, 10.0), lines=(2.0,), meshes=COMPARED, **CUBE, **more),
    # A hole wider than the block by a lining.
    "lining 50 mm, full": lambda **more: case("lining 50 mm, full", some(1.0, "none"), gap=0.05, meshes=WIDER, **CUBE, **more),
    "lining 50 mm, half": lambda **more: case("lining 50 mm, half", some(1.0, "half"), gap=0.05, gap_depth=0.5, meshes=WIDER, **CUBE, **more),
    "lining 25 mm, full": lambda **more: case("lining 25 mm, full", some(1.0, "none"), gap=0.025, meshes=WIDER, **CUBE, **more),
    "lining 50 mm, long": lambda **more: case("lining 50 mm, long", some(1.0, "none"), nu=0.45, gap=0.05, meshes=WIDER, **LONG, **more),
    # The same shapes with the other Poisson's ratio.
    "cube 0.8, 0.45": lambda **more: case("cube 0.8, 0.45", some(0.8, "full", "none"), nu=0.45, finest=FINER, **SMALL, **more),
    "long, 0.25": lambda **more: case("long, 0.25", some(1.0, "full", "none"), nu=0.25, finest=FINER, **LONG, **more),
}


def check():
    """Solves one mesh of every kept contact again, beside this file's own answers; whether all are as they were."""
    global OUT
    kept, again, worst = json.load(open(OUT)), OUT + ".again", 0.0
    OUT = again
    for name in CASES:
        CASES[name](only=((3, 6),) if name.startswith("lining") else COMPARED)
    for name, value in json.load(open(again)).items():
        for label, answers in value["answers"].items():
            for mesh, answer in answers.items():
                then, now = (np.array(one["stiffness"]) for one in (kept[name]["answers"][label][mesh], answer))
                worst = max(worst, float(np.abs(now - then).max() / np.abs(then).max()))
    os.remove(again)
    print("farthest from what is kept: %.1e" % worst)
    return worst < 1e-6


if __name__ == "__main__":
    if sys.argv[1:] == ["--check"]:
        sys.exit(0 if check() else 1)
    for wanted in sys.argv[1:] or CASES:
        CASES[wanted]()
