"""Shear moduli, densities and stresses by groundhog, a general geotechnical library (PyPI, 0.15.0).

Run: pip install groundhog==0.15.0 && python groundhog_ground.py > groundhog_ground.json
Hardin's coefficient of 625 (for sand and clay) is given explicitly: the library's default of 875 was fitted to one dense sand.
"""

import json

from groundhog.general.soilprofile import SoilProfile
from groundhog.siteinvestigation.correlations.cohesionless import gmax_sand_hardinblack
from groundhog.soildynamics.soilproperties import gmax_shearwavevelocity

G = 9.80665
moduli = []
for speed, weight in [(60, 16.5), (90, 17.0), (130, 18.0), (150, 18.5), (200, 19.5), (300, 20.5), (500, 21.0), (600, 22.0)]:
    found = gmax_shearwavevelocity(Vs=speed, gamma=weight, g=G)
    moduli.append({"speed_m_s": speed, "weight_kn_m3": weight, "density_kg_m3": found["rho [kg/m3]"], "modulus_kpa": found["Gmax [kPa]"]})

hardin = []
for e, stress in [(0.6, 12.0), (0.65, 25.0), (0.75, 50.0), (0.8, 100.0)]:
    found = gmax_sand_hardinblack(sigma_m0=stress, void_ratio=e, coefficient_B=625.0, pref=100.0)
    hardin.append({"void_ratio": e, "stress_kpa": stress, "modulus_kpa": found["Gmax [kPa]"]})

stresses = []
for moist, wet, level in [(18.0, 19.5, 0.0), (18.0, 19.5, 0.4), (16.5, 18.5, 0.8), (20.0, 21.0, 0.25), (18.0, 19.5, 1.5)]:
    split = min(max(level, 0.01), 0.99)
    profile = SoilProfile({
        "Depth from [m]": [0.0, split],
        "Depth to [m]": [split, 1.0],
        "Total unit weight [kN/m3]": [moist if level > 0.0 else wet, wet if level < 1.0 else moist],
    })
    profile.calculate_overburden(waterlevel=level, waterunitweight=G)
    stresses.append({
        "moist_kn_m3": moist, "wet_kn_m3": wet, "water_m": level,
        "effective_kpa": float(profile["Vertical effective stress to [kPa]"].iloc[-1]),
    })

print(json.dumps({"library": "groundhog 0.15.0", "moduli": moduli, "hardin_black": hardin, "stresses": stresses}, indent=1))
