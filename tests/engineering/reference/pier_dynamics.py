"""Pier on its ground: frequencies by PyNite, response by direct integration with scipy.

Run with PyNiteFEA 3.2.0 and scipy 1.17.1; writes pier_dynamics.json. Nothing here is shared with the engine. In the
library's frame the block and the load are stiff massless bars with two masses each, so far apart that mass and inertia
are right; the ground's coupled springs are a sway spring at the height of the centre of stiffness and a rocking spring;
joint and mount are pieces of a fifth of a millimetre whose EI over their length is the spring. The time history integrates the
full system with modal damping by an adaptive Runge-Kutta method of eighth order.
"""
import json
import pathlib
import numpy as np
from Pynite import FEModel3D
from scipy.integrate import solve_ivp

RIGS = {
    "held": dict(ground=[1e13, 0.0, 1e13], joint=1e12, mount=1e11),
    "embedded": dict(ground=[229.3e6, 229.3e6 / 3, 178.6e6], joint=1e12, mount=1e11),
    "no_side_contact": dict(ground=[83.64e6, 0.0, 23.08e6], joint=1e12, mount=1e11),
    "whole": dict(ground=[150e6, 45e6, 120e6], joint=6e6, mount=2e5),
}
SHEAR = 1.8e8  # of the column in the time history, N
BLOCK = dict(mass=2400.0, centre=0.5, inertia=400.0, foot=1.05)
COLUMN = dict(length=1.2, ei=6.215e6, mass=41.65)
LOAD = dict(mass=60.0, centre=0.25, inertia=4.0)
N = 16
PIECE = 0.0002
AREA = 1e4  # so large that nothing stretches


def build(rig):
    model = FEModel3D()
    rho = 1.0
    kx, kxr, kr = rig["ground"]
    heights = {}

    def node(name, y):
        heights[name] = y
        model.add_node(name, 0, y, 0)
        model.def_support(name, False, False, True, True, True, False)

    def member(name, a, b, ei, mass):
        model.add_material(name, ei, ei, 0.3, mass, None)
        model.add_section(name, AREA, 1.0, 1.0, 1.0)
        model.add_member(name, a, b, name, name)

    stiff = 1e11
    arm = (BLOCK["inertia"] / BLOCK["mass"]) ** 0.5
    spots = sorted({0.0, kxr / kx, BLOCK["centre"] - arm, BLOCK["centre"] + arm, BLOCK["foot"]})
    for i, y in enumerate(spots):
        node(f"b{i}", y)
    for i in range(len(spots) - 1):
        member(f"mb{i}", f"b{i}", f"b{i+1}", stiff, 1e-9)
    at = {y: f"b{i}" for i, y in enumerate(spots)}
    model.def_support(at[0.0], False, True, True, True, True, False)
    model.def_support_spring(at[0.0], "RZ", kr - kx * (kxr / kx) ** 2)
    model.def_support_spring(at[kxr / kx], "DX", kx)
    foot = BLOCK["foot"] + PIECE
    for i in range(N + 1):
        node(f"c{i}", foot + COLUMN["length"] * i / N)
    member("joint", at[BLOCK["foot"]], "c0", rig["joint"] * PIECE, 1e-9)
    for i in range(N):
        member(f"mc{i}", f"c{i}", f"c{i+1}", COLUMN["ei"], COLUMN["mass"] / AREA)
    top = foot + COLUMN["length"]
    node("l0", top + PIECE)
    member("mount", f"c{N}", "l0", rig["mount"] * PIECE, 1e-9)
    # One mass at the pivot, the other above the centre: mass, centre and inertia of the load.
    below = LOAD["centre"]
    above = LOAD["inertia"] / LOAD["mass"] / below
    node("high", top + PIECE + below + above)
    member("mhigh", "l0", "high", 1e10, 1e-9)
    arm = (BLOCK["inertia"] / BLOCK["mass"]) ** 0.5
    for name, mass in ((at[BLOCK["centre"] - arm], BLOCK["mass"] / 2), (at[BLOCK["centre"] + arm], BLOCK["mass"] / 2),
                       ("l0", LOAD["mass"] * above / (below + above)), ("high", LOAD["mass"] * below / (below + above))):
        model.add_node_load(name, "FY", -mass, case="Mass")
    # Consistent mass of the members by their own weight; a line load would be lumped with the wrong length.
    model.add_member_self_weight("FY", -1.0, case="Mass")
    model.add_load_combo("Mass", {"Mass": 1.0})
    return model


