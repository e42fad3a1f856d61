"""Rigid block in elastic ground by finite elements: the reference of docs/ground-validation.md.

A quarter model on a box of quadratic hexahedra (scikit-fem), graded to the block's edges, its outer boundary held fast at
20 m and at 40 m; the answers' error goes with one over that distance, so 2 K40 - K20 is taken. The block is the boundary:
base and bonded sides get the rigid motion, free sides nothing. Base 1 m deep, block 1 m by 1 m unless said otherwise,
shear modulus 1 at a metre's depth, Poisson's ratio 0.35.

Run with: pip install scikit-fem scipy; OMP_NUM_THREADS=1 python3 halfspace_block.py
It writes halfspace_block.json beside itself, case by case, and takes about an hour on one core. Names of cases as
arguments run those alone.
"""

import json
import os
import sys
import time

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.sparse.linalg import splu
from skfem import Basis, BilinearForm, ElementHex2, ElementVector, MeshHex
from skfem.helpers import ddot, sym_grad, trace

HERE = os.path.dirname(os.path.abspath(__file__))
OUT = os.path.join(HERE, "halfspace_block.json")
PLACES = [0.75, 1.0, 1.5, 2.0, 3.0]
COARSE = (4, 6, 1.8)


def uniform(depth):
    return 1 + 0 * depth


def graded(length, count, power):
    return length * (1 - (1 - np.linspace(0, 1, count + 1)) ** power)


def outwards(start, first, end, count):
    """Cells that grow from `first` by a fixed ratio up to `end`."""
    low, high = 1.0, 5.0
    for _ in range(80):
        ratio = (low + high) / 2
        total = first * (ratio**count - 1) / (ratio - 1) if ratio > 1 + 1e-12 else first * count
        low, high = (ratio, high) if total < end - start else (low, ratio)
    steps = first * ratio ** np.arange(count)
    return start + np.cumsum(steps) * (end - start) / steps.sum()


def line(half, reach, inside, outside, power):
    nodes = graded(half, inside, power)
    return np.concatenate([nodes, outwards(half, nodes[-1] - nodes[-2], reach, outside)])


def depths(depth, reach, inside, outside, power, fixed):
    """Lines down: graded to the base from above, growing below it, with a line at every depth in `fixed`."""
    nodes = graded(depth, inside, power)
    nodes = np.concatenate([nodes, outwards(depth, nodes[-1] - nodes[-2], reach, outside)])
    for value in fixed:
        near = int(np.abs(nodes - value).argmin())
        if 0 < near < len(nodes) - 1 and abs(nodes[near] - depth) > 1e-9:
            nodes[near] = value
    return np.unique(nodes)


