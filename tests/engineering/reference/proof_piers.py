"""Made-up piers with known truth and what would be measured of them, for the ranges that a fit gives.

Shares nothing with the engine: ground by the finite elements of halfspace_block.json (a metre cube, Poisson's ratio 0.35),
column by sixteen beam elements with the load at its end, dashpots of Gazetas 1991 written again, the bare knock as the
loudest line in the spectrum of the rig's own response to a soft blow. The truth is drawn from what the plan says of each
unknown, and the measurements carry errors of their own and of the model: 1.5 % on a frequency with the mount, 2.5 % on one
without, 15 % on a lean of which 10 % is shared, 3 % on a pull.

Run with: pip install numpy scipy; python3 proof_piers.py [count]
It writes proof_piers.json beside itself.
"""

import json
import os
import sys

import numpy as np
from scipy.linalg import eig, eigh, solve
from scipy.stats import norm

HERE = os.path.dirname(os.path.abspath(__file__))
ARCSEC = 206264.806
GRAVITY = 9.80665

# The plan, and what it says of the unknowns: middles and standard deviations of logarithms, of the contact the normal's.
DENSITY = 17.5e3 / GRAVITY
SPEED = 150.0
PRIOR = json.load(open(os.path.join(HERE, "proof_prior.json")))
TUBE = dict(outside=0.2191, wall=0.0063, height=1.2)
E, RHO = 210e9, 7850.0


def ground_table(ground):
    """Sway, coupling, rocking over G, and the lean's loads, for sides held not, half and whole."""
    every = json.load(open(os.path.join(HERE, "halfspace_block.json")))[ground]
    table = {}
    for share, name in ((0.0, "none"), (0.5, "half"), (1.0, "full")):
        answers = every["answers"][name]
        best = max(answers.values(), key=lambda a: (a["cells"], a["reach"]))
        k = np.array(best["stiffness"])
        x, turn = best["surface"]["x"], best["surface"]["ry"]
        place = every["places"].index(1.0)
        table[share] = [k[0, 0], k[0, 4], k[4, 4], x[place], turn[place]]
    return table


EVEN = ground_table("cube 1, 0.35")


def over_g(share, table=EVEN):
    """A parabola through the three solutions."""
    shares = np.array(sorted(table))
    values = np.array([table[s] for s in shares])
    coefficients = np.linalg.solve(np.vander(shares, 3), values)
    return np.vander([share], 3)[0] @ coefficients


def beam(bending, mass, height, pieces=16):
    """Stiffness and mass of an upright beam, its foot free: movement and turn (towards +x) of each node."""
    h = height / pieces
    n = 2 * (pieces + 1)
    k, m = np.zeros((n, n)), np.zeros((n, n))
    ke = bending / h**3 * np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h], [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]])
    me = mass * h / 420 * np.array([[156, 22 * h, 54, -13 * h], [22 * h, 4 * h * h, 13 * h, -3 * h * h], [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h * h, -22 * h, 4 * h * h]])
    for e in range(pieces):
        k[2 * e : 2 * e + 4, 2 * e : 2 * e + 4] += ke
        m[2 * e : 2 * e + 4, 2 * e : 2 * e + 4] += me
    return k, m


