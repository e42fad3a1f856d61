"""One footfall as the engine follows it, computed apart: peak speed that it gives to 1 kg on a spring, and its harmonics.

Five sine terms (Li and others 2010, coefficients from memory) scaled so that a walk carries the walker, a heel as half
sines, and a term of the fourth harmonic under one arch of a sine. Convolved with the free swing at a step of 0.1 ms where
the engine steps an oscillator at 2 ms. Pace 1.8 Hz, 746 N, 3 % damping. The guide's impulses are 42 and 54 f^1.43/f_n^1.3.

Prints JSON. Needs numpy.
"""

import json

import numpy as np

PACE, WEIGHT, DAMPING, STEP = 1.8, 746.0, 0.03, 1e-4
MODES = (8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0)


def trace(heel, fourth):
    a = (1.211 - 0.0698 * PACE, 0.1052 * PACE - 0.1284, 0.3002 * PACE - 0.1534, 0.0416 * PACE - 0.0288, 0.0608 - 0.0275 * PACE)
    contact = 1 / (0.76 * PACE)
    t = np.arange(0, contact, STEP)
    force = sum(value * np.sin((n + 1) * np.pi * t / contact) for n, value in enumerate(a))
    force /= force.sum() * STEP * PACE
    for height, lasts in heel:
        force += np.where(t < lasts, height * np.sin(np.pi * t / lasts), 0)
    return force + fourth * np.sin(8 * np.pi * PACE * t) * np.sin(np.pi * t / contact)


def peak_speed(force, mode):
    omega = 2 * np.pi * mode
    free = omega * np.sqrt(1 - DAMPING**2)
    t = np.arange(0, 1.5, STEP)
    answer = np.exp(-DAMPING * omega * t) * (np.cos(free * t) - DAMPING * omega / free * np.sin(free * t))
    return float(abs(np.convolve(force, answer)[: len(force) + int(1.5 / mode / STEP)]).max() * STEP * WEIGHT)


def harmonic(force, n):
    t = np.arange(len(force)) * STEP
    return float(2 * PACE * abs((force * np.exp(-2j * np.pi * n * PACE * t)).sum()) * STEP)


if __name__ == "__main__":
    kinds = {
        "terms_alone": ([], 0),
        "soft": ([(0.13, 0.02), (0.16, 0.05)], 0.058),
        "soft_design": ([(0.195, 0.02), (0.24, 0.05)], 0.068),
        "hard": ([(0.4, 0.02)], 0.058),
    }
    found = {}
    for name, kind in kinds.items():
        force = trace(*kind)
        found[name] = {
            "impulses_n_s": [[mode, round(peak_speed(force, mode), 3)] for mode in MODES],
            "harmonics": [round(harmonic(force, n), 4) for n in range(1, 5)],
        }
    print(json.dumps(found, indent=1))
