"""Sets, rests and techniques of given lines solved anew, against every way there is."""

from __future__ import annotations

from itertools import product

from hand_weeks import PAIRED
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.auditing import audit
from setwright.solver.evaluation.prescriptions import options_of
from setwright.solver.evaluation.week import Week
from setwright.solver.uses.edits.editing import entry_as, sorted_as_done
from setwright.solver.uses.edits.fixed_lines import settled


def brute_force(terms, names) -> int:
    """The best score of a day of some lines, each left out or done in any of its ways."""
    day = terms.days[0]
    choices = [[None, *(o for o in options_of(terms, CATALOGUE.exercises[n], day) if not o.paired)] for n in names]
    best = -(10**9)
    for options in product(*choices):
        entries = [
            entry_as(terms, CATALOGUE.exercises[n], day, o)
            for n, o in zip(names, options, strict=True)
            if o is not None
        ]
        found = audit(terms, Week((sorted_as_done(terms, entries),)))
        if not found.broken:
            best = max(best, found.score_units)
    return best


def test_two_lines_settle_to_the_best_of_every_way() -> None:
    """Within the hundredth of a point by which the model's tangents may lie above the curve."""
    terms = terms_of(days=days("mon", 15))
    found = audited(terms, ("machine-chest-press 4, dumbbell-curl 4",))
    assert found.broken
    after = settled(terms, found.view.week)
    assert after is not None and not after.broken
    assert after.score_units >= brute_force(terms, ("machine-chest-press", "dumbbell-curl")) - 100


def test_a_kept_line_stays_and_pairs_stay_pairs() -> None:
    terms = terms_of(days=days("mon", 20), pairs=True)
    found = audited(terms, PAIRED)
    after = settled(terms, found.view.week, ((0, "lying-dumbbell-triceps-extension"),))
    assert after is not None and not after.broken
    names = {line.exercise.id for line in after.view.lines}
    assert "lying-dumbbell-triceps-extension" in names
    assert names <= {"dumbbell-curl", "lying-dumbbell-triceps-extension", "machine-chest-press"}


def test_no_way_gives_none() -> None:
    terms = terms_of(days=days("mon", 30), avoid=["dumbbell-curl"])
    found = audited(terms, ("dumbbell-curl 2",))
    assert settled(terms, found.view.week, ((0, "dumbbell-curl"),)) is None
