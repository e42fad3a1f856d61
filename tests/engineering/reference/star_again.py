"""Two plans again, from first principles: a person who comes, the wind, the star's growth and its peak.

Nothing of the engine is used. The ground is the finite-element block of halfspace_block.json (free sides), the two boxes there
taken to an infinite one; the column is a chain of Timoshenko elements; the wind goes through the whole complex frequency
response, line by line, with the guider's own transfer function, and not through modes. The star is an image: the seeing,
widened by the wind, at both places of a person who comes, and a Gaussian fitted to its pixels by least squares.

One figure is handed over: the stiffness of the base joint, which a stage of its own finds and other references hold.

Run with: pip install numpy scipy; python3 star_again.py
It writes star_again.json beside itself.
"""

import json
import math
import os

import numpy as np
from scipy.optimize import least_squares

HERE = os.path.dirname(os.path.abspath(__file__))
ARCSEC = 206264.806
G0 = 9.80665
STEEL_E, STEEL_G, STEEL_RHO = 210e9, 81e9, 7850.0
CONCRETE_RHO = 2400.0
AIR = 1.25

PLANS = {
    "metre cube, guided": {
        "ground": "cube 1, 0.35",
        "side": 1.0,
        "depth": 1.0,
        "speed": 150.0,
        "unit_weight": 17500.0,
        "nu": 0.35,
        "tube": [0.2191, 0.0063],
        "height": 1.2,
        "plates": [0.35, 0.020],
        "gap": 0.025,
        "joint": 5390513.0,
        "load": [60.0, 0.3, 3.75],
        "area": 0.3,
        "wind": 5.0,
        "roughness": [0.05, 2.0],
        "exposure": 120.0,
        "guiding": 2.0,
        "seeing": 2.0,
        "person": [1.25, 80.0],
    },
    "smaller block, not guided": {
        "ground": "cube 0.8, 0.25",
        "side": 0.8,
        "depth": 0.8,
        "speed": 180.0,
        "unit_weight": 18500.0,
        "nu": 0.25,
        "tube": [0.2191, 0.0063],
        "height": 1.0,
        "plates": [0.35, 0.020],
        "gap": 0.025,
        "joint": 5390513.0,
        "load": [45.0, 0.25, 2.5],
        "area": 0.25,
        "wind": 4.0,
        "roughness": [0.05, 2.0],
        "exposure": 60.0,
        "guiding": 600.0,
        "seeing": 2.5,
        "person": [1.0, 90.0],
    },
}


def ground(plan):
    """Stiffness over G for sway and rocking, and the settlement at the person's place for a unit of each."""
    with open(os.path.join(HERE, "halfspace_block.json")) as file:
        case = json.load(file)[plan["ground"]]
    answers = case["answers"]["none"]

    def infinite(pick):
        near, far = answers["4 cells, 6 rows"], answers["4 cells, 8 rows"]
        a, b = near["reach"], far["reach"]
        return (pick(far) * b - pick(near) * a) / (b - a)

    k = np.array([[infinite(lambda one: one["stiffness"][i][j]) for j in (0, 4)] for i in (0, 4)])
    at = case["places"].index(plan["person"][0])
    s = np.array([infinite(lambda one: one["surface"][name][at]) for name in ("x", "ry")])
    return k, s


def beam(height, tube, count=10):
    """Stiffness and mass of an upright tube, node by node from the foot: sway, turn."""
    d, t = tube
    area = math.pi / 4 * (d**2 - (d - 2 * t) ** 2)
    second = math.pi / 64 * (d**4 - (d - 2 * t) ** 4)
    length = height / count
    phi = 12 * STEEL_E * second / (STEEL_G * area / 2 * length**2)
    e = STEEL_E * second / (length**3 * (1 + phi))
    l = length
    # A positive turn carries the top towards the positive axis: the slope of the sway.
    k = e * np.array(
        [
            [12, 6 * l, -12, 6 * l],
            [6 * l, (4 + phi) * l**2, -6 * l, (2 - phi) * l**2],
            [-12, -6 * l, 12, -6 * l],
            [6 * l, (2 - phi) * l**2, -6 * l, (4 + phi) * l**2],
        ]
    )
    m = STEEL_RHO * area * length / 420 * np.array(
        [
            [156, 22 * l, 54, -13 * l],
            [22 * l, 4 * l**2, 13 * l, -3 * l**2],
            [54, 13 * l, 156, -22 * l],
            [-13 * l, -3 * l**2, -22 * l, 4 * l**2],
        ]
    )
    size = 2 * (count + 1)
    stiff, mass = np.zeros((size, size)), np.zeros((size, size))
    for i in range(count):
        at = slice(2 * i, 2 * i + 4)
        stiff[at, at] += k
        mass[at, at] += m
    return stiff, mass


