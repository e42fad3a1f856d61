"""Noon by the sun and the bearing of the pole star by the IAU's own routines (ERFA), which share no line with the engine.

The sun: Earth's place by epv00 (VSOP), aberration, nutation and precession of 2006/2000A; the moment of the meridian
passage is found by bisection. The star: Hipparcos entry 11767 carried through apco13/atciq to the apparent place, with
nutation and aberration. No Earth orientation tables: UT1 is taken as UTC, the pole as unmoved.

Run: pip install pyerfa numpy && python sun_and_star.py > sun_and_star.json
"""

import json
import math

import erfa

DAY_OF = {"2026-01-01": 2461041.5, "2026-11-03": 2461347.5, "2027-02-11": 2461447.5, "2027-04-19": 2461514.5,
          "2028-07-26": 2461978.5, "2029-09-23": 2462402.5, "2035-05-14": 2464461.5, "2049-12-25": 2469800.5}
TT_LESS_UT = 69.2 / 86400.0


def true_sidereal(ut):
    return erfa.gst06a(2400000.5, ut - 2400000.5, 2400000.5, ut + TT_LESS_UT - 2400000.5)


def to_of_date(vector, tt):
    matrix = erfa.pnm06a(2400000.5, tt - 2400000.5)
    return erfa.rxp(matrix, vector)


def sun(ut):
    tt = ut + TT_LESS_UT
    heliocentric, barycentric = erfa.epv00(2400000.5, tt - 2400000.5)
    place = [-x for x in heliocentric["p"]]
    distance = math.sqrt(sum(x * x for x in place))
    c = 173.1446326846693  # au a day
    moved = [x / distance + v / c for x, v in zip(place, barycentric["v"])]
    of_date = to_of_date(moved, tt)
    ra, dec = erfa.c2s(of_date)
    return float(ra), float(dec)


def hour_angle(ut, longitude):
    ra, _ = sun(ut)
    return float(erfa.anpm(true_sidereal(ut) + math.radians(longitude) - ra))


def noon(midnight, longitude):
    low, high = midnight + 0.5 - longitude / 360 - 0.02, midnight + 0.5 - longitude / 360 + 0.02
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if hour_angle(middle, longitude) < 0 else (low, middle)
    return low


def star(ut, longitude, latitude):
    tt = ut + TT_LESS_UT
    dec = math.radians(89.26410897)
    astrom, eo = erfa.apci13(2400000.5, tt - 2400000.5)
    ri, di = erfa.atciq(math.radians(37.95456067), dec, math.radians(44.48e-3 / 3600) / math.cos(dec),
                        math.radians(-11.85e-3 / 3600), 7.54e-3, -17.4, astrom)
    ra = ri - eo
    ha = true_sidereal(ut) + math.radians(longitude) - ra
    az, alt = erfa.hd2ae(ha, di, math.radians(latitude))
    return math.degrees(float(erfa.anpm(az))), math.degrees(float(alt))


suns, stars = [], []
for date, midnight in DAY_OF.items():
    for longitude in (-155.5, -3.7, 12.25, 149.1):
        ut = noon(midnight, longitude)
        suns.append({"date": date, "longitude_deg": longitude, "hours_after_midnight_utc": (ut - midnight) * 24,
                     "declination_deg": math.degrees(sun(ut)[1])})
        for latitude in (18.0, 44.5, 61.0):
            for hour in (1.0, 9.5, 20.25):
                bearing, altitude = star(midnight + hour / 24, longitude, latitude)
                stars.append({"date": date, "longitude_deg": longitude, "latitude_deg": latitude, "hour_utc": hour,
                              "bearing_deg": bearing, "altitude_deg": altitude})
print(json.dumps({"suns": suns, "stars": stars}, indent=1))
