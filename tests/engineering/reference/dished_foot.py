"""Plate and tube dished by four studs: axisymmetric solid finite elements, quadratic quadrilaterals.

Reference for the engine's thin-plate solution with a shell's edge: scikit-fem (PyPI: scikit-fem, numpy, scipy). The
plate rests under the wall's middle line; the studs' mean pull acts as a ring at their circle. Gives the movement at the
studs and the bending moment at the wall's root, per length of the wall's circle.
"""

import json

import numpy as np
from skfem import Basis, BilinearForm, ElementQuad2, ElementVector, MeshQuad, condense, solve
from skfem.helpers import grad

E, NU = 210e3, 0.3
HEIGHT = 250.0
# Inside and outside of the wall, circle of the studs, rim of the plate: a tube, and pipe of 8.625 in whose wall is `wall` in.
TUBE = (103.25, 109.55, 160.0, 200.0)
PULL = 4 * 25e3
LAME, SHEAR = E * NU / ((1 + NU) * (1 - 2 * NU)), E / (2 * (1 + NU))


@BilinearForm
def stiffness(u, v, w):
    r = w.x[0]
    du, dv = grad(u), grad(v)
    hoop_u, hoop_v = u[0] / r, v[0] / r
    volume = LAME * (du[0, 0] + du[1, 1] + hoop_u) * (dv[0, 0] + dv[1, 1] + hoop_v)
    shear = (du[0, 1] + du[1, 0]) * (dv[0, 1] + dv[1, 0])
    strain = 2 * (du[0, 0] * dv[0, 0] + du[1, 1] * dv[1, 1] + hoop_u * hoop_v) + shear
    return 2 * np.pi * r * (volume + SHEAR * strain)


def pipe(wall):
    """Pipe of 8.625 in, studs on 12.5 in, a plate of 16 in."""
    return tuple(25.4 * size for size in (8.625 / 2 - wall, 8.625 / 2, 12.5 / 2, 8.0))


def foot(of, thickness, fine):
    inner, outer, studs, rim = of
    middle = (inner + outer) / 2
    wall = np.linspace(inner, outer, 4 * fine + 1)
    radii = np.concatenate([np.linspace(0.01, inner, 20 * fine + 1)[:-1], wall, np.linspace(outer, studs, 12 * fine + 1)[1:],
                            np.linspace(studs, rim, 8 * fine + 1)[1:]])
    root = np.linspace(0, 1, 30 * fine + 1)[1:] ** 2
    levels = np.concatenate([np.linspace(0, thickness, 6 * fine + 1), thickness + HEIGHT * root])
    mesh = MeshQuad.init_tensor(radii, levels)
    centre = mesh.p[:, mesh.t].mean(axis=1)
    keep = (centre[1] < thickness) | ((centre[0] > inner) & (centre[0] < outer))
    mesh = mesh.restrict(np.nonzero(keep)[0])
    basis = Basis(mesh, ElementVector(ElementQuad2()), intorder=5)
    matrix = stiffness.assemble(basis)

    def node(r, z):
        return np.argmin(np.hypot(mesh.p[0] - r, mesh.p[1] - z))

    load = np.zeros(matrix.shape[0])
    load[basis.nodal_dofs[1, node(studs, 0.0)]] = -PULL
    held = np.array([basis.nodal_dofs[1, node(middle, 0.0)]])
    u = solve(*condense(matrix, load, D=held))
    field = basis.interpolate(u)
    x, du = basis.global_coordinates().value, field.grad
    stress = (LAME + 2 * SHEAR) * du[1, 1] + LAME * (du[0, 0] + field.value[0] / x[0])
    first = thickness + HEIGHT * root[fine - 1]
    inside = (centre[1][keep] > thickness) & (centre[1][keep] < first)
    weight = basis.dx[inside] / (first - thickness)
    moment = np.sum(stress[inside] * (x[0][inside] - middle) * weight)
    return {"thickness_mm": thickness, "at_studs_mm": float(-u[basis.nodal_dofs[1, node(studs, thickness)]]),
            "wall_moment_n": float(abs(moment))}


if __name__ == "__main__":
    rows = [foot(TUBE, float(thickness), 2) for thickness in (12, 16, 20, 25, 30)]
    pipes = [{"wall_in": wall, **foot(pipe(wall), 25.4, 2)} for wall in (0.93 * 0.322, 0.322)]
    for row in rows + pipes:
        print(row, flush=True)
    with open(__file__.replace(".py", ".json"), "w") as out:
        json.dump({"library": "scikit-fem", "element": "Q8/Q9 axisymmetric", "rows": rows, "pipe": pipes}, out, indent=1)
