"""The bench of the search alone: `python -m tests.bench [NAME ...] [--peers]` prints its gap at 3, 5, 10 and 30 s.

Each brief runs in a process of its own, alone on the machine. With --peers the same columns on days go whole to
HiGHS (one thread) and to CP-SAT (two workers), ten seconds each, in the same run.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from statistics import median
from typing import Any

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
HEAD = (
    "brief", "first week s", "done s", "gap 3 s", "gap 5 s", "gap 10 s", "gap 30 s", "to 1 % s", "to 0.5 % s",
    "MB", "HiGHS 10 s", "CP-SAT 10 s",
)  # fmt: skip


def main(words: list[str]) -> None:
    """Print a row as each brief is measured, then the medians and the worst."""
    peers = "--peers" in words
    names = [w for w in words if not w.startswith("--")]
    paths = [*sorted((ROOT / "scenarios").glob("*.toml")), *sorted((HERE / "instances").glob("*.toml"))]
    print(line(HEAD) + "\n" + "|---" * len(HEAD) + "|", flush=True)
    rows = []
    for path in paths:
        if not names or any(path.name.startswith(name) for name in names):
            rows.append(row(path, peers))
            print(line(cells(path, rows[-1])), flush=True)
    print("\n" + summary([r for r in rows if r["ours"]["week"]]))


def row(path: Path, peers: bool) -> dict[str, Any]:
    """One brief by our search, and by the peers where they are asked for."""
    return {who: run(path, who) for who in (("ours", "highs", "cpsat") if peers else ("ours",))}


def run(path: Path, who: str) -> dict[str, Any]:
    """One measure in a process of its own."""
    command = [sys.executable, "-m", "tests.bench.one", str(path), who]
    ended = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    found: dict[str, Any] = json.loads(ended.stdout.splitlines()[-1])
    return found


def cells(path: Path, row: dict[str, Any]) -> list[str]:
    """A row's cells as text."""
    ours = row["ours"]
    if not ours["week"]:
        return [path.stem, "no week", f"{ours['seconds']:.1f}", *[""] * (len(HEAD) - 3)]
    gaps = [percent(share(gap, ours)) for gap in ours["gaps"]]
    times = [f"{s:.1f}" if s is not None else "-" for s in (ours["to_1"], ours["to_half"])]
    peers = [percent(share(row[who]["end"], ours)) if who in row else "" for who in ("highs", "cpsat")]
    return [
        path.stem, f"{ours['first']:.1f}", f"{ours['seconds']:.1f}", *gaps, *times, str(ours["megabytes"]), *peers,
    ]  # fmt: skip


def share(gap: float | None, ours: dict[str, Any]) -> float | None:
    """A gap as a share of the stimulus of our week."""
    return None if gap is None else gap / ours["stimulus"]


def percent(value: float | None) -> str:
    return "no week" if value is None or value == float("inf") else f"{100 * value:.2f} %"


def line(words: Any) -> str:
    return "| " + " | ".join(words) + " |"


def summary(rows: list[dict[str, Any]]) -> str:
    """Median, ninetieth part and worst of each gap; a brief without a week yet counts as the worst."""
    said = []
    named: list[tuple[str, list[float]]] = [
        (f"gap at {moment} s", [endless(share(r["ours"]["gaps"][i], r["ours"])) for r in rows])
        for i, moment in enumerate((3, 5, 10, 30))
    ]
    for who in ("highs", "cpsat"):
        if rows and who in rows[0]:
            named.append((f"{who} whole at 10 s", [endless(share(r[who]["end"], r["ours"])) for r in rows]))
    for name, values in named:
        ordered = sorted(values)
        ninety = ordered[min(len(ordered) - 1, round(0.9 * (len(ordered) - 1)))]
        said.append(
            f"{name}: median {percent(median(ordered))}, 90 % at most {percent(ninety)}, worst {percent(ordered[-1])}"
        )
    for name, key in (("first week", "first"), ("done", "seconds"), ("memory MB", "megabytes")):
        values = sorted(float(r["ours"][key]) for r in rows)
        said.append(f"{name}: median {median(values):.1f}, worst {values[-1]:.1f}")
    return "\n".join(said)


def endless(value: float | None) -> float:
    return float("inf") if value is None else value


if __name__ == "__main__":
    main(sys.argv[1:])
