"""Whole commands: `python -m tests.bench.commands [NAME ...] [--search quick,normal]` prints a table.

Each is `setwright week BRIEF --json` from the shell, alone on the machine: seconds of waiting, CPU seconds, the gap as
a share of the week index, memory. NAME is how a brief's file begins: a scenario's, or a generated one's (g41).
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from statistics import median, quantiles

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
EXITS = {3: "clash", 4: "no week"}


@dataclass(frozen=True)
class Run:
    """How one command went; `gap` in per cent, None without a week."""

    waiting: float
    cpu: float
    gap: float | None
    megabytes: int
    code: int


def main(words: list[str]) -> None:
    """Print a row as each brief is planned, then the medians and the worst of each search."""
    searches = words[words.index("--search") + 1].split(",") if "--search" in words else ["normal"]
    names = [w for w in words if not w.startswith("--") and w.split(",") != searches]
    paths = [*sorted((ROOT / "scenarios").glob("*.toml")), *sorted((HERE / "instances").glob("*.toml"))]
    head = [f"{search}: {column}" for search in searches for column in ("waiting s", "CPU s", "gap", "MB")]
    print("| brief | " + " | ".join(head) + " |\n" + "|---" * (1 + len(head)) + "|", flush=True)
    rows: list[list[Run]] = []
    for path in paths:
        if not names or any(path.name.startswith(name) for name in names):
            rows.append([run(path, search) for search in searches])
            print(f"| {path.stem} | " + " | ".join(cells(one) for one in rows[-1]) + " |", flush=True)
    print()
    for search, runs in zip(searches, zip(*rows, strict=True), strict=True):
        print(f"{search}: {summary([one for one in runs if one.gap is not None])}")


def run(path: Path, search: str) -> Run:
    """One command in a process of its own; its CPU seconds and memory as the kernel counts them."""
    command = [sys.executable, "-m", "setwright", "week", str(path), "--json", "--search", search]
    begun = time.monotonic()
    process = subprocess.Popen(
        command, cwd=ROOT, env=os.environ | {"PYTHONPATH": str(ROOT / ".names")}, stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    )  # fmt: skip
    assert process.stdout is not None
    printed = process.stdout.read()
    _, status, used = os.wait4(process.pid, 0)
    waiting, code = time.monotonic() - begun, os.waitstatus_to_exitcode(status)
    document = json.loads(printed) if code == 0 else {}
    gap = 100 * document["gap_share"] if "gap_share" in document else None
    return Run(waiting, used.ru_utime + used.ru_stime, gap, used.ru_maxrss // 1024, code)


def cells(one: Run) -> str:
    """A run as the cells of a row."""
    gap = EXITS.get(one.code, f"exit {one.code}") if one.gap is None else f"{one.gap:.2f} %"
    return f"{one.waiting:.1f} | {one.cpu:.1f} | {gap} | {one.megabytes}"


def summary(runs: list[Run]) -> str:
    """The medians, the ninetieth parts and the worst of the runs that ended with a week."""
    said = []
    for name, values in (
        ("waiting s", [r.waiting for r in runs]), ("CPU s", [r.cpu for r in runs]),
        ("gap %", [r.gap for r in runs if r.gap is not None]), ("MB", [float(r.megabytes) for r in runs]),
    ):  # fmt: skip
        tenth = quantiles(values, n=10)[-1] if len(values) > 1 else values[0]
        said.append(f"{name} median {median(values):.2f}, 90 % {tenth:.2f}, worst {max(values):.2f}")
    return f"{len(runs)} weeks; " + "; ".join(said)


if __name__ == "__main__":
    main(sys.argv[1:])
