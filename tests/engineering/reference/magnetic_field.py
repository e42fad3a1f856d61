"""The Earth's magnetic field by two open libraries that share no line with the engine.

Both read the published coefficients of the World Magnetic Model 2025: `wmm-calculator`, which the model's makers give
out, and `pygeomag`, a port of their C program.

Run: pip install wmm-calculator pygeomag && python magnetic_field.py > magnetic_field.json
"""

import json
import random

from pygeomag import GeoMag
from wmm import wmm_calc

random.seed(2025)
port = GeoMag(coefficients_file="wmm/WMM_2025.COF", high_resolution=False)
places = []
for _ in range(60):
    latitude = round(random.uniform(-88.0, 88.0), 3)
    longitude = round(random.uniform(-180.0, 180.0), 3)
    height_m = round(random.uniform(-400.0, 8000.0), 1)
    year = round(random.uniform(2025.0, 2029.95), 3)
    makers = wmm_calc()
    makers.setup_env(latitude, longitude, height_m / 1000.0, unit="km", msl=False)
    makers.setup_time(dyear=year)
    by_port = port.calculate(glat=latitude, glon=longitude, alt=height_m / 1000.0, time=year)
    places.append(
        {
            "latitude_deg": latitude,
            "longitude_deg": longitude,
            "height_m": height_m,
            "year": year,
            "north_nt": float(makers.get_Bx()[0]),
            "east_nt": float(makers.get_By()[0]),
            "down_nt": float(makers.get_Bz()[0]),
            "declination_deg": float(makers.get_Bdec()[0]),
            "port_declination_deg": float(by_port.d),
        }
    )
print(json.dumps({"places": places}, indent=1))