def frame(plan):
    """Mass, complex stiffness without frequency, dashpots; unknowns: base sway and turn, turn of the foot, column's nodes."""
    k_ground, _ = ground(plan)
    rho = plan["unit_weight"] / G0
    modulus = rho * plan["speed"] ** 2
    column, shaft = beam(plan["height"], plan["tube"])
    nodes = len(column) // 2
    foot = plan["depth"] + plan["gap"]
    # The column's foot sways with the block and turns on the joint.
    take = np.zeros((2 * nodes, 3 + 2 * (nodes - 1)))
    take[0, 0], take[0, 1] = 1.0, foot
    take[1, 2] = 1.0
    for i in range(2, 2 * nodes):
        take[i, 1 + i] = 1.0
    size = take.shape[1]
    k = (1 + 2j * 0.002) * take.T @ column @ take
    m = take.T @ shaft @ take
    side, depth = plan["side"], plan["depth"]
    block = CONCRETE_RHO * side * side * depth
    h = depth / 2
    m[:2, :2] += block * np.array([[1, h], [h, h * h + (depth**2 + side**2) / 12]])
    plate = STEEL_RHO * plan["plates"][0] ** 2 * plan["plates"][1]
    m[:2, :2] += plate * np.array([[1, foot], [foot, foot * foot]])
    k[:2, :2] += (1 + 2j * 0.02) * modulus * k_ground
    joint = (1 + 2j * 0.005) * plan["joint"]
    k[1, 1] += joint
    k[2, 2] += joint
    k[1, 2] -= joint
    k[2, 1] -= joint
    load, centre, inertia = plan["load"]
    top = size - 2
    m[top, top] += plate
    m[top:, top:] += load * np.array([[1, centre], [centre, centre**2]])
    m[-1, -1] += inertia
    # Hall's analogues of a rigid disc of the same area and second moment: dashpots of sway and rocking.
    r = side / math.sqrt(math.pi)
    rr = (side**4 / 12 * 4 / math.pi) ** 0.25
    nu = plan["nu"]
    sway = 4.6 / (2 - nu) * rho * plan["speed"] * r**2
    about_base = m[1, 1].real
    mass_ratio = 3 * (1 - nu) * about_base / (8 * rho * rr**5)
    rocking = 0.8 * rho * plan["speed"] * rr**4 / ((1 - nu) * (1 + mass_ratio))
    c = np.zeros((size, size))
    c[0, 0], c[1, 1] = sway, rocking
    return m, k, c, take


def person(plan):
    """Turn in arcsec of block and star under the person."""
    k, s = ground(plan)
    modulus = plan["unit_weight"] / G0 * plan["speed"] ** 2
    return ARCSEC * np.linalg.solve(modulus * k, plan["person"][1] * G0 * s)[1]


