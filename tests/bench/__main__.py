"""The bench: `python -m tests.bench [SCENARIO ...]` prints one row a scenario for docs/benchmarks.md.

Beside our search, the same columns on days go whole to HiGHS for 30 s, alone on the machine, in the same run.
"""

from __future__ import annotations

import io
import resource
import sys
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / ".names"))

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.model.columns import board_of
from setwright.solver.model.engines import highs
from setwright.solver.model.limits import SEARCHES
from setwright.solver.model.search import Outcome, Progress, search
from setwright.solver.reckoning.resolve import resolve
from setwright.solver.reckoning.rule import UNITS

PEER_SECONDS = 30.0
MOMENTS = (5.0, 10.0, 30.0)
HEAD = "| scenario | first week s | done s | gap 5 s | gap 10 s | gap 30 s | HiGHS whole, 30 s | memory MB |"


def main(names: list[str]) -> None:
    """Print the table's rows as they are measured."""
    print(HEAD + "\n" + "|---" * 8 + "|", flush=True)
    for path in sorted((ROOT / "scenarios").glob("*.toml")):
        if not names or any(name in path.name for name in names):
            print(row(path), flush=True)


def row(path: Path) -> str:
    """One scenario's measures; gaps are shares of the stimulus."""
    catalogue = load_catalogue()
    terms = resolve(read_brief(str(path), catalogue, io.BytesIO(b"")).brief, catalogue)
    heard: list[Progress] = []
    begun = time.monotonic()
    outcome = search(board_of(terms), SEARCHES["normal"], heard.append)
    done = time.monotonic() - begun
    if outcome.best is None:
        return f"| {path.stem} | no week |"
    first = next(p.seconds for p in heard if p.score > -1e12)
    gaps = " | ".join(shown(gap_at(heard, moment, outcome)) for moment in MOMENTS)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    return f"| {path.stem} | {first:.1f} | {done:.1f} | {gaps} | {shown(peer(outcome))} | {memory} |"


def gap_at(heard: list[Progress], moment: float, outcome: Outcome) -> float | None:
    """The proven gap so many seconds after the start."""
    known = [p for p in heard if p.seconds <= moment and p.score > -1e12]
    return (known[-1].bound - known[-1].score) / stimulus(outcome) if known else None


def peer(outcome: Outcome) -> float | None:
    """The gap of HiGHS alone on the same columns on days."""
    found = highs.bound(outcome.climb.sheet, 10**9, PEER_SECONDS)
    return (found.bound - found.value) / stimulus(outcome) if found.amounts else None


def stimulus(outcome: Outcome) -> float:
    return outcome.best.stimulus * UNITS if outcome.best else 1.0


def shown(gap: float | None) -> str:
    return "no week" if gap is None else f"{100 * gap:.2f} %"


if __name__ == "__main__":
    main(sys.argv[1:])
