"""Two plans again, from first principles: a person who comes, a walk, a door, the wind, the star's growth and its peak.

Nothing of the engine is used. The ground is the finite-element block of halfspace_block.py (free sides), solved here in two
boxes and taken to an infinite one, with the surface's movement in all three directions; the column is a chain of Timoshenko
elements. Wind, walk and door go through the whole complex frequency response, line by line, and not through modes; the
guider has its own transfer function for the wind and works interval by interval on the walk and the door. The star is an
image: the seeing at all places where the star is, pixel by pixel, and a Gaussian fitted to them by least squares.

A walk is a row of feet at uneven times, drawn by chance a good many times over, at eleven paces from 1.6 to 2.1 Hz: what is
kept is the middle of the paces and the tenth of eleven. Each frequency of a foot's weight tilts the ground by its own factor
over a weight at rest (waves.py), at that foot's own distance. All feet push sideways, not only the near ones.

One figure is handed over: the stiffness of the base joint, which a stage of its own finds and other references hold.

Run with: pip install numpy scipy scikit-fem cvxopt; python3 star_again.py
It writes star_again.json beside itself.
"""

import json
import math
import os

import halfspace_block
import numpy as np
import waves
from scipy.interpolate import CloughTocher2DInterpolator
from scipy.optimize import least_squares

HERE = os.path.dirname(os.path.abspath(__file__))
ARCSEC = 206264.806
G0 = 9.80665
STEEL_E, STEEL_G, STEEL_RHO = 210e9, 81e9, 7850.0
CONCRETE_RHO = 2400.0
AIR = 1.25

PLANS = {
    "metre cube, guided": {
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
        "walker": 80.0,
        "walk": [[1.2, -2.5], [1.2, 2.5]],
        "stride": 1.0 / 1.8,
        "door": [1.5, 0.0],
        "across": 3.0,
    },
    "smaller block, not guided": {
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
        "walker": 70.0,
        "walk": [[2.4, -0.9], [-1.6, -0.9]],
        "stride": 1.0 / 1.8,
        "door": [1.25, 0.0],
        "across": 2.5,
    },
}


class Ground:
    """The block in its ground, modulus one: stiffness of sway and rocking, and how the surface moves with a unit of each."""

    def __init__(self, side, depth, nu):
        boxes = [self.box(side, depth, nu, rows) for rows in (6, 8)]
        (a, near, moved), (b, far, moved_far) = boxes
        # The box's error goes with one over its reach.
        self.k = (far * b - near * a) / (b - a)
        self.parts = [(moved, -a / (b - a)), (moved_far, b / (b - a))]

    @staticmethod
    def box(side, depth, nu, rows):
        half = (side / 2, side / 2)
        model = halfspace_block.Model(half, depth, 4, rows, halfspace_block.uniform, nu, marks=(depth, depth))
        fields, k, _ = model.solve("x", (depth, depth))
        on = np.abs(model.nodes[2]) < 1e-9
        points = model.nodes[:2, on].T
        near = (points < 6.0).all(axis=1)
        values = fields.reshape(-1, 3, 2)[on][near]
        moved = CloughTocher2DInterpolator(points[near], values.reshape(-1, 6))
        return model.reach, k, lambda x, y: moved(x, y).reshape(3, 2)

    def moved(self, place):
        """Movement along x, y and down at a place of the surface for a unit of sway along x and of turn with it."""
        x, y = place
        quarter = sum(weight * moved(abs(x), abs(y)) for moved, weight in self.parts)
        # Along x the field is the same on both sides; across it and down it changes with the side.
        return quarter * np.array([[1.0], [math.copysign(1, x) * math.copysign(1, y)], [math.copysign(1, x)]])

    def loads(self, place, force):
        """Force and moment on the block in both planes, east and north, for a force (east, north, down) at a place."""
        x, y = place
        east = force @ self.moved((x, y))
        # The square block's other plane is this one with the axes changed round.
        north = np.array([force[1], force[0], force[2]]) @ self.moved((y, x))
        return np.array([east, north])


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
    k[:2, :2] += (1 + 2j * 0.02) * modulus * plan["ground"].k
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
    modulus = plan["unit_weight"] / G0 * plan["speed"] ** 2
    place, mass = plan["person"]
    load = plan["ground"].loads((place, 0.0), np.array([0.0, 0.0, mass * G0]))[0]
    return ARCSEC * np.linalg.solve(modulus * plan["ground"].k, load)[1]


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


