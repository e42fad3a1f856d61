"""Base plate on a tube, pulled by four studs as a leaning column pulls them: thin-plate finite elements.

Reference for the engine's harmonic solution: Morley triangles of scikit-fem (PyPI: scikit-fem, numpy, scipy).
The wall's circle keeps the plate from moving and resists its slope like the edge of a long cylinder, both as springs.
Prints the stiffness at a stud for the round plate of the engine's model and for the square plate that is built.
"""

import json

import numpy as np
from scipy.sparse.linalg import spsolve
from scipy.spatial import Delaunay
from skfem import Basis, BilinearForm, ElementTriMorley, FacetBasis, MeshTri
from skfem.helpers import dd, ddot, dot, grad, trace, eye

E, NU = 210e9, 0.3
INCH = 0.0254
# Middle radius of the wall, wall, radius of the studs' circle, side of the plate.
TUBE = (0.1064, 0.0063, 0.160, 0.400)
# Pipe of 8.625 in with its design wall, 93 hundredths of 0.322 in, studs on 12.5 in, a plate of 16 in.
PIPE_WALL = 0.93 * 0.322 * INCH
PIPE = ((8.625 * INCH - PIPE_WALL) / 2, PIPE_WALL, 12.5 * INCH / 2, 16 * INCH)


def mesh(of, square, fine):
    """Rings of points, one on the wall and one through the studs; outside them the square's own grid."""
    wall_radius, _, stud_radius, side = of
    radii = np.concatenate([
        np.linspace(0, wall_radius, 6 * fine + 1)[1:],
        np.linspace(wall_radius, stud_radius, 5 * fine + 1)[1:],
        np.linspace(stud_radius, side / 2, 4 * fine + 1)[1:],
    ])
    points = [(0.0, 0.0)]
    for radius in radii:
        count = max(8, 8 * int(round(2 * np.pi * radius / (side / 2 / (15 * fine)) / 8)))
        angle = 2 * np.pi * np.arange(count) / count
        points += list(zip(radius * np.cos(angle), radius * np.sin(angle)))
    if square:
        line = np.linspace(-side / 2, side / 2, 30 * fine + 1)
        points += [(x, y) for x in line for y in line if np.hypot(x, y) > side / 2 * (1 + 0.4 / (15 * fine))]
    points = np.array(points)
    found = Delaunay(points)
    first, second = (points[found.simplices[:, i]] - points[found.simplices[:, 0]] for i in (1, 2))
    area = np.abs(first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0])
    return MeshTri(points.T, found.simplices[area > 1e-12].T)


def stiffness(of, thickness, square, fine):
    wall_radius, wall_thickness, stud_radius, _ = of
    m = mesh(of, square, fine)
    basis = Basis(m, ElementTriMorley(), intorder=4)
    rigidity = E * thickness**3 / (12 * (1 - NU**2))

    @BilinearForm
    def bending(u, v, _):
        return rigidity * ((1 - NU) * ddot(dd(u), dd(v)) + NU * trace(dd(u)) * trace(dd(v)))

    radius = np.hypot(*m.p)
    on_wall = np.abs(radius - wall_radius) < 1e-9
    facets = np.nonzero(on_wall[m.facets].all(axis=0))[0]
    wall = FacetBasis(m, ElementTriMorley(), facets=facets, intorder=4)
    rigidity_wall = E * wall_thickness**3 / (12 * (1 - NU**2))
    decay = (3 * (1 - NU**2)) ** 0.25 / np.sqrt(wall_radius * wall_thickness)
    slope_spring = 2 * decay * rigidity_wall

    @BilinearForm
    def slope(u, v, w):
        r = np.hypot(w.x[0], w.x[1])
        n = np.array([w.x[0] / r, w.x[1] / r])
        return slope_spring * dot(grad(u), n) * dot(grad(v), n)

    matrix = bending.assemble(basis) + slope.assemble(wall)
    held = np.unique(np.concatenate([basis.nodal_dofs[0, np.nonzero(on_wall)[0]]]))
    load = np.zeros(matrix.shape[0])
    studs = []
    for angle in np.pi / 4 + np.pi / 2 * np.arange(4):
        at = stud_radius * np.array([np.cos(angle), np.sin(angle)])
        node = np.argmin(np.hypot(m.p[0] - at[0], m.p[1] - at[1]))
        pull = np.sign(at[0]) * 1.0
        studs.append((basis.nodal_dofs[0, node], pull))
        load[studs[-1][0]] += pull
    free = np.setdiff1d(np.arange(matrix.shape[0]), held)
    w = np.zeros_like(load)
    w[free] = spsolve(matrix.tocsc()[free][:, free], load[free])
    return 1.0 / np.mean([pull * w[node] for node, pull in studs])


def row(of, thickness, square):
    values = [stiffness(of, thickness, square, fine) for fine in (2, 4)]
    return {"square": square, "thickness_mm": round(1e3 * thickness, 3), "coarse_kn_per_mm": values[0] / 1e6,
            "fine_kn_per_mm": values[1] / 1e6}


if __name__ == "__main__":
    rows = [row(TUBE, thickness, square) for square in (False, True) for thickness in (0.012, 0.020, 0.030)]
    pipe = [row(PIPE, INCH, square) for square in (False, True)]
    for found in rows + pipe:
        print(found, flush=True)
    with open(__file__.replace(".py", ".json"), "w") as out:
        json.dump({"library": "scikit-fem", "element": "Morley", "rows": rows, "pipe": pipe}, out, indent=1)
