"""Runs reference scripts again, each in a folder of its own, and holds their values against those that are kept.

    again.py base_plate dished_foot stud_forms

    again.py               all but those that have a check of their own

The scripts write their values beside themselves or print them; a copy of one therefore changes nothing here. A script that
reads another, or its values, gets a copy of that one beside it.
"""

import json
import pathlib
import shutil
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).parent
NEAR = 1e-6
# Where a fit or a draw ends in the last kept digits.
NEARER = {"proof_piers": 2e-4, "proof_wrong_piers": 2e-4, "proof_layered_piers": 2e-4, "trace_libraries": 1e-2}
# Files that scripts read.
READS = {
    "proof_piers": ["halfspace_block.json", "proof_prior.json"],
    "proof_wrong_piers": ["halfspace_block.json", "proof_piers.py", "proof_prior.json"],
    "proof_layered_piers": ["halfspace_block.json", "proof_piers.py", "proof_prior.json"],
    "star_again": ["halfspace_block.py", "waves.py"],
}
APART = {"again", "halfspace_block"}  # this one, and the one that takes minutes and is asked with --check


def farthest(kept, found):
    """Greatest relative difference of two trees of values; infinite where they differ in form."""
    if isinstance(kept, dict) and isinstance(found, dict) and kept.keys() == found.keys():
        return max((farthest(kept[key], found[key]) for key in kept), default=0.0)
    if isinstance(kept, list) and isinstance(found, list) and len(kept) == len(found):
        return max(map(farthest, kept, found), default=0.0)
    if isinstance(kept, (int, float)) and isinstance(found, (int, float)):
        return abs(kept - found) / max(abs(kept), 1e-9)
    return 0.0 if kept == found else float("inf")


def again(name):
    with tempfile.TemporaryDirectory() as folder:
        script = shutil.copy(HERE / f"{name}.py", folder)
        shutil.copytree(HERE / "plans", pathlib.Path(folder, "plans"))  # which some of them read
        for other in READS.get(name, []):
            shutil.copy(HERE / other, folder)
        printed = subprocess.run([sys.executable, script], check=True, stdout=subprocess.PIPE, text=True).stdout
        written = pathlib.Path(folder, f"{name}.json")
        found = json.loads(written.read_text() if written.exists() else printed)
    apart = farthest(json.loads((HERE / f"{name}.json").read_text()), found)
    print(f"{name}: farthest from what is kept {apart:.1e}", flush=True)
    return apart < NEARER.get(name, NEAR)


if __name__ == "__main__":
    names = sys.argv[1:] or sorted({path.stem for path in HERE.glob("*.py")} - APART)
    sys.exit(0 if all([again(name) for name in names]) else 1)
