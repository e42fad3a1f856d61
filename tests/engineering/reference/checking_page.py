"""The checking engineer's page worked out apart from the engine, for four plans and both codes: forces in the studs from
equilibrium (scipy), areas as unions of boxes (shapely), resistances from the clauses of EN 1992-4:2018 7.2 and ACI 318-19 17.6
to 17.8. Versions at the time: shapely 2.2, scipy 1.17, numpy 2.3. N and mm inside, kN in what is written."""

import json
import math

import numpy as np
from scipy.optimize import fsolve
from shapely.geometry import box
from shapely.ops import unary_union

E_STEEL = 210_000.0
CASES = [
    {"name": "a plate on grout", "count": 4, "circle": 320, "block": [1000, 1000], "thickness": 1100, "h": 125, "d": 16, "area": 157,
     "tau": 7.0, "tau_u": 10.0, "fck": 30, "E": 32836.568, "gap": 30, "plate": 25, "side": 400, "grout": True, "cage": False, "mesh": True,
     "weight": 2.0755, "shear": 0.5, "moment": 0.75, "torsion": 0.375},
    {"name": "six studs in a thin block", "count": 6, "circle": 420, "block": [1550, 1550], "thickness": 550, "h": 170, "d": 20,
     "area": 245, "tau": 1.38, "tau_u": 4.48, "fck": 30, "E": 32836.568, "gap": 25, "plate": 25, "side": 500, "grout": True, "cage": True,
     "mesh": False, "weight": 5.0, "shear": 1.8, "moment": 2.2, "torsion": 0.3},
    {"name": "a plate on nuts", "count": 4, "circle": 320, "block": [1000, 1000], "thickness": 1050, "h": 125, "d": 16, "area": 157,
     "tau": 1.38, "tau_u": 4.48, "fck": 25, "E": 31475.806, "gap": 25, "plate": 20, "side": 400, "grout": False, "cage": False, "mesh": True,
     "weight": 3.2, "shear": 0.294, "moment": 0.94, "torsion": 0.1},
    {"name": "edges near on every side of a plain block", "count": 4, "circle": 400, "block": [700, 760], "thickness": 450, "h": 160,
     "d": 16, "area": 157, "tau": 6.0, "tau_u": 9.0, "fck": 25, "E": 31475.806, "gap": 25, "plate": 20, "side": 400, "grout": False,
     "cage": False, "mesh": False, "weight": 2.0, "shear": 0.9, "moment": 2.6, "torsion": 0.2},
]
FUK, FYK, GAMMA_INST = 800.0, 640.0, 1.2  # studs of 8.8, whose elongation of 12 % makes them brittle by ACI 318
BRITTLE_N, BRITTLE_V = 0.65, 0.60
CATEGORY_TWO = 0.55


def ring(case):
    first = math.pi / 4 if case["count"] == 4 else 0.0
    radius = case["circle"] / 2
    angles = [first + 2 * math.pi * i / case["count"] for i in range(case["count"])]
    return [(radius * math.cos(a), radius * math.sin(a)) for a in angles]


def pulls(case, weight, moment, direction):
    """On nuts a plane through the studs; on grout a plane of strain with concrete in pressure and studs in pull only."""
    lever = np.array([x * direction[0] + y * direction[1] for x, y in ring(case)])
    if not case["grout"]:
        return -weight / len(lever) + moment * lever / (lever**2).sum()
    half = case["side"] / 2

    def rest(unknown):
        strain, turn = unknown[0] * 1e-6, unknown[1] * 1e-9
        zero = min(max(-strain / turn, -half), half)
        at = lambda z: case["E"] * (strain + turn * z)
        pressed = case["side"] * (at(-half) + at(zero)) / 2 * (zero + half)
        # A triangle: its resultant lies a third from the pressed edge.
        pressing_moment = pressed * (-half + (zero + half) / 3)
        pulled = E_STEEL * case["area"] * np.maximum(strain + turn * lever, 0)
        return [(pressed + pulled.sum() + weight) / 1e3, (pressing_moment + (pulled * lever).sum() - moment) / 1e6]

    unknown, _, found, why = fsolve(rest, [1.0, 100.0], full_output=True, xtol=1e-13)
    assert found == 1, why
    return E_STEEL * case["area"] * np.maximum(unknown[0] * 1e-6 + unknown[1] * 1e-9 * lever, 0)