class Model:
    def __init__(self, half, depth, reach, modulus, nu, size, fixed):
        inside, outside, power = size
        a, b = half
        self.half, self.depth, self.reach = half, depth, reach
        mesh = MeshHex.init_tensor(
            line(a, reach, inside, outside, power),
            line(b, reach, inside, outside, power),
            depths(depth, reach, inside + 2, outside, power, fixed),
        )
        middle = mesh.p[:, mesh.t].mean(axis=1)
        void = (middle[0] < a) & (middle[1] < b) & (middle[2] < depth)
        self.mesh = mesh.remove_elements(np.flatnonzero(void))
        self.basis = Basis(self.mesh, ElementVector(ElementHex2()), intorder=4)
        lame = 2 * nu / (1 - 2 * nu)

        @BilinearForm
        def stiffness(u, v, w):
            g = modulus(w.x[2])
            return g * (2 * ddot(sym_grad(u), sym_grad(v)) + lame * trace(sym_grad(u)) * trace(sym_grad(v)))

        self.matrix = stiffness.assemble(self.basis).tocsc()
        self.places = self.basis.doflocs
        # Three displacements stand one behind the other at each node.
        self.component = np.full(self.places.shape[1], -1)
        for kind in ("nodal_dofs", "edge_dofs", "facet_dofs", "interior_dofs"):
            dofs = getattr(self.basis, kind)
            if dofs is not None and dofs.size:
                for i in range(3):
                    self.component[dofs[i]] = i

    def motion(self, which):
        """Displacement (x, y, down) of the block's points: down, along x, about y (top towards +x), about z."""
        x, y, z = self.places
        above = self.depth - z
        fields = {
            "z": (0 * x, 0 * x, 0 * x - 1),
            "x": (0 * x + 1, 0 * x, 0 * x),
            "ry": (above, 0 * x, x),
            "rz": (-y, x, 0 * x),
        }[which]
        return np.choose(self.component, fields)

    def solve(self, group, contact):
        """Fields for the motions of one class of symmetry."""
        x, y, z = self.places
        a, b = self.half
        eps = 1e-9
        inside = (x < a + eps) & (y < b + eps) & (z < self.depth + eps)
        base = inside & (z > self.depth - eps)
        start, end = contact
        side = inside & ((x > a - eps) | (y > b - eps)) & (z >= start - eps) & (z <= end + eps) & (end > start)
        held = base | side
        outer = (x > self.reach - eps) | (y > self.reach - eps) | (z > self.reach - eps)
        sign = {"z": (1, 1), "x": (-1, 1), "ry": (-1, 1), "rz": (-1, -1)}[group[0]]
        fixed = outer.copy()
        for axis, place in ((0, x), (1, y)):
            plane = place < eps
            if sign[axis] > 0:
                fixed |= plane & (self.component == axis)
            else:
                fixed |= plane & (self.component != axis)
        known = np.flatnonzero(fixed | held)
        free = np.flatnonzero(~(fixed | held))
        values = np.stack([np.where(held, self.motion(which), 0.0) for which in group], axis=1)
        inner = self.matrix[free][:, free]
        factor = splu(inner, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
        for column in range(len(group)):
            values[free, column] = factor.solve(-(self.matrix[free][:, known] @ values[known, column]))
        stiffness = 4 * values.T @ (self.matrix @ values)
        return values, stiffness

    def surface(self, field):
        """Displacement down at the places, along the x axis, by a spline through the surface's nodes."""
        x, y, z = self.places
        on = np.flatnonzero((np.abs(y) < 1e-9) & (np.abs(z) < 1e-9) & (self.component == 2) & (x > self.half[0] - 1e-9))
        order = on[np.argsort(x[on])]
        return CubicSpline(x[order], field[order])(PLACES)


def case(name, contacts, half=(0.5, 0.5), depth=1.0, nu=0.35, modulus=uniform, fixed=(0.5,), size=(5, 7, 1.8), reaches=(20.0, 40.0)):
    answers = {}
    for reach in reaches:
        # The larger box has the same cells near the block and one row more of them outside.
        model = Model(half, depth, reach, modulus, nu, (size[0], size[1] + (reach > 30), size[2]), fixed)
        for label, contact in contacts.items():
            entry = answers.setdefault(label, {}).setdefault(str(reach), {"seconds": 0.0})
            for group in (("z",), ("x", "ry")):
                began = time.time()
                values, stiffness = model.solve(group, contact)
                entry["seconds"] += time.time() - began
                for i, motion in enumerate(group):
                    entry["k_%s_%s" % (motion, motion)] = float(stiffness[i, i])
                    entry["surface_%s" % motion] = [float(value) for value in model.surface(values[:, i])]
                if len(group) == 2:
                    entry["k_x_ry"] = float(stiffness[0, 1])
            print(name, label, reach, entry, flush=True)
        unknowns = int(model.matrix.shape[0])
        record(name, dict(half=half, depth=depth, nu=nu, unknowns=unknowns, contacts=contacts, places=PLACES, answers=answers))


def record(name, value):
    kept = json.load(open(OUT)) if os.path.exists(OUT) else {}
    kept[name] = value
    with open(OUT, "w") as out:
        json.dump(kept, out, indent=1)
        out.write("\n")


FULL = {"full": (0.0, 1.0)}
FULL_NONE = {"full": (0.0, 1.0), "none": (1.0, 1.0)}
FULL_HALF_NONE = {"full": (0.0, 1.0), "half": (0.5, 1.0), "none": (1.0, 1.0)}
NONE = {"none": (1.0, 1.0)}
CASES = {
    # The same ground everywhere.
    "uniform": lambda: case("uniform", FULL_HALF_NONE),
    # Finer at the block, in the smaller box: what the mesh of "uniform" itself costs at the strongest edge.
    "finer": lambda: case("finer", NONE, size=(7, 7, 2.6), reaches=(20.0,)),
    # Modulus with the root of depth, as confining pressure makes it; one at a metre.
    "root": lambda: case("root", FULL_NONE, modulus=lambda z: np.sqrt(np.maximum(z, 0.02)), size=COARSE),
    # The same ground on the same coarser mesh, to hold the next ones against.
    "coarse": lambda: case("coarse", FULL_NONE, size=COARSE, fixed=(0.3,)),
    # Topsoil of a third of the modulus, 0.3 m deep.
    "topsoil": lambda: case("topsoil", FULL, modulus=lambda z: np.where(z < 0.3, 1 / 3, 1.0), fixed=(0.3,), size=COARSE),
    # Rock of fifty times the modulus half a metre, and two metres, below the base.
    "rock_near": lambda: case("rock_near", FULL, modulus=lambda z: np.where(z < 1.5, 1.0, 50.0), fixed=(1.5,), size=COARSE),
    "rock_far": lambda: case("rock_far", FULL, modulus=lambda z: np.where(z < 3.0, 1.0, 50.0), fixed=(3.0,), size=COARSE),
}
if __name__ == "__main__":
    for wanted in sys.argv[1:] or CASES:
        CASES[wanted]()