class Pier:
    """Block (sway at its base, turn), beam, load (movement, turn)."""

    def __init__(self, truth, table=EVEN):
        self.truth = truth
        self.depth, self.upstand, self.gap = 1.0, PRIOR["upstand_m"], PRIOR["gap_m"]
        self.block_mass = PRIOR["block_mass_kg"]
        tall = self.depth + self.upstand
        self.block_centre, self.block_inertia = tall / 2, self.block_mass * (tall**2 + 1.0) / 12
        self.foot = tall + self.gap
        d, t = TUBE["outside"], TUBE["wall"]
        inside = d - 2 * t
        self.bending = E * np.pi * (d**4 - inside**4) / 64 * truth["column"]
        self.shaft = PRIOR["shaft_mass_kg"] / TUBE["height"]
        self.k_over_g = over_g(truth["contact"], table)

    def matrices(self, with_load, ground=None):
        truth = self.truth
        kb, mb = beam(self.bending, self.shaft, TUBE["height"])
        n = 2 + len(kb) + (2 if with_load else 0)
        k, m = np.zeros((n, n)), np.zeros((n, n))
        k[2 : 2 + len(kb), 2 : 2 + len(kb)] = kb
        m[2 : 2 + len(kb), 2 : 2 + len(kb)] = mb
        sway, coupling, rocking = ground if ground is not None else truth["modulus"] * self.k_over_g[:3]
        k[0:2, 0:2] += [[sway, coupling], [coupling, rocking]]
        # The block's turn carries its centre: x = sway + turn times height.
        c = self.block_centre
        m[0:2, 0:2] += self.block_mass * np.array([[1, c], [c, c * c]]) + np.diag([0, self.block_inertia])
        # Foot: moves with the block, turns against it by the joint's spring.
        stiff = 1e13
        tie = np.zeros(n)
        tie[[0, 1, 2]] = [1, self.foot, -1]
        k += stiff * np.outer(tie, tie)
        joint = np.zeros(n)
        joint[[1, 3]] = [1, -1]
        k += truth["joint"] * np.outer(joint, joint)
        m[2, 2] += PRIOR["base_plate_kg"]
        top = 2 + len(kb) - 2
        m[top, top] += PRIOR["top_plate_kg"]
        if with_load:
            load = n - 2
            mount = np.zeros(n)
            mount[[top + 1, load + 1]] = [1, -1]
            k += truth["mount"] * np.outer(mount, mount)
            # The mount turns about the top: the load's centre moves with its own turn.
            tie = np.zeros(n)
            tie[[top, load + 1, load]] = [1, truth["centre"], -1]
            k += stiff * np.outer(tie, tie)
            m[load, load] += truth["mass"]
            m[load + 1, load + 1] += truth["inertia"]
        else:
            m[top, top] += 0.5
        return k, m, top

    def mounted(self):
        k, m, _ = self.matrices(True)
        values = eigh(k, m + 1e-9 * np.eye(len(m)), eigvals_only=True, subset_by_index=[0, 0])
        return np.sqrt(values[0]) / (2 * np.pi)

    def bare(self):
        at = 54.0
        for _ in range(3):
            omega = 2 * np.pi * at
            speed = np.sqrt(self.truth["modulus"] / DENSITY)
            held = self.truth["contact"] * self.depth
            c3 = dashpots(omega, speed, held)
            sway, coupling, rocking = self.truth["modulus"] * self.k_over_g[:3]
            a0 = min(omega * 0.5 / speed, 1.5)
            # Pais and Kausel 1988, rocking of a square: 1 - 0.55 a0^2/(2 + a0^2), from memory.
            rocking *= 1 - 0.55 * a0**2 / (2 + a0**2)
            k, m, top = self.matrices(False, (sway, coupling, rocking))
            # The stiff ties take no loss: it would be none of the parts'.
            c = 2 * 0.004 / omega * k
            c[0:2, 0:2] += c3
            found = heard(k, c, m, top)
            if found is None or abs(found / at - 1) < 1e-3:
                break
            at = found
        return found

    def lean(self, newtons):
        sway, coupling, rocking, fx, my = self.k_over_g
        turn = np.linalg.solve([[sway, coupling], [coupling, rocking]], [fx, my])[1]
        return ARCSEC * abs(turn) * newtons / self.truth["modulus"]

    def pull(self, force):
        k, _, top = self.matrices(False)
        load = np.zeros(len(k))
        load[top] = force
        return ARCSEC * abs(solve(k, load)[top + 1])


def dashpots(omega, speed, held):
    push = DENSITY * 3.4 * speed / (np.pi * (1 - 0.35))
    slide = DENSITY * speed
    a0 = omega * 0.5 / speed
    side = 2 * push + 2 * slide
    part = min(0.25 + 0.65 * np.sqrt(a0) * max(held / 0.5, 1e-6) ** -0.25, 1.0)
    base = push / 12 * a0**2 / (1.8 + a0**2)
    coupling = side * part * held**2 / 2
    return np.array([[slide + side * held, coupling], [coupling, base + side * part * held**3 / 3]])


