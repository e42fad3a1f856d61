"""Concrete by age, temperature and class from an open library that shares no line with the engine.

Run: pip install structuralcodes && python concrete.py > concrete.json
"""

import json

import structuralcodes.codes.ec2_2004 as ec2

ages = []
for fck in (20.0, 25.0, 28.0, 30.0, 35.0, 40.0):
    for s in (0.20, 0.25, 0.38):
        for days in (1.0, 3.0, 7.0, 14.0, 21.0, 28.0, 90.0):
            fcm = ec2.fcm(fck)
            ages.append({"fck": fck, "s": s, "days": days, "fcm": float(ec2.fcm_time(fcm, ec2.beta_cc(days, s)))})

paces = [{"temperature_c": t, "days": d, "adjusted": float(ec2.t_T([t] * d, [1.0] * d))} for t in (1.0, 5.0, 10.0, 15.0, 20.0, 30.0, 40.0) for d in (1, 7, 28)]

classes = [{"fck": f, "fctm": float(ec2.fctm(f)), "ecm": float(ec2.Ecm(ec2.fcm(f)))} for f in (20.0, 25.0, 30.0, 35.0, 40.0, 50.0)]

steel = [
    {"zone_mm2": zone, "tensile": tensile, "stress": stress, "k": k, "area": float(ec2.As_min(zone, stress, tensile, k, 1.0))}
    for zone, tensile, stress, k in ((200e3, 1.534, 500.0, 1.0), (500e3, 1.534, 360.0, 0.65), (150e3, 2.6, 400.0, 1.0))
]

print(json.dumps({"ages": ages, "paces": paces, "classes": classes, "steel": steel}, indent=1))
