"""Independent values for the studs: areas by shapely, T-stubs by limit analysis as a linear program (scipy), forces of a group
by a plane of strain solved as a linear system (numpy), resistances from the formulas of EN 1992-4 and ACI 318-19 written
anew. Versions at the time: shapely 2.2, scipy 1.17."""

import json
import math

import numpy as np
from scipy.optimize import linprog
from shapely.geometry import box
from shapely.ops import unary_union


def areas():
    rows = []
    for studs, half, reach in (
        ([(100, 100), (-100, 100), (-100, -100), (100, -100)], (300, 400), 240),
        ([(160, 0), (0, 160), (-160, 0), (0, -160)], (450, 300), 150),
        ([(120, 120), (120, -120)], (330, 450), 187.5),
        ([(200 * math.cos(2 * math.pi * i / 7), 200 * math.sin(2 * math.pi * i / 7)) for i in range(7)], (260, 520), 110),
    ):
        union = unary_union([box(x - reach, y - reach, x + reach, y + reach) for x, y in studs])
        rows.append({"studs": studs, "half": half, "reach": reach, "area": union.intersection(box(-half[0], -half[1], half[0], half[1])).area})
    return rows


def t_stubs():
    """Per stud: pull F, prying Q at n beyond the stud, plastic hinges at wall and stud line, the stud's strength."""
    rows = []
    for m, n, plastic, stud in ((45.65, 50.0, 5.23e6, 90e3), (45.65, 30.0, 1.2e6, 90e3), (30.0, 37.5, 0.4e6, 60e3), (40.0, 45.0, 3.0e6, 60e3)):
        found = {}
        for name, pries in (("prying", True), ("free", False)):
            # Unknowns F, Q >= 0: |Q n| <= M, |F m - Q n| <= M, F + Q <= stud.
            most = None if pries else 0.0
            answer = linprog(
                [-1.0, 0.0],
                A_ub=[[0.0, n], [m, -n], [-m, n], [1.0, 1.0]],
                b_ub=[plastic, plastic, plastic, stud],
                bounds=[(0.0, None), (0.0, most)],
            )
            found[name] = answer.x[0]
        rows.append({"m": m, "n": n, "plastic_n_mm": plastic, "stud_n": stud, **found})
    return rows


def forces():
    """Pulls of a group under N, Mx and My: a plane N/n + a x + b y by least squares on equilibrium."""
    rows = []
    for count, radius, turn, axial, moment, direction in ((4, 160, 45, -3e3, 6e6, 0), (5, 150, 0, -2e3, 3e6, 30), (8, 200, 0, 1e3, 5e6, 45)):
        angles = np.radians(turn + 360 * np.arange(count) / count)
        x, y = radius * np.cos(angles), radius * np.sin(angles)
        # Equilibrium of unknown plane c0 + c1 x + c2 y.
        basis = np.vstack([np.ones(count), x, y])
        load = np.array([axial, moment * math.cos(math.radians(direction)), moment * math.sin(math.radians(direction))])
        plane = np.linalg.solve(basis @ basis.T, load)
        rows.append({"count": count, "radius": radius, "axial": axial, "moment": moment, "direction_deg": direction, "pulls": list(plane @ basis)})
    return rows


def resistances():
    """A single stud, a pair near an edge, both codes; a shear over a gap."""
    d, h, fc, tau, tau_u, area = 16.0, 125.0, 25.0, 7.0, 10.0, 157.0
    c1, spacing = 120.0, 150.0
    en_single = 7.7 * math.sqrt(fc) * h**1.5
    reach = 1.5 * h
    pair = unary_union([box(-reach, -reach, reach, reach), box(-reach, spacing - reach, reach, spacing + reach)])
    ratio = pair.intersection(box(-1e4, -1e4, c1, 1e4)).area / (3 * h) ** 2
    en_pair = en_single * ratio * (0.7 + 0.3 * c1 / reach)
    s_np = min(7.3 * d * math.sqrt(tau_u), 3 * h)
    lf = min(h, 12 * d)
    alpha, beta = 0.1 * (lf / c1) ** 0.5, 0.1 * (d / c1) ** 0.2
    edge_one = 1.7 * d**alpha * lf**beta * math.sqrt(fc) * c1**1.5
    edge_pair = edge_one * (spacing + 3 * c1) * 1.5 * c1 / (4.5 * c1**2)
    aci_single = 7.0 * math.sqrt(fc) * h**1.5
    aci_pair = aci_single * ratio * (0.7 + 0.3 * c1 / reach)
    aci_edge = min(0.6 * (min(h, 8 * d) / d) ** 0.2 * math.sqrt(d), 3.7) * math.sqrt(fc) * c1**1.5
    aci_edge_pair = aci_edge * (spacing + 3 * c1) * 1.5 * c1 / (4.5 * c1**2)
    # Four at 120 mm, 120 mm from both edges of a corner, bonded 160 mm deep; and a pull 50 mm beside the middle of a group.
    deep, corner, n = 160.0, 120.0, 4
    s_corner = min(7.3 * d * math.sqrt(tau), 3 * deep)
    r = s_corner / 2
    four = unary_union([box(x - r, y - r, x + r, y + r) for x in (-corner, -2 * corner) for y in (-corner, -2 * corner)])
    bond_ratio = four.intersection(box(-1e4, -1e4, 0, 0)).area / s_corner**2
    limit = 7.7 / (math.pi * d) * math.sqrt(deep * fc)
    close = max(1.0, math.sqrt(n) - (math.sqrt(n) - 1) * (tau / limit) ** 1.5)
    grouped = max(1.0, close - math.sqrt(corner / s_corner) * (close - 1))
    bond_corner = math.pi * d * deep * tau * bond_ratio * grouped * (0.7 + 0.3 * corner / r)
    diameter = math.sqrt(4 * area / math.pi)
    bending = 1.2 * math.pi * diameter**3 / 32 * 800
    return {
        "en_cone_single_kn": en_single / 1e3,
        "en_cone_pair_kn": en_pair / 1e3,
        "en_bond_single_kn": math.pi * d * h * tau / 1e3,
        "en_spacing_mm": s_np,
        "en_bond_corner_kn": bond_corner / 1e3,
        "en_bond_corner_eccentric_kn": bond_corner / (1 + 2 * 50 / s_corner) / 1e3,
        "en_edge_pair_kn": edge_pair / 1e3,
        "en_edge_pair_eccentric_kn": edge_pair / (1 + 2 * 60 / (3 * c1)) / 1e3,
        "aci_breakout_single_kn": aci_single / 1e3,
        "aci_breakout_pair_kn": aci_pair / 1e3,
        "aci_edge_pair_kn": aci_edge_pair / 1e3,
        "lever_arm_kn": 2 * bending * (1 - 20.0 / 83.73) / (0.5 * d + 25 + 10) / 1e3,
    }


values = {"areas": areas(), "t_stubs": t_stubs(), "forces": forces(), "resistances": resistances()}
with open(__file__.replace(".py", ".json"), "w") as out:
    json.dump(values, out, indent=1)
print(json.dumps(values, indent=1))
