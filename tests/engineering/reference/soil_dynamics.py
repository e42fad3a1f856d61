"""Dynamic factors and dashpots of a rectangular footing by geofound 1.1.4 (from PyPI), written beside this script.

Two of its lines are not used: it multiplies an embedded footing's rocking stiffness by the embedment factor twice, and the
frequency term of the embedded rocking damping instead of dividing by it. Stiffness factors are therefore taken on the
surface, where they are the same (note to Table 2-3b of NIST GCR 12-917-21).
"""

import json
import pathlib

import geofound as gf

G, NU, WEIGHT = 30e6, 0.35, 17.652e3


def soil():
    sl = gf.create_soil()
    sl.g_mod, sl.poissons_ratio, sl.unit_dry_weight = G, NU, WEIGHT
    return sl


rows = []
for length, width, depth in [(1.0, 1.0, 1.0), (1.5, 1.0, 0.9), (1.2, 1.2, 0.6)]:
    surface, deep = gf.create_foundation(length, width, 0.0), gf.create_foundation(length, width, depth)
    deep.height = depth
    static = gf.stiffness.calc_rot_via_pais_1988(soil(), surface, ip_axis="width")
    for a0 in [0.2, 0.5, 1.0, 1.5]:
        rocking = gf.stiffness.calc_rot_via_pais_1988(soil(), surface, ip_axis="width", a0=a0) / static
        # No row for swings along the longer side on the surface: the library divides by the wrong group there.
        rows.append(
            {
                "length_m": length,
                "width_m": width,
                "depth_m": depth,
                "a0": a0,
                "rocking_ratio": rocking,
                "sway_damping_ratio": float(gf.damping.calc_horz_via_pais_1988(soil(), deep, ip_axis="length", a0=a0)),
                "sway_dashpot_gazetas": float(gf.damping.calc_horz_via_gazetas_1991(soil(), deep, a0, ip_axis="length")),
                "rocking_base_dashpot_gazetas": float(
                    gf.damping.calc_rot_via_gazetas_1991(soil(), surface, a0, ip_axis="width")
                ),
            }
        )

path = pathlib.Path(__file__).with_suffix(".json")
path.write_text(json.dumps({"shear_modulus_pa": G, "poisson_ratio": NU, "unit_weight_n_m3": WEIGHT, "rows": rows}, indent=1) + "\n")
