"""Properties of tubes by sectionproperties 3.10, a finite-element library: writes tube_sections.json."""
import json
import pathlib
from sectionproperties.pre.library import circular_hollow_section
from sectionproperties.analysis import Section

found = []
for d, t in ((139.7, 5.0), (219.1, 6.3), (323.9, 10.0)):
    g = circular_hollow_section(d=d, t=t, n=256)
    g.create_mesh(mesh_sizes=[t * t])
    s = Section(g)
    s.calculate_geometric_properties()
    s.calculate_warping_properties()
    asx, _ = s.get_as()
    found.append(dict(d=d, t=t, area=s.get_area(), inertia=s.get_ic()[0], modulus=s.get_z()[0], shear_area=asx))
json.dump(found, pathlib.Path(__file__).with_suffix(".json").open("w"), indent=1)
print(found)
