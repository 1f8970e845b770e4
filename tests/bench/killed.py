"""kill -9 of real commands: `python -m tests.bench.killed [POINTS]` kills `log add`, `log import` and `block plan`.

Each point starts `python -m setwright` anew on the same book and kills it at a moment drawn with a fixed seed from its
whole life, which is measured first. Then the book is opened: what was acknowledged (exit code 0, or `written down` on
standard error) is there, nothing is there by half, nothing that was not asked for, and `book check` finds nothing.
"""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / ".names"))
FIRST = date(2020, 1, 6)
"""A Monday."""
BRIEF = "1 day x 15 min, monday, bands"
IMPORTED = 20
"""Sessions of a file that is imported."""
SETS = 3
SEED = 29
LONGER = 1.1
"""Times the measured life within which the kill comes: some commands end before it."""


@dataclass(frozen=True)
class Killed:
    """A command that is killed again and again, and what of it must be in the book."""

    words: Callable[[int, Path], list[str]]
    """The command of a point; a folder for its files."""
    faults: Callable[[Path, set[int], int], Iterator[str]]
    """What is amiss in a book, given the points that were acknowledged and how many were tried."""
    held: Callable[[Path], set[int]]
    """The points of which something is in the book."""


# ---- the commands


def add_words(point: int, folder: Path) -> list[str]:
    return ["log", "add", "@M", f"goblet squat 20x{','.join(map(str, _reps(point)))}", "--on", _day(point).isoformat()]


def import_words(point: int, folder: Path) -> list[str]:
    file = folder / f"{point}.csv"
    rows = (
        f'{_day(point * IMPORTED + n).isoformat()},goblet squat,"20x{",".join(map(str, _reps(n)))}",good'
        for n in range(IMPORTED)
    )
    file.write_text("date,exercise,done,mood\n" + "".join(f"{row}\n" for row in rows), encoding="utf-8")
    return ["log", "import", "@M", str(file)]


def plan_words(point: int, folder: Path) -> list[str]:
    starts = (FIRST + timedelta(weeks=point)).isoformat()
    return ["block", "plan", "@M", "--weeks", "4", "--lighter-every", "4", "--starts", starts, "--search", "quick"]


def _day(number: int) -> date:
    return FIRST + timedelta(days=number)


def _reps(number: int) -> list[int]:
    return [1 + (number + n) % 50 for n in range(SETS)]


# ---- what must hold


def add_faults(place: Path, acknowledged: set[int], tried: int) -> Iterator[str]:
    found = _sessions(place)
    yield from (f"add {point} was acknowledged and is lost" for point in acknowledged if _day(point) not in found)
    for on, reps in found.items():
        point = (on - FIRST).days
        if point >= tried or reps != _reps(point):
            yield f"add {point} is there as {reps}"


def import_faults(place: Path, acknowledged: set[int], tried: int) -> Iterator[str]:
    found = _sessions(place)
    for point in range(tried):
        days = [_day(point * IMPORTED + n) for n in range(IMPORTED)]
        there = [found[day] for day in days if day in found]
        if there and there != [_reps(n) for n in range(IMPORTED)]:
            yield f"import {point} is there by half: {len(there)} sessions"
        if point in acknowledged and not there:
            yield f"import {point} was acknowledged and is lost"
    if len(found) % IMPORTED:
        yield f"{len(found)} sessions are there"


def plan_faults(place: Path, acknowledged: set[int], tried: int) -> Iterator[str]:
    from setwright.catalogue.load import load_catalogue
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.opened import open_book
    from setwright.solver.records.kept_blocks import blocks_of

    with open_book(place) as book:
        blocks = blocks_of(book, client_of(book, "M"), load_catalogue())
    starts = {block.weeks[0].starts for block in blocks.values()}
    yield from (f"block {point} was acknowledged and is lost" for point in acknowledged if _week(point) not in starts)
    yield from (f"a block of {day} is there" for day in starts - {_week(point) for point in range(tried)})
    yield from (f"a block has {len(block.weeks)} weeks" for block in blocks.values() if len(block.weeks) != 4)