def frequencies(name):
    model = build(RIGS[name])
    model.analyze_modal(num_modes=12, mass_combo_name="Mass", mass_direction="Y", gravity=1.0)
    return [float(f) for f in sorted(model.frequencies)][:8]


def matrices(rig, n=40):
    """The same rig as full matrices, assembled here with cubic beam elements, in absolute coordinates."""
    foot, length, ei = BLOCK["foot"], COLUMN["length"], COLUMN["ei"]
    le = length / n
    phi = 12 * ei / (SHEAR * le * le)
    kb = ei / (le**3 * (1 + phi)) * np.array([
        [12, 6 * le, -12, 6 * le], [6 * le, (4 + phi) * le**2, -6 * le, (2 - phi) * le**2],
        [-12, -6 * le, 12, -6 * le], [6 * le, (2 - phi) * le**2, -6 * le, (4 + phi) * le**2]])
    size = 2 + 2 * (n + 1) + 1  # block u, turn; nodes; load turn
    k, m = np.zeros((size, size)), np.zeros((size, size))
    kx, kxr, kr = rig["ground"]
    k[0, 0] += kx; k[0, 1] += kxr; k[1, 0] += kxr; k[1, 1] += kr
    penalty = 1e12
    # foot moves with the block
    c = np.zeros(size); c[0] = 1; c[1] = foot; c[2] = -1
    k += penalty * np.outer(c, c)
    c = np.zeros(size); c[1] = 1; c[3] = -1
    k += rig["joint"] * np.outer(c, c)
    for e in range(n):
        d = [2 + 2 * e + j for j in range(4)]
        k[np.ix_(d, d)] += kb
    c = np.zeros(size); c[3 + 2 * n] = 1; c[-1] = -1
    k += rig["mount"] * np.outer(c, c)
    b = np.zeros(size); b[0] = 1; b[1] = BLOCK["centre"]
    m += BLOCK["mass"] * np.outer(b, b)
    m[1, 1] += BLOCK["inertia"]
    for i in range(n + 1):
        share = COLUMN["mass"] * le * (0.5 if i in (0, n) else 1.0)
        m[2 + 2 * i, 2 + 2 * i] += share
        m[3 + 2 * i, 3 + 2 * i] += share * le**2 / 1e4
    c = np.zeros(size); c[2 + 2 * n] = 1; c[-1] = LOAD["centre"]
    m += LOAD["mass"] * np.outer(c, c)
    m[-1, -1] += LOAD["inertia"]
    return k, m


def history():
    """Turn of the load under 300 N and 200 N m on the base, a step of 0.6 s as a sine half-wave, 2 per cent in each mode."""
    from scipy.linalg import eigh
    k, m = matrices(RIGS["whole"])
    values, vectors = eigh(k, m)
    omega = np.sqrt(values)
    keep = omega < 2 * np.pi * 3000
    zeta = 0.02
    phi = vectors[:, keep]
    c = m @ phi @ np.diag(2 * zeta * omega[keep]) @ phi.T @ m
    # direct integration of the reduced full system in physical coordinates spanned by the kept shapes
    load = np.zeros(len(k)); load[0] = 300.0; load[1] = 200.0
    p, w = phi.T @ load, omega[keep]
    cm = phi.T @ c @ phi
    n = len(w)

    def rate(t, s):
        f = np.sin(np.pi * t / 0.6) if t < 0.6 else 0.0
        return np.concatenate([s[n:], p * f - cm @ s[n:] - w**2 * s[:n]])

    times = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.62, 0.65, 0.7, 0.8]
    out = solve_ivp(rate, (0, 0.8), np.zeros(2 * n), method="DOP853", rtol=1e-10, atol=1e-16, t_eval=times, max_step=1e-3)
    turn = phi[-1] @ out.y[:n]
    return dict(times_s=times, turns_arcsec=[float(v) for v in turn * 180 * 3600 / np.pi])


if __name__ == "__main__":
    found = {name: frequencies(name) for name in RIGS}
    json.dump(dict(frequencies_hz=found, history=history()), pathlib.Path(__file__).with_suffix(".json").open("w"), indent=1)
    print(json.dumps(found, indent=1)[:1500])
