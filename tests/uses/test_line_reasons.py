"""Why each line stands: what the audit of the week without it says."""

from __future__ import annotations

import math

import pytest
from hand_weeks import GYM, PAIRED, line
from weeks import audited, days, terms_of

from setwright.solver.auditing import audit
from setwright.solver.uses.edits.editing import without
from setwright.solver.uses.explain.reasons import reason_of


def test_the_loss_of_a_lone_curl_is_what_the_published_curves_give_by_hand() -> None:
    """Rest credit 1 - 1.2*exp(-60/33) for each of three sets at its usual RIR; index 100*sqrt(U/10): by hand."""
    resolved = terms_of(days=days("mon", 30), muscles={"biceps": "normal"})
    found = audited(resolved, ("dumbbell-curl 3",))
    effective = 3 * (1 - 1.2 * math.exp(-60 / 33))
    told = reason_of(found, line(found, "dumbbell-curl"))
    assert told.muscle == "biceps"
    assert told.effect.index("biceps") == pytest.approx(-100 * math.sqrt(effective / 10), abs=0.05)
    assert told.effect.after.stimulus_units == 0


def test_every_reason_is_the_audit_of_the_week_without_its_line() -> None:
    found = audited(terms_of(days=days("mon thu", 45)), GYM)
    for told in (reason_of(found, x) for x in found.evaluated.lines):
        again = audit(found.evaluated.resolved, without(found.evaluated, told.line))
        assert told.effect.after.score_units == again.score_units
        assert len(again.evaluated.lines) == len(found.evaluated.lines) - 1
        assert told.muscle in told.line.exercise.muscles
        losses = {m: told.effect.moved(m) for m in told.line.exercise.muscles}
        assert losses[told.muscle] == min(losses.values())


def test_the_muscle_served_most_follows_the_priority() -> None:
    plain = audited(terms_of(days=days("mon thu", 45)), GYM)
    wanted = audited(terms_of(days=days("mon thu", 45), muscles={"triceps": "priority", "chest": "hold"}), GYM)
    assert reason_of(plain, line(plain, "dumbbell-bench-press")).muscle == "chest"
    assert reason_of(wanted, line(wanted, "dumbbell-bench-press")).muscle == "triceps"


def test_costs_that_come_up_are_the_difference_of_the_audits() -> None:
    found = audited(terms_of(days=days("mon thu", 45)), GYM)
    told = reason_of(found, line(found, "barbell-back-squat"))
    assert any(f.rule == "coverage" and "knee" in f.subject for f in told.effect.came_up)
    assert told.effect.score == pytest.approx(
        told.effect.stimulus - sum(cost for _, cost in told.effect.costs), abs=1e-6
    )


def test_a_pinned_line_would_break_its_pin() -> None:
    resolved = terms_of(days=days("mon thu", 45), pins=[{"exercise": "dumbbell-curl"}])
    found = audited(resolved, GYM)
    told = reason_of(found, line(found, "dumbbell-curl"))
    assert told.asked
    assert [f.rule for f in told.effect.broken] == ["pinned"]


def test_a_partner_left_behind_goes_on_alone() -> None:
    found = audited(terms_of(days=days("mon", 30), pairs=True), PAIRED)
    told = reason_of(found, line(found, "dumbbell-curl"))
    left = line(told.effect.after, "lying-dumbbell-triceps-extension")
    assert left.entry.partner is None
    assert not told.effect.broken


def test_a_week_that_is_better_without_a_line_says_so() -> None:
    """At a cost of 30 points a line no curl pays."""
    found = audited(terms_of(days=days("mon thu", 45), rules={"line": 30.0}), GYM)
    assert reason_of(found, line(found, "dumbbell-curl")).effect.score > 0