def _week(point: int) -> date:
    return FIRST + timedelta(weeks=point)


def _sessions(place: Path) -> dict[date, list[int]]:
    """Day -> the repetitions of its sets, in order."""
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.opened import open_book
    from setwright.solver.book.sessions import sessions_of

    with open_book(place) as book:
        return {s.on: [done.reps for done in s.sets] for s in sessions_of(book, client_of(book, "M"))}


def _blocks(place: Path) -> set[int]:
    from setwright.solver.book.clients import client_of
    from setwright.solver.book.opened import open_book
    from setwright.solver.book.planned import blocks

    with open_book(place) as book:
        return {(kept.starts - FIRST).days // 7 for kept in blocks(book, client_of(book, "M"))}


COMMANDS = {
    "log add": Killed(add_words, add_faults, lambda place: {(on - FIRST).days for on in _sessions(place)}),
    "log import": Killed(
        import_words, import_faults, lambda place: {(on - FIRST).days // IMPORTED for on in _sessions(place)}
    ),
    "block plan": Killed(plan_words, plan_faults, _blocks),
}


# ---- the points


@contextmanager
def started(words: list[str], place: Path) -> Iterator[subprocess.Popen[str]]:
    """A command on a book, in a process group of its own."""
    env = {**os.environ, "PYTHONPATH": str(ROOT / ".names"), "SETWRIGHT_BOOK": str(place)}
    command = [sys.executable, "-m", "setwright", *words]
    streams = {"stdout": subprocess.DEVNULL, "stderr": subprocess.PIPE}
    with subprocess.Popen(command, text=True, env=env, start_new_session=True, **streams) as process:  # type: ignore[call-overload]
        yield process


def run(words: list[str], place: Path) -> float:
    """The seconds that a command takes undisturbed."""
    begun = time.monotonic()
    with started(words, place) as process:
        said = process.communicate()[1]
    assert process.returncode == 0, said
    return time.monotonic() - begun


def killed_points(name: str, points: int, folder: Path, seed: int = SEED) -> Counter[str]:
    """How so many points of a command ended; raises AssertionError with everything that is amiss after a point."""
    from setwright.solver.book.care import check
    from setwright.solver.book.opened import open_book

    what, place, chance = COMMANDS[name], folder / "book.db", random.Random(f"{seed} {name}")
    run(["client", "add", "M", BRIEF], place)
    life, acknowledged, counts = run(what.words(0, folder), place), {0}, Counter[str]()
    for point in range(1, points + 1):
        with started(what.words(point, folder), place) as process:
            try:
                said = process.communicate(timeout=LONGER * life * chance.random())[1]
            except subprocess.TimeoutExpired:
                with suppress(ProcessLookupError):
                    os.killpg(process.pid, signal.SIGKILL)
                said = process.communicate()[1]
        told = process.returncode == 0 or "written down" in said
        assert process.returncode in (0, -signal.SIGKILL), said
        acknowledged |= {point} if told else set()
        faults = list(what.faults(place, acknowledged, point + 1))
        with open_book(place) as book:
            faults += check(book)
        assert not faults, faults
        if process.returncode == 0:
            # It may also end by itself in the moment between the end of the wait and the kill.
            counts["ended before the kill"] += 1
        else:
            there = point in what.held(place)
            counts["killed after it was told" if told else "written, not told" if there else "nothing written"] += 1
    return counts


def main(points: int) -> None:
    """Print a row for each command."""
    ends = ("nothing written", "written, not told", "killed after it was told", "ended before the kill")
    print(f"| command | points | {' | '.join(ends)} | lost | by half |\n|---|{'---|' * (len(ends) + 3)}")
    for name in COMMANDS:
        with tempfile.TemporaryDirectory() as folder:
            counts = killed_points(name, points // len(COMMANDS) + 1, Path(folder))
        row = [name, str(sum(counts.values())), *(str(counts[end]) for end in ends), "0", "0"]
        print(f"| {' | '.join(row)} |", flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
