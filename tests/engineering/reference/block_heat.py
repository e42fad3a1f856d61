"""How warm the middle of a block in the ground gets: explicit finite differences in three dimensions.

A metre cube of concrete cast at 20 °C into ground at 12 °C, its top in air, heat of hydration released by its maturity
(Arrhenius, 4000 K, characteristic time 16 h at 20 °C) by two laws between which cements lie: quick, 1 − exp(−t/τ), and
slow, exp(−τ/t). Cells of 50 mm; 1.5 m of ground on every side.

Run: pip install numpy && python block_heat.py > block_heat.json
"""

import json

import numpy as np

CELL = 0.05
CONDUCT, GROUND_CONDUCT = 2.0, 1.5
HEAT_CAPACITY = 2.4e6
HEAT = 330e3
TAU = 16 * 3600.0
HOURS = 72


def released(age, law):
    if law == "quick":
        return 1.0 - np.exp(-age / TAU)
    return np.where(age > 0.0, np.exp(-TAU / np.maximum(age, 1.0)), 0.0)


def run(cement, air_c, top_w_m2k, law="quick", side=1.0, cast_c=20.0, ground_c=12.0):
    n = int(round(side / CELL))
    m = int(round(1.5 / CELL))
    shape = (n + 2 * m, n + 2 * m, n + m)
    field = np.full(shape, ground_c)
    block = np.zeros(shape, dtype=bool)
    block[m : m + n, m : m + n, 0:n] = True
    field[block] = cast_c
    conduct = np.where(block, CONDUCT, GROUND_CONDUCT)
    faces = [2.0 * a * b / (a + b) for a, b in ((conduct[1:], conduct[:-1]), (conduct[:, 1:], conduct[:, :-1]), (conduct[:, :, 1:], conduct[:, :, :-1]))]
    step = 200.0
    age = np.zeros(shape)
    warmest, apart, hours = cast_c, 0.0, 0.0
    for i in range(int(HOURS * 3600 / step)):
        gain = np.zeros(shape)
        for axis, face in enumerate(faces):
            flow = face * np.diff(field, axis=axis) / (CELL * CELL)
            low = [slice(None)] * 3
            high = [slice(None)] * 3
            low[axis] = slice(None, -1)
            high[axis] = slice(1, None)
            gain[tuple(low)] += flow
            gain[tuple(high)] -= flow
        gain[:, :, 0] += (air_c - field[:, :, 0]) / (1.0 / top_w_m2k + CELL / 2.0 / conduct[:, :, 0]) / CELL
        pace = np.exp(4000.0 / 293.0 - 4000.0 / (273.0 + field))
        before = released(age, law)
        age = age + pace * step
        after = released(age, law)
        source = np.where(block, cement * HEAT * (after - before) / step, 0.0)
        field = field + step * (gain + source) / HEAT_CAPACITY
        core = field[m + n // 2, m + n // 2, n // 2]
        top = field[m + n // 2, m + n // 2, 0]
        if core > warmest:
            warmest, hours = float(core), (i + 1) * step / 3600.0
        apart = max(apart, float(core - top))
    return {"law": law, "cement_kg_m3": cement, "side_m": side, "air_c": air_c, "top_w_m2k": top_w_m2k, "cast_c": cast_c, "core_c": warmest, "at_h": hours, "core_less_top_k": apart}


print(json.dumps([run(336.0, 15.0, 8.0), run(336.0, 15.0, 8.0, "slow"), run(336.0, 0.0, 8.0), run(336.0, 0.0, 2.0), run(336.0, 15.0, 8.0, side=0.8)], indent=1))