# Time between samples and the time that a walk or a door is followed, s.
STEP, LONG = 2e-3, 32.768
# Above this nothing of a step is left.
HIGHEST = 160.0


def response(plan):
    """Turn of the star, arcsec, for a unit force and a unit moment on the block's base, at every frequency that is followed."""
    m, k, c, _ = frame(plan)
    f = np.fft.rfftfreq(round(LONG / STEP), STEP)
    answer = np.zeros((2, len(f)), complex)
    unit = np.eye(len(m))[:, :2]
    for i in np.flatnonzero(f <= HIGHEST):
        o = 2 * math.pi * f[i]
        answer[:, i] = ARCSEC * np.linalg.solve(k - o * o * m + 1j * o * c, unit)[-1]
    answer[:, 0] = answer[:, 0].real
    return f, answer


def quicker(plan, f, distance):
    """How many times as far a weight at this distance tilts the ground at each frequency as one at rest."""
    phase = 2 * math.pi * f * distance / plan["speed"]
    known = np.array([0.0, *waves.PHASES])
    ratio = np.array([1.0, *(waves.ratio(one, plan["nu"]) for one in waves.PHASES)]) if "waves" not in plan else plan["waves"]
    plan["waves"] = ratio
    beyond = ratio[-1] + (phase - known[-1]) * (ratio[-1] - ratio[-2]) / (known[-1] - known[-2])
    return np.where(phase > known[-1], beyond, np.interp(phase, known, ratio))


def foot(pace):
    """Down, along the way and outward, over weight: Li's terms for a walk that carries its walker, a soft heel of 0.13 of
    the weight in 20 ms and 0.16 in 50 ms, and a fourth harmonic of 0.058 under one arch; a fifth along, braking first, and a
    twentieth out."""
    contact = 1 / (0.76 * pace)
    t = np.arange(0, contact, STEP)
    a = [1.211 - 0.0698 * pace, 0.1052 * pace - 0.1284, 0.3002 * pace - 0.1534, 0.0416 * pace - 0.0288, 0.0608 - 0.0275 * pace]
    down = sum(value * np.sin((n + 1) * math.pi * t / contact) for n, value in enumerate(a))
    down /= down.sum() * STEP * pace
    for height, lasts in ((0.13, 0.02), (0.16, 0.05)):
        down += np.where(t < lasts, height * np.sin(math.pi * t / lasts), 0)
    down += 0.058 * np.sin(8 * math.pi * pace * t) * np.sin(math.pi * t / contact)
    return down, 0.2 * np.sin(2 * math.pi * t / contact), 0.05 * np.sin(math.pi * t / contact)


def steps(plan):
    """Feet along the path, 5 cm left and right of it in turn: what a newton down, along and outward does, and the distance."""
    start, end = map(np.array, plan["walk"])
    length = np.linalg.norm(end - start)
    way = (end - start) / length
    feet = []
    for i in range(int(length / plan["stride"] + 1e-9) + 1):
        side = 1 if i % 2 == 0 else -1
        out = side * np.array([-way[1], way[0]])
        place = start + way * i * plan["stride"] + 0.05 * out
        forces = ([0, 0, 1], [*way, 0], [*out, 0])
        feet.append(([plan["ground"].loads(place, np.array(force, float)) for force in forces], np.linalg.norm(place)))
    return feet


