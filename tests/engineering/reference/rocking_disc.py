"""A rigid disc that rocks on a half-space: dynamic stiffness and dashpot, solved anew.

The disc is smooth below (relaxed contact). Its pressure p(r) cos(theta) is a sum of functions whose Hankel transforms of
the first order are spherical Bessel functions j_1, j_3, j_5, ...; Galerkin's method on the mixed boundary problem gives
the moment for a unit turn. The half-space's own compliance is Lamb's (1904), with a hysteretic loss of one per mille so
that the Rayleigh pole stands beside the path of integration. At rest the answer must be Borowicka's 8 G r^3/(3 (1 - nu)).

Rows are given for the square of the same second moment: a0 = omega B/V_s with its half-side B.
Writes rocking_disc.json. Needs numpy and scipy.
"""

import json
import pathlib

import numpy as np
from scipy.special import spherical_jn

TERMS = 6
LOSS = 1e-3


def compliance(k, ks, nu):
    """Vertical displacement for a unit of pressure at the wave number k, over the static one; G = r = 1."""
    kp = ks * np.sqrt((1 - 2 * nu) / (2 * (1 - nu)))
    gp, gs = np.sqrt(k * k - kp * kp + 0j), np.sqrt(k * k - ks * ks + 0j)
    gp, gs = np.where(gp.real < 0, -gp, gp), np.where(gs.real < 0, -gs, gs)
    rayleigh = (2 * k * k - ks * ks) ** 2 - 4 * k * k * gp * gs
    return -ks * ks * gp / rayleigh


def path(a0):
    """Gauss points: fine about the poles, then out to where j_n^2 has died."""
    edges = np.concatenate([np.linspace(0, 3 * max(a0, 0.3), 400), np.linspace(3 * max(a0, 0.3), 400, 2400)[1:]])
    x, w = np.polynomial.legendre.leggauss(8)
    mid, half = 0.5 * (edges[1:] + edges[:-1]), 0.5 * (edges[1:] - edges[:-1])
    return (mid[:, None] + half[:, None] * x).ravel(), (half[:, None] * w).ravel()


def stiffness(a0, nu):
    """Moment for a unit turn over G r^3: complex, at rest 8/(3 (1 - nu))."""
    k, w = path(a0)
    ks = a0 * np.sqrt(1 / (1 + 2j * LOSS))
    static = (1 - nu) / k
    u = compliance(k, ks, nu) / (1 + 2j * LOSS) if a0 > 0 else static
    j = np.array([spherical_jn(2 * n + 1, k) for n in range(TERMS)])
    # A = int u(k) j_m j_n k dk; the part at rest, (1 - nu) int j_m j_n dk, is known: (1 - nu) pi/(2 (4n + 3)) on the diagonal.
    rest = np.diag([(1 - nu) * np.pi / (2 * (4 * n + 3)) for n in range(TERMS)])
    a = rest + (j * ((u - static) * k * w)) @ j.T
    # The turn u = r works on the pressure by int p r^2 dr = 2 lim P(k)/k = 2/3 c_0; the moment is pi times that.
    b = np.zeros(TERMS, complex)
    b[0] = 2 / 3
    return np.pi * 2 / 3 * np.linalg.solve(a, b)[0]


# A square's half-side B against the disc of the same second moment, pi r^4/4 = (2 B)^4/12.
DISC = (16 / (3 * np.pi)) ** 0.25

rows = []
for nu in (0.0, 1 / 3, 0.35, 0.45):
    rest = 8 / (3 * (1 - nu))
    near = stiffness(1e-3, nu)
    assert abs(near.real / rest - 1) < 2e-3, (nu, near, rest)
    for a0 in (0.2, 0.35, 0.5, 0.75, 1.0, 1.25, 1.5):
        found = stiffness(a0 * DISC, nu)
        # The loss of one per mille itself gives 2 LOSS of the real part; it is taken out.
        dashpot = (found.imag - 2 * LOSS * found.real) / (a0 * DISC)
        row = {"poisson_ratio": nu, "a0": a0, "stiffness_ratio": found.real / rest, "dashpot_over_rho_vs_b4": dashpot * DISC**4}
        rows.append({name: round(value, 6) for name, value in row.items()})
pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps({"rows": rows}, indent=1) + "\n")
