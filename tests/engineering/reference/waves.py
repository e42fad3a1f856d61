"""Slope of the ground beside a vertical load that swings, over its slope beside the same load at rest: Lamb's integral.

The surface's displacement under a harmonic load P on a half-space is an integral over wave numbers k with the kernel
-k v_a k_b^2/R(k), R Rayleigh's function; its slope has J_1. What the load at rest does, (1 - nu)/r^2, is taken out of the
kernel first, so that the rest converges. Damping is hysteretic, 2 %, which keeps the Rayleigh pole off the path.

Rows: phase omega r/V_s and the ratio, for Poisson's ratios of 0.25, 0.35 and 0.45. Prints JSON. Needs numpy and scipy.
"""

import json

import numpy as np
from scipy.special import j1

PHASES = (0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0)


def ratio(phase, nu, damping=0.02):
    kb = phase / np.sqrt(1 + 2j * damping)
    ka = kb * np.sqrt((1 - 2 * nu) / (2 * (1 - nu)))
    k = np.concatenate([np.linspace(1e-6, 4 * phase, 400001), np.linspace(4 * phase, 4000, 2000001)[1:]])
    va, vb = np.sqrt(k * k - ka * ka), np.sqrt(k * k - kb * kb)
    kernel = -k * va * kb * kb / ((2 * k * k - kb * kb) ** 2 - 4 * k * k * va * vb)
    rest = np.trapezoid(k * (kernel - (1 - nu)) * j1(k), k)
    return float(abs(1 - nu + rest) / (1 - nu))


if __name__ == "__main__":
    rows = {f"nu_{nu:.2f}": [[phase, round(ratio(phase, nu), 3)] for phase in PHASES] for nu in (0.25, 0.35, 0.45)}
    print(json.dumps(rows, indent=1))
