"""Questions answered by solving anew, held against the audit of the week without the line and the proven bound."""

from __future__ import annotations

import pytest
from hand_weeks import TINY, line
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.linear.instance import instance_of
from setwright.solver.search.best_week import search
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.edits.leaving_out import emptied, left_out
from setwright.solver.uses.explain.reasons import reason_of
from setwright.solver.uses.explain.what_if import (
    Answer,
    Excluded,
    more_minutes,
    solved_with,
    solved_without,
)
from setwright.solver.uses.time_budget.optimality_gap import OptimalityGap, optimality_gap_of

BRIEFS = {
    "one day": {"days": days("mon", 20), "equipment": "home-dumbbells"},
    "hotel": {"days": days("tue fri", 15), "equipment": "hotel-gym"},
    "priority": {"days": days("sat", 25), "muscles": {"biceps": "priority", "legs": "none"}},
}


def test_an_exercise_that_the_kit_closes_is_answered_without_solving() -> None:
    found = audited(terms_of(days=days("mon", 30), equipment="bands"), ("",))
    end = solved_with(found, CATALOGUE.exercises["barbell-back-squat"], TINY)
    assert isinstance(end, Excluded)
    assert "equipment" in end.rules


def test_what_is_left_out_is_avoided_and_its_pins_dropped() -> None:
    resolved = terms_of(days=days("mon", 30), pins=[{"exercise": "dumbbell-curl"}], like=["dumbbell-curl"])
    brief = left_out(resolved.brief, "dumbbell-curl")
    assert (brief.avoid, brief.pins, brief.like) == (("dumbbell-curl",), (), ())


def test_an_exercise_is_emptied_from_every_day() -> None:
    found = audited(terms_of(days=days("mon thu", 45)), ("dumbbell-curl 2, leg-press 2", "dumbbell-curl 3"))
    assert [e.exercise for e in emptied(found, "dumbbell-curl").entries] == ["leg-press"]


@pytest.mark.slow
@pytest.mark.parametrize("name", BRIEFS)
def test_a_reason_holds_when_the_week_is_solved_without_the_entry(name: str) -> None:
    """What solving anew finds is no worse than the week without the line and no better than the proven bound."""
    resolved = terms_of(**BRIEFS[name])
    outcome = search(instance_of(resolved), SolveOptions(TINY))
    assert outcome.best is not None
    found = outcome.best
    first = found.evaluated.lines[0]
    told = reason_of(found, first)
    end = solved_without(found, first, TINY)
    assert isinstance(end, Answer)
    after = end.effect.after
    assert first.exercise.id not in after.evaluated.days_of
    assert not after.broken
    assert len(found.evaluated.days_of[first.exercise.id]) > 1 or after.score_units >= told.effect.after.score_units
    assert after.score_units <= outcome.bound + 1


@pytest.mark.slow
def test_with_more_minutes_and_the_best_week_near_a_poor_one() -> None:
    resolved = terms_of(days=days("mon", 20), equipment="home-dumbbells")
    found = audited(resolved, ("dumbbell-curl 3, lying-dumbbell-triceps-extension 2",))
    pinned = solved_with(found, CATALOGUE.exercises["dumbbell-calf-raise"], TINY)
    assert isinstance(pinned, Answer)
    assert "dumbbell-calf-raise" in pinned.effect.after.evaluated.days_of
    assert not pinned.effect.after.broken
    gap = optimality_gap_of(found, TINY)
    assert isinstance(gap, OptimalityGap)
    assert found.score_units < gap.near.score_units <= gap.best.score_units
    assert gap.near.score_units >= gap.best.score_units - gap.share * gap.best.stimulus_units - 1
    longer = more_minutes(gap.best, 5, TINY)
    assert not isinstance(longer, tuple)
    gains = [row.answer.effect.score for row in longer.days]  # type: ignore[union-attr]
    assert gains == sorted(gains, reverse=True)
    assert gains[0] >= 0
    assert line(found, "dumbbell-curl").sets == 3
