"""Made-up piers of which the plan says one thing wrong, by the forward model of proof_piers.py: ground, joint or mount lies three
standard deviations of what the plan says below it, which is less than a quarter of it; everything else as there.

Run with: pip install numpy scipy; python3 proof_wrong_piers.py
It writes proof_wrong_piers.json beside itself.
"""

import json
import os

import numpy as np

import proof_piers

WRONG = {"modulus": 0, "joint": 2, "mount": 4}
AWAY = -3.0
EACH = 40


def main():
    luck = np.random.default_rng(77)
    made = {}
    for name, unknown in WRONG.items():
        piers = []
        while len(piers) < EACH:
            one = proof_piers.pier_of(luck, {unknown: AWAY})
            if one is not None:
                piers.append(one)
        made[name] = piers
    with open(os.path.join(proof_piers.HERE, "proof_wrong_piers.json"), "w") as out:
        lines = [f"{json.dumps(name)}: [\n" + ",\n".join(json.dumps(one) for one in piers) + "\n]" for name, piers in made.items()]
        out.write("{\n" + ",\n".join(lines) + "\n}\n")


if __name__ == "__main__":
    main()
