"""What differs between two audits of a week."""

from __future__ import annotations

import pytest
from hand_weeks import GYM
from weeks import audited, days, terms_of

from setwright.solver.evaluation.finding import Finding
from setwright.solver.uses.edits.effects import Effect

FEW = {"exercise-count": 3}
LONG = "leg-press 3, dumbbell-bench-press 3, wide-grip-pulldown 3, dumbbell-curl 2, rope-pushdown 2"


def of(before: str, after: str, **raw: object) -> Effect:
    resolved = terms_of(days=days("mon", 60), **raw)
    return Effect(audited(resolved, (before,)), audited(resolved, (after,)))


def test_score_is_stimulus_less_costs_and_seconds_those_of_the_days() -> None:
    resolved = terms_of(days=days("mon thu", 45))
    both = Effect(audited(resolved, GYM), audited(resolved, (GYM[0], "")))
    assert both.score == pytest.approx(both.stimulus - sum(cost for _, cost in both.costs), abs=1e-6)
    assert both.seconds == both.after.evaluated.week_seconds - both.before.evaluated.week_seconds < 0
    assert both.after.evaluated.seconds(1) > 0, "an empty day has a warm-up on paper, but nobody goes"


def test_a_breach_that_was_there_is_new_only_when_it_is_wider() -> None:
    fewer = LONG.rsplit(", ", 1)[0]
    assert {f.rule for f in of(fewer, LONG, rules=FEW).broken} == {"exercise-count"}
    assert not of(LONG, fewer, rules=FEW).broken
    assert of(LONG, LONG.rsplit(", ", 2)[0], rules=FEW).no_longer_broken == ("exercise-count",)


def test_a_day_too_long_is_new_only_when_it_is_longer() -> None:
    resolved = terms_of(days=days("mon", 20))
    short, long = audited(resolved, (LONG.replace(" 3", " 2"),)), audited(resolved, (LONG,))
    assert "day-minutes" in {f.rule for f in Effect(short, long).broken}
    assert not Effect(long, short).broken


def test_what_went_is_what_came_up_the_other_way_round() -> None:
    resolved = terms_of(days=days("mon thu", 45))
    there = Effect(audited(resolved, GYM), audited(resolved, (GYM[0], "")))
    back = Effect(there.after, there.before)
    assert there.came_up == back.went
    assert there.went == back.came_up


def test_a_finding_is_as_wide_as_what_stands_is_from_what_should() -> None:
    assert Finding("day-minutes", amount=2917, limit=2400, days=(0,)).width == 517
    assert Finding("exact-band", case="at least", subject="quads", amount=3.5, limit=4.0).width == 0.5
    assert Finding("slot-once", days=(0,)).width == 0