class Concrete:
    """Areas and distances of some studs in the block."""

    def __init__(self, case, studs):
        self.case, self.studs = case, studs
        self.half = [side / 2 for side in case["block"]]

    def area(self, reach):
        union = unary_union([box(x - reach, y - reach, x + reach, y + reach) for x, y in self.studs])
        return union.intersection(box(-self.half[0], -self.half[1], self.half[0], self.half[1])).area

    def edges(self):
        (hx, hy), xs, ys = self.half, [x for x, _ in self.studs], [y for _, y in self.studs]
        return [hx - max(xs), hx + min(xs), hy - max(ys), hy + min(ys)]

    def nearest(self):
        return min(self.edges())

    def mean_spacing(self):
        away = lambda one: min(math.dist(one, other) for other in self.studs if other != one)
        return sum(map(away, self.studs)) / len(self.studs)

    def counted(self, h):
        """Embedment that counts where three edges or more are nearer than 1.5 h."""
        near = [edge for edge in self.edges() if edge < 1.5 * h]
        if len(near) < 3:
            return h
        gaps = [b - a for axis in (0, 1) for along in [sorted(stud[axis] for stud in self.studs)] for a, b in zip(along, along[1:])]
        return min(h, max(max(near) / 1.5, max(gaps, default=0.0) / 3))

    def rows(self):
        """Each side: distance that counts, area, corner, with the row nearest to it."""
        thick = self.case["thickness"]
        for axis, sign in ((0, 1), (0, -1), (1, 1), (1, -1)):
            most = max(sign * stud[axis] for stud in self.studs)
            row = [stud for stud in self.studs if sign * stud[axis] > most - 1e-6]
            along = sorted(stud[1 - axis] for stud in row)
            corners = [self.half[1 - axis] - along[-1], self.half[1 - axis] + along[0]]
            gap = max((b - a for a, b in zip(along, along[1:])), default=0.0)
            c1 = self.half[axis] - most
            if max(corners) < 1.5 * c1 and thick < 1.5 * c1:
                c1 = max(max(corners) / 1.5, thick / 1.5, gap / 3)
            area = (along[-1] - along[0] + sum(min(corner, 1.5 * c1) for corner in corners)) * min(1.5 * c1, thick)
            yield c1, area, min(corners), self.half[axis] - most


