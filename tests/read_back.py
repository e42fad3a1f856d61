"""Reads back what `stillground print` writes: DXF by ezdxf, the calendar by icalendar, the order by Python's csv.

Run by tests/read_back.sh, which installs the libraries. Each figure is held against the design in the same folder.
"""

import csv
import json
import math
import pathlib
import subprocess
import sys
import tempfile
from decimal import ROUND_HALF_UP, Decimal

import ezdxf
import icalendar

EXAMPLES = pathlib.Path(__file__).parent / "examples"
ODD = {
    "prices": {"prices": {"currency": "EUR", "lines": {"nut": {"price": 0.4, "per": "pcs"}, "draw-cord": {"price": 0.0456, "per": "ft"}}}},
    "long title": {"title": "A pier with a name that does not end " * 13},
    "other scripts": {"title": "מגדל תצפית · 望遠鏡の台 · 🔭", "floor": {"stands": [{"name": "=1+1 观测者", "x_m": 1, "y_m": 1, "mass_kg": 80}]}},
    "twelve stands": {"floor": {"stands": [{"name": f"Stand {i}", "x_m": 1.2 * math.cos(i / 2), "y_m": 1.2 * math.sin(i / 2), "mass_kg": 80} for i in range(12)]}},
    "large plate": {"pier": {"plate_side_mm": 900, "outside_diameter_mm": 406.4, "wall_mm": 10}, "block": {"length_m": 1.6, "width_m": 1.6}, "excavation": {"max_length_m": 3, "max_width_m": 3}},
    "feet and inches": {"units": "imperial", "code": "aci"},
}


def plans():
    for path in sorted(EXAMPLES.glob("*.json")):
        yield path.stem, json.loads(path.read_text())
    for name, plan in ODD.items():
        yield name, {"schema_version": 1, **plan}


def near(what, found, wanted, tolerance):
    assert abs(found - wanted) <= tolerance, f"{what}: {found} against {wanted}"


def dxf(folder, design):
    document = ezdxf.readfile(folder / "template.dxf")
    audit = document.audit()
    assert not audit.errors, [error.message for error in audit.errors]
    assert document.units == ezdxf.units.MM, document.units
    shapes = document.modelspace()
    studs = [(stud["x_mm"], stud["y_mm"]) for stud in design["anchors"]["studs"]]
    plate = [hole for hole in shapes.query("CIRCLE") if hole.dxf.layer == "Plate holes"]
    jig = [hole for hole in shapes.query("CIRCLE") if hole.dxf.layer == "Jig holes"]
    assert len(plate) == len(jig) == len(studs)
    for (x, y), hole in zip(studs, plate):
        near("hole, east", hole.dxf.center.x, x, 1e-6)
        near("hole, north", hole.dxf.center.y, y, 1e-6)
    for hole in jig:
        near("drill", 2 * hole.dxf.radius, design["anchors"]["hole_diameter_mm"], 1e-6)
    for i, a in enumerate(jig):
        for j, b in enumerate(jig[:i]):
            near("pair", a.dxf.center.distance(b.dxf.center), math.dist(studs[i], studs[j]), 1e-6)
    outline = next(line for line in shapes.query("LWPOLYLINE") if line.dxf.layer == "Plate outline")
    assert outline.closed
    points = outline.get_points("xy")
    near("plate", max(x for x, _ in points) - min(x for x, _ in points), design["pier"]["plate_side_mm"], 1e-6)
    assert {line.dxf.layer for line in shapes} >= {"North", "Notes", "Column outline", "Jig outline"}
    for layer in document.layers:
        assert layer.dxf.name in {"0", "Defpoints"} or shapes.query(f'*[layer=="{layer.dxf.name}"]') or "middle" in layer.dxf.name


def calendar(folder, design):
    found = icalendar.Calendar.from_ical((folder / "schedule.ics").read_bytes())
    events = found.walk("VEVENT")
    assert not [error for event in events for error in event.errors]
    assert len({str(event["UID"]) for event in events}) == len(events)
    tasks = {task["title"]: task for task in design["schedule"]}
    for event in events:
        task = tasks[str(event["SUMMARY"])]
        assert event.start.isoformat()[:10] == task["earliest"], (str(event["SUMMARY"]), event.start, task["earliest"])
        assert event.end > event.start
    return len(events)


def order(folder, design, imperial):
    with open(folder / "materials.csv", encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == len(design["materials"])
    for row, line in zip(rows, design["materials"]):
        assert row["Id"] == line["id"], row
        if row["Total"]:
            exact = Decimal(row["Priced quantity"]) * Decimal(row["Price"])
            assert Decimal(row["Total"]) == exact.quantize(Decimal("0.01"), ROUND_HALF_UP), row
        assert row["Item"].lstrip("'") == line["item"], row
        assert float(row["Quantity"]) > 0
        if not imperial:
            near(line["item"], float(row["Quantity"]), line["quantity"], 0.001 * line["quantity"])
            assert row["Unit"] == (line["unit"] or "pcs"), row
        for cell in row.values():
            assert cell[:1] not in "=+-@\t\r" or cell == "", cell


def main(binary):
    for name, plan in plans():
        plan.setdefault("work", {}).setdefault("start_date", "2027-04-19")
        with tempfile.TemporaryDirectory() as folder:
            folder = pathlib.Path(folder)
            (folder / "plan.json").write_text(json.dumps(plan))
            subprocess.run([binary, "print", folder / "plan.json", "--out", folder], check=True)
            design = json.loads((folder / "design.json").read_text())
            dxf(folder, design)
            events = calendar(folder, design)
            order(folder, design, plan.get("units") == "imperial")
            print(f"{name}: {len(design['anchors']['studs'])} holes, {events} events, {len(design['materials'])} lines read back")


main(sys.argv[1])