def walked(plan, answers, pace, chance):
    """The star's way through one walk, arcsec east and north, until a second and a half after the last foot is up."""
    f, answer = answers
    traces = [np.fft.rfft(trace, round(LONG / STEP)) for trace in foot(pace)]
    spectrum, at = np.zeros((2, len(f)), complex), 0.0
    for loads, distance in plan["feet"]:
        late = np.exp(-2j * math.pi * f * at)
        factors = (quicker(plan, f, distance), 1.0, 1.0)
        for load, trace, factor in zip(loads, traces, factors):
            spectrum += (load @ answer) * factor * trace * late
        last, at = at, at + (1 + 0.03 * chance.standard_normal()) / pace
    turns = plan["walker"] * G0 * np.fft.irfft(spectrum, round(LONG / STEP))
    return turns[:, : round((last + 1 / (0.76 * pace) + 1.5) / STEP)].T


def shut(plan, answers):
    """The star's way after a door has fallen shut in the east wall: 10 N s outward at a metre's height within 15 ms. The wall
    passes the push on where it stands, presses there and lifts at the wall across."""
    f, answer = answers
    t = np.arange(0, 0.015 + STEP / 2, STEP)
    blow = np.sin(math.pi * t / 0.015)
    blow *= 10.0 / (blow.sum() * STEP)
    x, y = plan["door"]
    tip = 1.0 / plan["across"]
    ground = plan["ground"]
    load = ground.loads((x, y), np.array([1.0, 0, tip])) + ground.loads((x - plan["across"], y), np.array([0, 0, -tip]))
    spectrum = (load @ answer) * quicker(plan, f, x) * np.fft.rfft(blow, round(LONG / STEP))
    return np.fft.irfft(spectrum, round(LONG / STEP))[:, : round(4.0 / STEP)].T


def followed(plan, turns, chance):
    """The same after the guider, which corrects once an interval by the mean of the interval before, and comes at any time."""
    every = round(plan["guiding"] / STEP)
    if plan["guiding"] >= plan["exposure"]:
        return turns
    first = int(chance.integers(every))
    turns = np.concatenate([np.zeros((first, 2)), turns, np.zeros((2 * every, 2))])
    known, seen = np.zeros(2), []
    for start in range(0, len(turns), every):
        part = turns[start : start + every]
        seen.append(part - known)
        known = part.mean(axis=0)
    return np.concatenate(seen)


def star(plan, rms, places, shares):
    """Growth of the round width and the peak's loss, by an image: the seeing, widened by what goes on all the time, at every
    place for its share of the exposure."""
    w = plan["seeing"]
    s0 = w / 2.354820045
    wide = [math.hypot(s0, rms[0]), math.hypot(s0, rms[1])]
    step = w / 12
    low, high = places.min(axis=0).clip(max=0) - 2.5 * w, places.max(axis=0).clip(min=0) + 2.5 * w
    x, y = np.arange(low[0], high[0] + step, step), np.arange(low[1], high[1] + step, step)

    def bells(line, at, sigma):
        return np.exp(-0.5 * ((line[:, None] - at[None]) / sigma) ** 2)

    height = s0**2 / (wide[0] * wide[1])
    image = height * np.einsum("iq,jq,q->ij", bells(x, places[:, 0], wide[0]), bells(y, places[:, 1], wide[1]), shares, optimize=True)

    def misfit(p):
        return (p[0] * np.outer(bells(x, p[1:2], p[2])[:, 0], bells(y, p[3:4], p[4])[:, 0]) - image).ravel()

    found = least_squares(misfit, [1, 0, s0, 0, s0], xtol=1e-14, ftol=1e-14, gtol=1e-14).x
    return math.sqrt(found[2] * found[4]) / s0 - 1, highest(places, shares, wide, height, found[[1, 3]])


def highest(places, shares, wide, height, at):
    """The image's highest point, from near the fitted middle."""

    def bright(x, y):
        far = ((places[:, 0] - x) / wide[0]) ** 2 + ((places[:, 1] - y) / wide[1]) ** 2
        return height * (shares * np.exp(-0.5 * far)).sum()

    best, reach = bright(*at), 0.2
    while reach > 1e-5:
        around = [(at[0] + dx, at[1] + dy) for dx, dy in ((reach, 0), (-reach, 0), (0, reach), (0, -reach))]
        values = [bright(*one) for one in around]
        if max(values) > best:
            best, at = max(values), around[int(np.argmax(values))]
        else:
            reach /= 2
    return best


