"""Pressure under a rigid rectangular base without tension, by strips and a root, sharing no line with the engine.

The base turns about one axis on independent springs; the turn and the settlement that balance force and moment are
found by scipy, on 20 000 strips.

Run: pip install numpy scipy && python rigid_base.py > rigid_base.json
"""

import json

import numpy as np
from scipy.optimize import brentq

STRIPS = 20_000


def largest_pressure(force, moment, along, across):
    x = (np.arange(STRIPS) + 0.5) / STRIPS * along - along / 2.0
    strip = along / STRIPS * across

    def settle(turn):
        """Settlement at the centre for which the pressure carries the force at this turn."""
        def rest(middle):
            return np.sum(np.maximum(middle + turn * x, 0.0)) * strip - force

        wide = abs(turn) * along + force / (along * across) * 10.0
        return brentq(rest, -wide, wide, xtol=1e-13)

    def moment_rest(turn):
        pressure = np.maximum(settle(turn) + turn * x, 0.0)
        return np.sum(pressure * x) * strip - moment

    high = 1.0
    while moment_rest(high) < 0.0:
        high *= 2.0
    turn = brentq(moment_rest, 0.0, high, xtol=1e-12)
    return settle(turn) + turn * along / 2.0


cases = []
for force, moment, along, across in (
    (25.6, 0.0, 1.0, 1.0),
    (25.6, 1.2, 1.0, 1.0),
    (25.6, 4.0, 1.0, 1.0),
    (25.6, 6.0, 1.0, 1.0),
    (25.6, 9.0, 1.0, 1.0),
    (40.0, 3.0, 1.55, 1.55),
    (40.0, 12.0, 0.8, 2.0),
    (12.0, 2.5, 0.9, 1.2),
):
    cases.append({"force_kn": force, "moment_kn_m": moment, "along_m": along, "across_m": across, "pressure_kpa": float(largest_pressure(force, moment, along, across))})

print(json.dumps(cases, indent=1))
