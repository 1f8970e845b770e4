"""What three small lifts in turn could bring at most: `python -m tests.bench.three_in_turn` prints a table.

Rounds of three are not planned. Here every pair whose lifts are small is given what a round of three would give it: a
third of the round's rest instead of a half, two changes to share instead of one, and the longer rest that a lift sees
while two others are done. A pair needs no third lift for that, so the week found is better than any with real rounds of
three. Its bound says how good such a week could be at most.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from contextlib import ExitStack
from typing import Any
from unittest.mock import patch

from setwright.catalogue.entries import Exercise
from setwright.solver import SEARCHES, Solved, SolveOptions, load_catalogue, plan, read_brief
from setwright.solver.evaluation import clock, evaluated_week, prescriptions
from setwright.solver.linear import instance

BRIEFS = (
    "3 days x 20 min, efficiency, at home with dumbbells and bench",
    "2 days x 30 min, efficiency",
    "3 days x 10 min, efficiency",
    "3 days x 30 min, efficiency, grow arms",
    "4 days x 25 min, efficiency, grow delts and biceps",
)
SMALL = frozenset({"biceps", "triceps", "forearms", "side-delts", "rear-delts", "front-delts", "calves", "abs"})


def is_small(exercise: Exercise) -> bool:
    """Whether a lift is of one joint and tires little, for arms, delts, calves or trunk."""
    low = not exercise.multi_joint and exercise.fatigue == "low" and exercise.limb == "both"
    return low and exercise.direct <= SMALL


def in_threes(make: Callable[..., Any]) -> Callable[..., Any]:
    """`prescriptions.make` with small lifts in pairs timed and rested as in a round of three."""

    def third(work: int, rounds: int, rest: int, change_over: int, pair_change: int = 15) -> int:
        shared = (4 * pair_change + 2 * rest) / 3
        return round(rounds * (2 * work + shared)) + 2 * max(0, change_over - rest)

    def seen(resolved: Any, rest: int, apart: bool) -> int:
        return 2 * rest_seen(resolved, rest, apart) - rest

    rest_seen = prescriptions.pair_rest_seen

    def made(resolved: Any, exercise: Exercise, *words: Any, **more: Any) -> Any:
        if not is_small(exercise):
            return make(resolved, exercise, *words, **more)
        with (
            patch.object(prescriptions, "half_pair_half_seconds", third),
            patch.object(prescriptions, "pair_rest_seen", seen),
        ):
            return make(resolved, exercise, *words, **more)

    return made


def solved(phrase: str) -> Solved:
    """A brief's week."""
    catalogue = load_catalogue()
    end = plan(read_brief(phrase, catalogue), catalogue, SolveOptions(SEARCHES["normal"], workers=1, pairs_note=False))
    assert isinstance(end, Solved)
    return end


def best_score(week: Solved) -> float:
    """The score before the minutes were cut, in index points."""
    return week.shortest.best_score if week.shortest else week.score


def main() -> None:
    """Print, for each brief, score and bound as planned and as if small pairs were rounds of three."""
    assert clock.half_pair_half_seconds is prescriptions.half_pair_half_seconds
    print("| brief | score | bound | in threes: score | bound |\n|---|---|---|---|---|", flush=True)
    for phrase in sys.argv[1:] or BRIEFS:
        usual, make = solved(phrase), prescriptions.make
        with ExitStack() as stack:
            for module in (prescriptions, instance, evaluated_week):
                if getattr(module, "make", None) is make:
                    stack.enter_context(patch.object(module, "make", in_threes(make)))
            threes = solved(phrase)
        figures = (best_score(usual), usual.bound, best_score(threes), threes.bound)
        print(f"| {phrase} | " + " | ".join(f"{x:.1f}" for x in figures) + " |", flush=True)


if __name__ == "__main__":
    main()
