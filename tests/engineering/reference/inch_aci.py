"""Four bonded rods of inch thread in a block of concrete by ACI 318-19 chapter 17, worked in pounds and inches from the clauses as the
inch edition prints them. Shares nothing with the engine: areas are cut by hand into strips, constants are those of the inch edition.
Forces in pounds, lengths in inches, stresses in psi."""

import json
import math

CASES = [
    {"name": "5/8-11 of F1554 grade 55 in a block 44 by 44", "d": 0.625, "n": 11, "futa": 75_000, "fya": 55_000, "hef": 5.5, "circle": 12.5,
     "side": [44.0, 44.0], "thick": 44.0, "fc": 4500, "tau": 1000, "tau_u": 1450, "cracked": True},
    {"name": "3/4-10 of F1554 grade 36 near four edges", "d": 0.75, "n": 10, "futa": 58_000, "fya": 36_000, "hef": 6.75, "circle": 12.0,
     "side": [20.0, 24.0], "thick": 14.0, "fc": 4000, "tau": 900, "tau_u": 1300, "cracked": True},
    {"name": "1/2-13 of A193 B7 in a thin wide block", "d": 0.5, "n": 13, "futa": 125_000, "fya": 105_000, "hef": 4.5, "circle": 10.0,
     "side": [60.0, 60.0], "thick": 12.0, "fc": 3000, "tau": 1100, "tau_u": 1600, "cracked": True},
]


def reach(half, at, spacing, far):
    """How far a strip across the group goes: out to `far` beyond the outer rods, not past the concrete, and overlapping between."""
    outer = min(far, half - at)
    between = min(spacing, 2 * far)
    return 2 * outer + between


def work(case):
    d, hef, fc = case["d"], case["hef"], case["fc"]
    at = case["circle"] / 2 * math.sqrt(0.5)  # four rods in the corners of a square plate
    spacing = 2 * at
    half = [side / 2 for side in case["side"]]
    edges = [h - at for h in half]
    near = min(edges)
    area = 0.7854 * (d - 0.9743 / case["n"]) ** 2
    futa = min(case["futa"], 1.9 * case["fya"], 125_000)
    steel = area * futa
    # 17.6.2.1.2: within 1.5 h_ef of three or more edges a lesser depth counts.
    if max(edges) < 1.5 * hef:
        counted = min(hef, max(max(edges) / 1.5, spacing / 3))
    else:
        counted = hef
    far = 1.5 * counted
    anc = reach(half[0], at, spacing, far) * reach(half[1], at, spacing, far)
    anco = 9 * counted**2
    nb = 17 * math.sqrt(fc) * counted**1.5
    ed = min(1.0, 0.7 + 0.3 * near / (1.5 * counted))
    ncbg = anc / anco * ed * nb
    cna = 10 * d * math.sqrt(case["tau_u"] / 1100)
    ana = reach(half[0], at, spacing, cna) * reach(half[1], at, spacing, cna)
    nba = case["tau"] * math.pi * d * hef
    nag = ana / (2 * cna) ** 2 * min(1.0, 0.7 + 0.3 * near / cna) * nba
    vsa = 0.6 * area * futa
    kcp = 1.0 if hef < 2.5 else 2.0
    le = min(hef, 8 * d)
    vb = [min(7 * (le / d) ** 0.2 * math.sqrt(d), 9) * math.sqrt(fc) * edge**1.5 for edge in edges]
    return {
        "name": case["name"], "d": d, "hef": hef, "fc": fc, "circle": case["circle"], "side": case["side"], "thick": case["thick"],
        "futa": case["futa"], "fya": case["fya"], "tau": case["tau"], "tau_u": case["tau_u"],
        "a_se": area, "n_sa": steel, "h_ef_counted": counted, "a_nc": anc, "a_nco": anco, "n_b": nb, "psi_ed": ed, "n_cbg": ncbg,
        "c_na": cna, "a_na": ana, "n_ba": nba, "n_ag": nag, "v_sa": vsa, "v_cpg": kcp * min(ncbg, nag), "v_b": vb,
    }


print(json.dumps([work(case) for case in CASES], indent=1))
