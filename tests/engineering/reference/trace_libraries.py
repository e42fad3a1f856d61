"""Records of knocks on piers, made up, and what general modal-analysis libraries say of them.

The same records are read by the planner. Libraries: stochastic subspace identification, by covariances and by data, of
pyOMA 2; the least-squares complex exponential of sdypy-EMA; the nonlinear least squares of ringdownanalysis; and scipy's
curve_fit of damped cosines. pyOMA and sdypy-EMA tell the undamped frequency, which is turned into the damped one that a
record shows. None of these packages carries a recorded free decay of its own (their wheels were searched).

They are told where the swing begins and where it has died; the planner is not. Each record is made again with other noise,
and how far a library then lies from the truth is its own spread.

Run with: pip install -r requirements.txt; python3 trace_libraries.py
It writes trace_libraries.json beside itself. Samples are whole thousandths of a metre a second squared.
"""

import json
import logging
import os
import warnings

import numpy as np
from pyoma2.functions import ssi
from ringdownanalysis import NLSFrequencyEstimator
from scipy.optimize import curve_fit
from sdypy import EMA

logging.disable(logging.INFO)

HERE = os.path.dirname(os.path.abspath(__file__))
UNIT = 1e-3
BEFORE_S = 1.0
AGAIN = 12

# Each swing: frequency Hz, damping, size; then rate, seconds after the knock, noise of a sample (all m/s2).
RECORDS = {
    "a light pier": dict(swings=[(8.3, 0.010, 0.8)], rate=100, lasts=8.0, noise=0.012),
    "the table's first": dict(swings=[(17.35, 0.0084, 0.6)], rate=200, lasts=6.0, noise=0.012),
    "the same, softly": dict(swings=[(17.35, 0.0084, 0.24)], rate=200, lasts=6.0, noise=0.012),
    "damped": dict(swings=[(14.2, 0.020, 0.5)], rate=100, lasts=4.0, noise=0.012),
    "long ringing": dict(swings=[(11.6, 0.004, 0.5)], rate=100, lasts=10.0, noise=0.012),
    "fast": dict(swings=[(31.0, 0.012, 0.9)], rate=200, lasts=3.0, noise=0.015),
    "a bare column": dict(swings=[(48.5, 0.015, 1.5)], rate=400, lasts=2.0, noise=0.015),
    "slow and heavy": dict(swings=[(6.4, 0.015, 0.7)], rate=100, lasts=7.0, noise=0.010),
    "two directions": dict(swings=[(13.1, 0.008, 0.7), (13.95, 0.009, 0.5)], rate=200, lasts=6.0, noise=0.012),
    "a second swing": dict(swings=[(16.3, 0.009, 0.7), (41.0, 0.012, 0.5)], rate=200, lasts=5.0, noise=0.012),
}


def made(spec, luck):
    """The record: a quiet second, a blow that dies within a swing, the swings, noise, an offset and a slow drift."""
    rate = spec["rate"]
    t = np.arange(int((BEFORE_S + spec["lasts"]) * rate)) / rate - BEFORE_S
    after = t >= 0
    s = t[after]
    y = spec["noise"] * luck.standard_normal(len(t)) + 0.2 + 0.01 * t
    for hz, ratio, size in spec["swings"]:
        phase = 2 * np.pi * luck.random()
        decay = 2 * np.pi * hz * ratio / np.sqrt(1 - ratio**2)
        y[after] += size * np.exp(-decay * s) * np.cos(2 * np.pi * hz * s + phase)
    first, _, size = spec["swings"][0]
    y[after] += 1.5 * size * np.exp(-s * 0.25 * 2 * np.pi * 2.2 * first) * np.cos(2 * np.pi * 2.2 * first * s + 0.4)
    return np.round(y / UNIT).astype(int)


def window(samples, spec):
    """Two swings after the blow until it is lost in the noise, its offset and slope taken off."""
    rate = spec["rate"]
    hz, ratio, size = spec["swings"][0]
    until = min(np.log(size / (2 * spec["noise"])) / (2 * np.pi * hz * ratio), spec["lasts"])
    begin = int((BEFORE_S + 2 / hz) * rate)
    y = samples[begin : int((BEFORE_S + until) * rate)] * UNIT
    t = np.arange(len(y)) / rate
    return t, y - np.polyval(np.polyfit(t, y, 1), t)


def damped(undamped_hz, ratio):
    return undamped_hz * np.sqrt(1 - ratio**2)