def eurocode(case, pull, acting, all_studs, eccentricity, shear, twisted, beside):
    h, d, fck, area = case["h"], case["d"], case["fck"], case["area"]
    gamma_n, gamma_v = max(1.4, 1.2 * FUK / FYK), max(1.25, FUK / FYK)
    edge_factor = lambda edge, far: min(1.0, 0.7 + 0.3 * edge / far)

    def off(spacing):
        return math.prod(1 / (1 + 2 * e / spacing) for e in eccentricity)

    def cone(group, off=lambda _: 1.0):
        counted = group.counted(h)
        spacing = 3 * counted
        return 7.7 * math.sqrt(fck) * counted**1.5 * group.area(spacing / 2) / spacing**2 * edge_factor(group.nearest(), spacing / 2) * off(spacing)

    spacing_p = min(7.3 * d * math.sqrt(case["tau_u"]), 3 * h)

    def bond(group, off=lambda _: 1.0):
        n = len(group.studs)
        grouped = 1.0
        if n > 1:
            limit = 7.7 / (math.pi * d) * math.sqrt(h * fck)
            close = max(1.0, math.sqrt(n) - (math.sqrt(n) - 1) * (case["tau"] / limit) ** 1.5)
            grouped = max(1.0, close - math.sqrt(min(1.0, group.mean_spacing() / spacing_p)) * (close - 1))
        one = math.pi * d * h * case["tau"]
        return one * group.area(spacing_p / 2) / spacing_p**2 * grouped * edge_factor(group.nearest(), spacing_p / 2) * off(spacing_p)

    modes = {
        "steel": (pull.max(), area * FUK / gamma_n),
        "cone": (pull[pull > 0].sum(), cone(acting, off) / (1.5 * GAMMA_INST)),
        "bond": (pull[pull > 0].sum(), bond(acting, off) / (1.5 * GAMMA_INST)),
        "shear_steel": (twisted, len(all_studs.studs) * 0.5 * area * FUK / gamma_v),
        "pry_out": (twisted, 2 * min(cone(all_studs), bond(all_studs)) / 1.5),
    }
    # Splitting distance and least thickness of a product without an approval: 2 h, and h with two holes of d + 2 or d + 4.
    c_sp, hole = 2 * h, d + (2 if d < 20 else 4)
    single = len(acting.studs) == 1
    far = acting.nearest() >= (1.0 if single else 1.2) * c_sp
    if not far and not case["mesh"] and not case["cage"]:
        least = max(h + 2 * hole, 100)
        thick = min((case["thickness"] / least) ** (2 / 3), max(1.0, ((h + 1.5 * acting.nearest()) / least) ** (2 / 3)), 2.0)
        basic = min(math.pi * d * h * case["tau"], 7.7 * math.sqrt(fck) * h**1.5)
        whole = basic * acting.area(c_sp) / (2 * c_sp) ** 2 * edge_factor(acting.nearest(), c_sp) * off(2 * c_sp) * thick
        modes["splitting"] = (pull[pull > 0].sum(), whole / (1.5 * GAMMA_INST))
    diameter = math.sqrt(4 * area / math.pi)
    bending = 1.2 * math.pi * diameter**3 / 32 * FUK
    left = 1 - max(pull.max(), -pull.min()) / modes["steel"][1]
    arm = 0.5 * d + case["gap"] + case["plate"] / 2
    modes["shear_lever_arm"] = (twisted, len(all_studs.studs) * 2 * bending * left / arm / gamma_v)
    least = math.inf
    for c1, area_v, corner, distance in all_studs.rows():
        if distance > max(10 * h, 60 * d):
            continue
        bearing = min(h, 12 * d)
        basic = 1.7 * d ** (0.1 * math.sqrt(bearing / c1)) * bearing ** (0.1 * (d / c1) ** 0.2) * math.sqrt(fck) * c1**1.5
        thin = max(1.0, math.sqrt(1.5 * c1 / case["thickness"]))
        least = min(least, basic * area_v / (4.5 * c1**2) * edge_factor(corner, 1.5 * c1) * thin / (1 + 2 * beside / (3 * c1)))
    modes["edge"] = (shear, least / 1.5)
    used = {mode: demand / capacity for mode, (demand, capacity) in modes.items()}
    concrete = max(used[mode] for mode in used if mode in ("cone", "bond", "splitting")), max(used["pry_out"], used["edge"])
    steel = used["steel"] ** 2 + used["shear_steel"] ** 2
    # Neither ratio may exceed one by itself either.
    together = max(min(concrete[0] ** 1.5 + concrete[1] ** 1.5, sum(concrete) / 1.2), *concrete)
    return modes, steel, together