def heard(k, c, m, top):
    """The loudest line between 5 and 200 Hz of the top's acceleration after a soft blow there, one tenth of a second long."""
    w, shapes = eigh(k, m + 1e-9 * np.eye(len(m)))
    keep = w < (2 * np.pi * 1500) ** 2
    shapes = shapes[:, keep]
    kr, cr = shapes.T @ k @ shapes, shapes.T @ c @ shapes
    n = len(kr)
    state = np.block([[np.zeros((n, n)), np.eye(n)], [-kr, -cr]])
    values, vectors = np.linalg.eig(state)
    blow = np.concatenate([np.zeros(n), shapes[top]])
    weights = np.linalg.solve(vectors, blow)
    out = shapes[top] @ vectors[:n] * weights * values**2
    rate = 2000.0
    t = np.arange(int(0.6 * rate)) / rate + 0.02
    keep = (values.imag > 0) & (values.imag < 2 * np.pi * 400)
    y = np.zeros(len(t))
    for value, size in zip(values[keep], out[keep]):
        soft = np.exp(-((value.imag / 2 / np.pi / 250) ** 2) / 2)
        y += 2 * (size * soft * np.exp(value * t)).real
    padded = np.abs(np.fft.rfft(y, 1 << 15))
    hertz = np.fft.rfftfreq(1 << 15, 1 / rate)
    window = (hertz > 5) & (hertz < 200)
    return float(hertz[window][np.argmax(padded[window])])


def pier_of(luck, moved=None, table=EVEN):
    """Truth and measurements of one pier; some of its unknowns moved so many standard deviations of what the plan says. In
    ground of layers the truth of its stiffness is that of the even ground that holds the block as stiffly against rocking. None
    where nothing is heard of the bare pier."""
    middle, sd = PRIOR["middle"], PRIOR["sd"]
    z = luck.standard_normal(8)
    for k, away in (moved or {}).items():
        z[k] = away
    value = [middle[k] + sd[k] * z[k] for k in range(8)]
    mass = 60 * np.exp(value[5])
    truth = dict(
        modulus=np.exp(value[0]), contact=float(norm.cdf(value[1])), joint=np.exp(value[2]), column=np.exp(value[3]),
        mount=np.exp(value[4]), mass=mass, centre=0.3 * np.exp(value[6]), inertia=3.75 * np.exp(value[5] + 2 * value[7]),
    )
    pier = Pier(truth, table)
    off = lambda sd: np.exp(sd * luck.standard_normal())
    bare = pier.bare()
    if bare is None:
        return None
    shared = off(0.10)
    measured = dict(
        mounted=pier.mounted() * off(0.015) * off(0.003),
        bare=bare * off(0.025) * off(0.003),
        lean=pier.lean(80 * GRAVITY) * shared * off(0.112) * off(0.2),
        pull=pier.pull(200.0) * off(0.03) * off(0.05),
    )
    kept = {name: float(f"{measured[name]:.5g}") for name in measured}
    alike = pier.k_over_g[2] / over_g(truth["contact"])[2]
    told = dict(truth, modulus=truth["modulus"] * alike)
    kept["truth"] = {name: float(f"{told[name]:.5g}") for name in ("modulus", "contact", "joint", "column", "mount")}
    return kept


def main():
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    luck = np.random.default_rng(2323)
    made = []
    while len(made) < count:
        one = pier_of(luck)
        if one is not None:
            made.append(one)
    with open(os.path.join(HERE, "proof_piers.json"), "w") as out:
        out.write("[\n" + ",\n".join(json.dumps(one) for one in made) + "\n]\n")
    print(count, "piers; bare", np.percentile([m["bare"] for m in made], [5, 50, 95]), "mounted", np.percentile([m["mounted"] for m in made], [5, 50, 95]))


if __name__ == "__main__":
    main()
