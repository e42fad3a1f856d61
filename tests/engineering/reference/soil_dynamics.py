"""Dynamic factors and dashpots of a rectangular footing, written out once more from the tables that print them.

NIST GCR 12-917-21, tables 2-2a to 2-3b (Pais & Kausel 1988; dimensions 2L by 2B, L the longer, depth D) and Gazetas 1991,
table 15.3 (waves that leave base and sides). Nothing of the engine is used: whoever doubts a factor there reads it here, in
the tables' own letters. Needs no library.
"""

import json
import math
import pathlib

G, NU, WEIGHT, GRAVITY = 30e6, 0.35, 17.652e3, 9.8
DENSITY = WEIGHT / GRAVITY
SHEAR_SPEED = math.sqrt(G / DENSITY)
PUSH_SPEED = 3.4 / (math.pi * (1.0 - NU)) * SHEAR_SPEED


def rocking_ratio(l_b, a0):
    """alpha_xx of table 2-3a: about the longer axis, that is along the shorter side."""
    return 1.0 - (0.55 + 0.01 * math.sqrt(l_b - 1.0)) * a0**2 / (2.4 - 0.4 / l_b**3 + a0**2)


def sway_damping_ratio(l_b, d_b, a0):
    """beta_x of table 2-3b, embedded, along the longer side; alpha of sway is one."""
    psi = min(math.sqrt(2.0 * (1.0 - NU) / (1.0 - 2.0 * NU)), 2.5)
    surface = (6.8 * l_b**0.65 + 2.4) / (2.0 - NU)
    embedded = surface * (1.0 + (0.33 + 1.34 / (1.0 + l_b)) * d_b**0.8)
    return 4.0 * (l_b + d_b * (psi + l_b)) / embedded * a0 / 2.0


def sway_dashpot(length, width, depth):
    """C_x of Gazetas: the base and the two long sides shear the ground, the two short sides push it."""
    shear = length * width + 2.0 * length * depth
    return DENSITY * (SHEAR_SPEED * shear + PUSH_SPEED * 2.0 * width * depth)


rows = []
for length, width, depth in [(1.0, 1.0, 1.0), (1.5, 1.0, 0.9), (1.2, 1.2, 0.6)]:
    for a0 in [0.2, 0.5, 1.0, 1.5]:
        rows.append(
            {
                "length_m": length,
                "width_m": width,
                "depth_m": depth,
                "a0": a0,
                "rocking_ratio": rocking_ratio(length / width, a0),
                "sway_damping_ratio": sway_damping_ratio(length / width, 2.0 * depth / width, a0),
                "sway_dashpot_gazetas": sway_dashpot(length, width, depth),
            }
        )

path = pathlib.Path(__file__).with_suffix(".json")
path.write_text(json.dumps({"shear_modulus_pa": G, "poisson_ratio": NU, "unit_weight_n_m3": WEIGHT, "rows": rows}, indent=1) + "\n")
