"""Made-up piers in ground of layers, by the forward model of proof_piers.py: topsoil of a third of the modulus, 0.3 m deep; rock of
fifty times the modulus half a metre below the base; a modulus that grows with the root of depth. Each by finite elements
(halfspace_block.py). The plan says one stiffness for all of it, as a person's does.

Run with: pip install numpy scipy; python3 proof_layered_piers.py
It writes proof_layered_piers.json beside itself.
"""

import json
import os

import numpy as np

import proof_piers

GROUNDS = {"topsoil": "topsoil 0.3 m", "rock": "rock 0.5 m", "root of depth": "root"}
EACH = 60


def main():
    luck = np.random.default_rng(5005)
    made = {}
    for name, ground in GROUNDS.items():
        table = proof_piers.ground_table(ground)
        piers = []
        while len(piers) < EACH:
            one = proof_piers.pier_of(luck, table=table)
            if one is not None:
                piers.append(one)
        made[name] = piers
    with open(os.path.join(proof_piers.HERE, "proof_layered_piers.json"), "w") as out:
        lines = [f"{json.dumps(name)}: [\n" + ",\n".join(json.dumps(one) for one in piers) + "\n]" for name, piers in made.items()]
        out.write("{\n" + ",\n".join(lines) + "\n}\n")


if __name__ == "__main__":
    main()