def subspace(y, rate, method, order):
    rows = min(60, len(y) // 4)
    hankel, _ = ssi.build_hank(y[None, :], y[None, :], rows, method)
    observability, a, c, *_ = ssi.SSI_fast(hankel, rows, order)
    poles = ssi.SSI_poles(observability, a, c, order, 1 / rate)
    hertz, ratios = np.array(poles[0])[:, -1], np.array(poles[1])[:, -1]
    keep = np.isfinite(hertz) & np.isfinite(ratios)
    return [(damped(f, z), z) for f, z in zip(hertz[keep], ratios[keep])]


def exponential(y, rate):
    """Least-squares complex exponential on the record as a response to a unit blow at its beginning."""
    padded = np.concatenate([y, np.zeros(len(y) % 2)])
    spectrum = np.fft.rfft(padded)
    hertz = np.fft.rfftfreq(len(padded), 1 / rate)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        model = EMA.Model(spectrum[None, :], hertz, lower=2, upper=0.45 * rate, pol_order_high=24)
        model.get_poles(method="lscf", show_progress=False)
    return model


def picked(model, hz):
    """The pole nearest to a frequency that most of the higher orders have, in the middle of those orders."""
    near = []
    for poles in model.all_poles[8:]:
        poles = np.asarray(poles)
        poles = poles[(poles.imag > 0) & (poles.real < 0)]
        if len(poles):
            pole = min(poles, key=lambda p: abs(abs(p.imag) / 2 / np.pi - hz))
            near.append((pole.imag / 2 / np.pi, -pole.real / abs(pole)))
    return tuple(np.median(np.array(near), axis=0))


def cosines(t, y, swings):
    def model(t, *p):
        total = np.full_like(t, p[-2]) + p[-1] * t
        for k in range(len(swings)):
            a, b, hz, decay = p[4 * k : 4 * k + 4]
            total = total + np.exp(-decay * t) * (a * np.cos(2 * np.pi * hz * t) + b * np.sin(2 * np.pi * hz * t))
        return total

    start = []
    for hz, ratio, size in swings:
        start += [size / 2, size / 2, hz * 1.002, 2 * np.pi * hz * ratio * 1.3]
    found, _ = curve_fit(model, t, y, p0=start + [0, 0], maxfev=20000)
    return [(found[4 * k + 2], found[4 * k + 3] / np.hypot(2 * np.pi * found[4 * k + 2], found[4 * k + 3])) for k in range(len(swings))]


def nearest(poles, hz):
    return min(poles, key=lambda pole: abs(pole[0] - hz)) if poles else (float("nan"),) * 2


def asked(t, y, rate, swings):
    """What each library says of a swing: frequency and damping of each mode."""
    order = 2 * len(swings)
    answers = {
        "subspace_covariance": subspace(y, rate, "cov", order),
        "subspace_data": subspace(y, rate, "dat", order),
        "curve_fit": cosines(t, y, swings),
    }
    if len(swings) == 1:
        one = NLSFrequencyEstimator().estimate_full(y, rate)
        answers["ringdown"] = [(one.f, 1 / (one.tau * np.hypot(2 * np.pi * one.f, 1 / one.tau)))]
    model = exponential(y, rate)
    answers["complex_exponential"] = [picked(model, hz) for hz, *_ in swings]
    return {library: [nearest(poles, hz) for hz, *_ in swings] for library, poles in answers.items()}


def short(value):
    return float(f"{value:.6g}")


def compared(spec, samples, others):
    """Answers for the samples, and each library's own spread on the same record with other noise."""
    rate, swings = spec["rate"], spec["swings"]
    told = asked(*window(samples, spec), rate, swings)
    again = [asked(*window(other, spec), rate, swings) for other in others]
    libraries = {}
    for library, poles in told.items():
        libraries[library] = []
        for k, (hz, ratio) in enumerate(poles):
            off = [one[library][k][0] - swings[k][0] for one in again] or [0.0]
            libraries[library].append(
                dict(frequency_hz=short(hz), damping_ratio=short(ratio), spread_hz=short(np.sqrt(np.mean(np.square(off)))))
            )
    return dict(rate_hz=rate, truth=[[hz, ratio] for hz, ratio, _ in swings], libraries=libraries)


def main():
    luck = np.random.default_rng(20)
    kept = {}
    for name, spec in RECORDS.items():
        samples = made(spec, luck)
        others = [made(spec, luck) for _ in range(AGAIN)]
        kept[name] = compared(spec, samples, others)
        kept[name]["unit_m_s2"] = UNIT
        kept[name]["samples"] = [int(value) for value in samples]
        print(name, kept[name]["libraries"])
    with open(os.path.join(HERE, "trace_libraries.json"), "w") as out:
        lines = [f"{json.dumps(name)}: {json.dumps(one, separators=(',', ':'))}" for name, one in kept.items()]
        out.write("{\n" + ",\n".join(lines) + "\n}\n")


if __name__ == "__main__":
    main()