def aci(case, pull, acting, all_studs, eccentricity, shear, twisted, beside):
    h, d, fc, area = case["h"], case["d"], case["fck"], case["area"]
    futa = min(FUK, 1.9 * FYK, 860)
    edge_factor = lambda edge, far: min(1.0, 0.7 + 0.3 * edge / far)

    def off(reach):
        return math.prod(1 / (1 + e / reach) for e in eccentricity)

    def cone(group, off=lambda _: 1.0):
        counted = group.counted(h)
        reach = 1.5 * counted
        return 7.0 * math.sqrt(fc) * counted**1.5 * group.area(reach) / (9 * counted**2) * edge_factor(group.nearest(), reach) * off(reach)

    reach_b = 10 * d * math.sqrt(case["tau_u"] / 7.6)

    def bond(group, off=lambda _: 1.0):
        one = math.pi * d * h * case["tau"]
        return one * group.area(reach_b) / (4 * reach_b**2) * edge_factor(group.nearest(), reach_b) * off(reach_b)

    modes = {
        "steel": (pull.max(), BRITTLE_N * area * futa),
        "cone": (pull[pull > 0].sum(), CATEGORY_TWO * cone(acting, off)),
        "bond": (pull[pull > 0].sum(), CATEGORY_TWO * bond(acting, off)),
        "shear_steel": (twisted, BRITTLE_V * len(all_studs.studs) * 0.6 * area * futa * (0.8 if case["grout"] else 1.0)),
        "pry_out": (twisted, 0.70 * 2 * min(cone(all_studs), bond(all_studs))),
    }
    least = math.inf
    for c1, area_v, corner, _ in all_studs.rows():
        basic = min(0.6 * (min(h, 8 * d) / d) ** 0.2 * math.sqrt(d), 3.7) * math.sqrt(fc) * c1**1.5
        thin = max(1.0, math.sqrt(1.5 * c1 / case["thickness"]))
        least = min(least, basic * area_v / (4.5 * c1**2) * edge_factor(corner, 1.5 * c1) * thin / (1 + beside / (1.5 * c1)))
    modes["edge"] = (shear, (0.75 if case["cage"] else 0.70) * least)
    used = {mode: demand / capacity for mode, (demand, capacity) in modes.items()}
    tension = max(used[mode] for mode in ("steel", "cone", "bond"))
    across = max(used[mode] for mode in ("shear_steel", "pry_out", "edge"))
    # 17.8: either may be used whole while the other stays below a fifth.
    single = max(tension, across)
    whole = single if min(tension, across) <= 0.2 else max((tension + across) / 1.2, single)
    return modes, whole, whole


def judge(case, code, weight_factor, factor):
    weight, shear = case["weight"] * 1e3 * weight_factor, case["shear"] * 1e3 * factor
    moment, torsion = case["moment"] * 1e6 * factor, case["torsion"] * 1e6 * factor
    studs = ring(case)
    radius = case["circle"] / 2
    all_studs = Concrete(case, studs)
    tried = []
    for direction in ((1, 0), (0, 1), (studs[0][0] / radius, studs[0][1] / radius)):
        pull = pulls(case, weight, moment, direction)
        some = [(stud, force) for stud, force in zip(studs, pull) if force > 1e-3 * pull.max()]
        total = sum(force for _, force in some)
        middle = [sum(stud[axis] for stud, _ in some) / len(some) for axis in (0, 1)]
        resultant = [sum(stud[axis] * force for stud, force in some) / total for axis in (0, 1)]
        eccentricity = [abs(a - b) for a, b in zip(middle, resultant)]
        acting = Concrete(case, [stud for stud, _ in some])
        modes, steel, concrete = code(case, pull, acting, all_studs, eccentricity, shear, shear + torsion / radius, torsion / shear)
        most = max([steel, concrete] + [demand / capacity for demand, capacity in modes.values()])
        tried.append((most, pull, modes, steel, concrete))
    # Each way of failing in the direction that is worst for it; the pulls in the one that is worst of all.
    pull = max(tried, key=lambda one: one[0])[1]
    ways = sorted({mode for one in tried for mode in one[2]})
    worst = {mode: max((one[2][mode] for one in tried if mode in one[2]), key=lambda pair: pair[0] / pair[1]) for mode in ways}
    return {
        "pulls_kn": [force / 1e3 for force in pull],
        "modes": {mode: [demand / 1e3, capacity / 1e3] for mode, (demand, capacity) in worst.items()},
        "steel_interaction": max(one[3] for one in tried),
        "concrete_interaction": max(one[4] for one in tried),
    }


values = [{**case, "eurocode": judge(case, eurocode, 1.0, 1.5), "aci": judge(case, aci, 0.9, 1.6)} for case in CASES]
with open(__file__.replace(".py", ".json"), "w") as out:
    json.dump(values, out, indent=1)
