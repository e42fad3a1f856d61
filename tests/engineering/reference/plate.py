"""A plate on an elastic half-space under a point load: share of the load inside a radius, by quadrature.

C(r) = r * integral of J1(t r)/(1 + t^3) dt, lengths in characteristic lengths; integrated between the zeros of J1.
Run: pip install numpy scipy && python plate.py > plate.json
"""

import json

import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.special import j1, jn_zeros

ZEROS = np.concatenate([[0.0], jn_zeros(1, 400)])


def inside(radius):
    edges = ZEROS / radius
    return radius * sum(quad(lambda t: j1(t * radius) / (1.0 + t**3), a, b, epsabs=1e-13)[0] for a, b in zip(edges[:-1], edges[1:]))


print(json.dumps({
    "quartile_radii": [brentq(lambda r: inside(r) - share, 0.05, 3.0) for share in (0.25, 0.75)],
    "central_pressure": float(quad(lambda t: t / (1.0 + t**3), 0.0, np.inf)[0] / (2.0 * np.pi)),
}, indent=1))
