"""Depth of frost by two ways that share no line with the engine.

1. Neumann's solution for a step of the surface's temperature, its root by scipy (brentq, erf, erfc).
2. The same problem by finite differences: explicit enthalpy method on 10 mm cells, one conductivity and heat capacity.

Run: pip install numpy scipy && python frost.py > frost.json
"""

import json

import numpy as np
from scipy.optimize import brentq
from scipy.special import erf, erfc

DAY = 86400.0


def neumann_lambda(alpha, mu):
    def balance(g):
        return np.exp(-g * g) / erf(g) - alpha * np.exp(-g * g) / erfc(g) - g * np.sqrt(np.pi) / mu

    return brentq(balance, 1e-6, np.sqrt(mu / 2.0) * 1.5) * np.sqrt(2.0 / mu)


def enthalpy_depth(k, heat_capacity, latent, cold, warm, days, cell=0.01, depth=12.0):
    """Frozen depth after some days when ground of `warm` degrees gets a surface `cold` degrees below freezing."""
    n = int(depth / cell)
    energy = np.full(n, latent + heat_capacity * warm)  # above the latent heat: thawed; below nought: frozen
    step = 0.4 * cell * cell * heat_capacity / k
    steps = int(days * DAY / step)
    for _ in range(steps):
        temperature = np.where(energy > latent, (energy - latent) / heat_capacity, np.where(energy < 0.0, energy / heat_capacity, 0.0))
        padded = np.concatenate(([-2.0 * cold - temperature[0]], temperature, [temperature[-1]]))
        energy += step * k * np.diff(padded, 2) / cell**2
    frozen = np.clip(1.0 - energy / latent, 0.0, 1.0)
    return float(frozen.sum() * cell)


roots = [{"alpha": a, "mu": m, "lambda": neumann_lambda(a, m)} for a in (0.0, 0.1, 1 / 3, 1.0, 2.0, 4.0) for m in (0.02, 0.05, 0.2, 0.5, 1.0)]

fields = []
for k, density, water, index, season, mean in [(1.7, 1500.0, 0.25, 450.0, 100.0, 8.0), (1.9, 1650.0, 0.08, 270.0, 80.0, 9.0), (1.7, 1500.0, 0.22, 1350.0, 150.0, 4.0)]:
    latent = 334000.0 * density * water
    heat_capacity = density * 4187.0 * (0.17 + 0.75 * water)
    fields.append({
        "conductivity_w_mk": k, "dry_density_kg_m3": density, "water_content_ratio": water, "surface_index_k_d": index,
        "season_d": season, "mean_c": mean,
        "depth_m": enthalpy_depth(k, heat_capacity, latent, index / season, mean, season),
    })

print(json.dumps({"roots": roots, "enthalpy": fields}, indent=1))
