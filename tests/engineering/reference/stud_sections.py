"""Section moduli of round bars with the stress areas of the studs: polygons of 256 sides by sectionproperties (PyPI)."""

import json
import math

from sectionproperties.analysis import Section
from sectionproperties.pre.library import circular_section

rows = []
for size, area in (("M10", 58.0), ("M12", 84.3), ("M16", 157.0), ("M20", 245.0), ("M24", 353.0)):
    geometry = circular_section(d=math.sqrt(4 * area / math.pi), n=256)
    geometry.create_mesh(mesh_sizes=[area / 200])
    section = Section(geometry)
    section.calculate_geometric_properties()
    rows.append({"size": size, "elastic_modulus_mm3": section.get_z()[0], "second_moment_mm4": section.get_ic()[0]})
    print(rows[-1])
with open(__file__.replace(".py", ".json"), "w") as out:
    json.dump({"library": "sectionproperties", "rows": rows}, out, indent=1)
