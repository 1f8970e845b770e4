"""The same bytes: `python -m tests.bench.same [BRIEF ...]` plans briefs under three hash seeds and on one core."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
BRIEFS = ("03", "04", "06", "11", "14")
WAYS = (("0", ()), ("1", ()), ("2", ()), ("0", ("taskset", "-c", "0")))


def main(names: list[str]) -> int:
    """Print one line a brief; the exit code is the number of briefs whose bytes differ."""
    differing = 0
    for path in sorted((ROOT / "scenarios").glob("*.toml")):
        if path.name.startswith(tuple(names or BRIEFS)):
            found = [digest(path, seed, prefix) for seed, prefix in WAYS]
            differing += len(set(found)) > 1
            print(
                f"{path.stem}: {' '.join(found)}: {'the same' if len(set(found)) == 1 else 'THEY DIFFER'}", flush=True
            )
    return differing


def digest(path: Path, seed: str, prefix: tuple[str, ...]) -> str:
    """Twelve letters of the week's JSON, planned in a process of its own."""
    code = "import sys; sys.path.insert(0, '.names'); from setwright.solver.cli import main; main()"
    command = [*prefix, sys.executable, "-c", code, "week", str(path), "--json"]
    ended = subprocess.run(
        command, cwd=ROOT, env=os.environ | {"PYTHONHASHSEED": seed}, capture_output=True, check=True
    )
    return hashlib.sha256(ended.stdout).hexdigest()[:12]


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