def wind(plan):
    """Root mean square of the turn along the wind, arcsec, after the guider or within the exposure."""
    m, k, c, take = frame(plan)
    size = len(m)
    speed, (z0, least) = plan["wind"], plan["roughness"]
    height = max(plan["gap"] + plan["height"] + plan["load"][1], least)
    intensity = 1 / math.log(height / z0)
    eddies = 300 * (height / 200) ** (0.67 + 0.05 * math.log(z0))
    pressure = 0.5 * AIR * speed**2
    force = np.zeros(size)
    telescope = TELESCOPE_DRAG * pressure * plan["area"]
    force[-2] += telescope
    force[-1] += telescope * plan["load"][1]
    nodes = (size - 3) // 2 + 1
    share = np.ones(nodes)
    share[0] = share[-1] = 0.5
    per_node = COLUMN_DRAG * pressure * plan["tube"][0] * plan["height"] * share / share.sum()
    along = np.zeros(2 * nodes)
    along[0::2] = per_node
    force += take.T @ along
    f = np.concatenate([np.geomspace(1e-4, 3, 4000), np.linspace(3, 60, 12000)[1:]])
    window = min(plan["exposure"], plan["guiding"])
    sinc = np.sinc(f * window)
    if plan["guiding"] < plan["exposure"]:
        kept = 1 + sinc**2 - 2 * sinc**2 * np.cos(2 * math.pi * f * window)
    else:
        kept = 1 - sinc**2
    w = 2 * math.pi * f
    turn = np.array([np.linalg.solve(k - o * o * m + 1j * o * c, force)[-1] for o in w])
    lowered = f * eddies / speed
    spectrum = 6.8 * lowered / (1 + 10.2 * lowered) ** (5 / 3) / f
    variance = np.trapezoid(kept * np.abs(turn) ** 2 * 4 * intensity**2 * spectrum, f)
    return ARCSEC * math.sqrt(variance)


# As the plan states them: force factors of telescope and tube (common practice and a cylinder below the critical speed).
TELESCOPE_DRAG = 1.3
COLUMN_DRAG = 1.2
# Wind across its own direction, over that along it.
ACROSS = 0.375


def star(plan, rms, turn):
    """Growth of the round width and the peak's loss, by an image."""
    w = plan["seeing"]
    s0 = w / 2.354820045
    wide = [math.hypot(s0, rms[0]), math.hypot(s0, rms[1])]
    away = plan["guiding"] if plan["guiding"] < plan["exposure"] else plan["exposure"] / 2
    share = away / plan["exposure"]
    step = w / 12
    reach = 2.5 * w + abs(turn)
    grid = np.arange(-reach, reach + step, step)
    x, y = np.meshgrid(grid, grid)

    def bell(at):
        return (
            s0**2 / (wide[0] * wide[1])
            * np.exp(-0.5 * ((x - at) / wide[0]) ** 2 - 0.5 * (y / wide[1]) ** 2)
        )

    image = (1 - share) * bell(0.0) + share * bell(turn)

    def misfit(p):
        return (p[0] * np.exp(-0.5 * ((x - p[1]) / p[2]) ** 2 - 0.5 * ((y - p[3]) / p[4]) ** 2) - image).ravel()

    found = least_squares(misfit, [1, 0, s0, 0, s0], xtol=1e-14, ftol=1e-14, gtol=1e-14).x
    fine = np.linspace(-0.2 * w, 0.2 * w + abs(turn), 20001)
    ridge = s0**2 / (wide[0] * wide[1]) * (
        (1 - share) * np.exp(-0.5 * (fine / wide[0]) ** 2) + share * np.exp(-0.5 * ((fine - turn) / wide[0]) ** 2)
    )
    return math.sqrt(found[2] * found[4]) / s0 - 1, ridge.max()


def first_frequency(plan):
    m, k, _, _ = frame(plan)
    return math.sqrt(min(np.linalg.eigvals(np.linalg.solve(m, k.real)).real)) / (2 * math.pi)


def main():
    found = {}
    for name, plan in PLANS.items():
        turn, rms = person(plan), wind(plan)
        blown, blown_peak = star(plan, [rms, ACROSS * rms], 0.0)
        stood, stood_peak = star(plan, [0.0, 0.0], turn)
        found[name] = {
            "joint_n_m_per_rad": plan["joint"],
            "first_frequency_hz": first_frequency(plan),
            "stand_arcsec": turn,
            "wind_rms_arcsec": rms,
            "wind_growth_ratio": blown,
            "wind_peak_left_ratio": blown_peak,
            "stand_growth_ratio": stood,
            "stand_peak_left_ratio": stood_peak,
        }
    with open(os.path.join(HERE, "star_again.json"), "w") as file:
        json.dump(found, file, indent=1)
        file.write("\n")
    for name, one in found.items():
        print(name, {key: round(value, 6) for key, value in one.items()})


if __name__ == "__main__":
    main()