def once(plan, turns):
    """Places and shares when this happens once in the exposure, which is quiet for the rest of it."""
    turns = turns[: round(plan["exposure"] / STEP)]
    # Samples of the same hundredth of the seeing are taken together: thousands of them make a few hundred places.
    cell = plan["seeing"] / 100
    cells, counts = np.unique(np.round(turns / cell), axis=0, return_counts=True)
    shares = counts * STEP / plan["exposure"]
    return np.concatenate([cells * cell, [[0.0, 0.0]]]), np.concatenate([shares, [1 - shares.sum()]])


def came(plan, turn):
    away = plan["guiding"] if plan["guiding"] < plan["exposure"] else plan["exposure"] / 2
    share = away / plan["exposure"]
    return np.array([[0.0, 0.0], [turn, 0.0]]), np.array([1 - share, share])


def first_frequency(plan):
    m, k, _, _ = frame(plan)
    return math.sqrt(min(np.linalg.eigvals(np.linalg.solve(m, k.real)).real)) / (2 * math.pi)


# Walks drawn at each pace.
WALKS = 24


def walks(plan, answers):
    """Peak and root mean square of the walk by pace, each the mean of many, and what one in the middle costs the star."""
    plan["feet"] = steps(plan)
    paces = np.linspace(1.6, 2.1, 11)
    found = []
    for pace in paces:
        chance = np.random.default_rng(round(1000 * pace))
        rows = []
        for _ in range(WALKS):
            turns = walked(plan, answers, pace, chance)
            about = turns - turns.mean(axis=0)
            seen = once(plan, followed(plan, turns, chance))
            rows.append([np.hypot(*turns.T).max(), math.sqrt((about**2).sum(axis=1).mean()), *star(plan, [0, 0], *seen)])
        found.append(np.mean(rows, axis=0))
    found = np.array(found)
    peaks, rms = np.sort(found[:, 0]), np.sort(found[:, 1])
    return {
        "walk_middle_peak_arcsec": peaks[5],
        "walk_peak_arcsec": peaks[9],
        "walk_middle_rms_arcsec": rms[5],
        "walk_growth_ratio": np.median(found[:, 2]),
        "walk_peak_left_ratio": np.median(found[:, 3]),
    }


def main():
    found = {}
    for name, plan in PLANS.items():
        plan["ground"] = Ground(plan["side"], plan["depth"], plan["nu"])
        turn, rms = person(plan), wind(plan)
        here, always = np.zeros((1, 2)), np.ones(1)
        blown, blown_peak = star(plan, [rms, ACROSS * rms], here, always)
        stood, stood_peak = star(plan, [0.0, 0.0], *came(plan, turn))
        answers = response(plan)
        door, chance = shut(plan, answers), np.random.default_rng(1)
        doors = [star(plan, [0.0, 0.0], *once(plan, followed(plan, door, chance))) for _ in range(WALKS)]
        found[name] = {
            "joint_n_m_per_rad": plan["joint"],
            "first_frequency_hz": first_frequency(plan),
            "stand_arcsec": turn,
            "wind_rms_arcsec": rms,
            "wind_growth_ratio": blown,
            "wind_peak_left_ratio": blown_peak,
            "stand_growth_ratio": stood,
            "stand_peak_left_ratio": stood_peak,
            **walks(plan, answers),
            "door_peak_arcsec": np.hypot(*door.T).max(),
            "door_growth_ratio": np.mean([one for one, _ in doors]),
            "door_peak_left_ratio": np.mean([one for _, one in doors]),
        }
    with open(os.path.join(HERE, "star_again.json"), "w") as file:
        json.dump(found, file, indent=1)
        file.write("\n")
    for name, one in found.items():
        print(name, {key: round(float(value), 6) for key, value in one.items()})


if __name__ == "__main__":
    main()
