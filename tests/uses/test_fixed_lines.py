"""Sets, rests and techniques of given lines solved anew, against every way there is."""

from __future__ import annotations

from itertools import product

from hand_weeks import PAIRED
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.auditing import audit
from setwright.solver.evaluation.prescriptions import prescriptions_of
from setwright.solver.evaluation.week import Week
from setwright.solver.uses.edits.editing import entry_as, sorted_as_done
from setwright.solver.uses.edits.fixed_lines import reoptimised_lines


def brute_force(resolved, names) -> int:
    """The best score of a day of some lines, each left out or done in any of its ways."""
    day = resolved.days[0]
    choices = [
        [None, *(o for o in prescriptions_of(resolved, CATALOGUE.exercises[n], day) if not o.paired)] for n in names
    ]
    best = -(10**9)
    for prescriptions in product(*choices):
        entries = [
            entry_as(resolved, CATALOGUE.exercises[n], day, o)
            for n, o in zip(names, prescriptions, strict=True)
            if o is not None
        ]
        found = audit(resolved, Week((sorted_as_done(resolved, entries),)))
        if not found.broken:
            best = max(best, found.score_units)
    return best


def test_two_lines_reach_the_best_of_every_way() -> None:
    """Within the hundredth of a point by which the model's tangents may lie above the curve."""
    resolved = terms_of(days=days("mon", 12))
    found = audited(resolved, ("machine-chest-press 4, dumbbell-curl 4",))
    assert found.broken
    after = reoptimised_lines(resolved, found.evaluated.week)
    assert after is not None and not after.broken
    assert after.score_units >= brute_force(resolved, ("machine-chest-press", "dumbbell-curl")) - 100


def test_a_kept_line_stays_and_pairs_stay_pairs() -> None:
    resolved = terms_of(days=days("mon", 20), pairs=True)
    found = audited(resolved, PAIRED)
    after = reoptimised_lines(resolved, found.evaluated.week, ((0, "lying-dumbbell-triceps-extension"),))
    assert after is not None and not after.broken
    names = {line.exercise.id for line in after.evaluated.lines}
    assert "lying-dumbbell-triceps-extension" in names
    assert names <= {"dumbbell-curl", "lying-dumbbell-triceps-extension", "machine-chest-press"}


def test_no_way_gives_none() -> None:
    resolved = terms_of(days=days("mon", 30), avoid=["dumbbell-curl"])
    found = audited(resolved, ("dumbbell-curl 2",))
    assert reoptimised_lines(resolved, found.evaluated.week, ((0, "dumbbell-curl"),)) is None
