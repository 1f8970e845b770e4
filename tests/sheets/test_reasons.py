"""Why this week: the sentences say what the week has, in each kind of week."""

from __future__ import annotations

import json
from collections.abc import Callable

from setwright.catalogue.entries import Catalogue
from setwright.solver.planning import Solved
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.handout.handout import handout_of
from setwright.solver.sheets.handout.reasons import above, below

ONE = ((("barbell-back-squat", 3, 120), ("dumbbell-curl", 2, 60)),)


def reasons_of(solved: Solved, catalogue: Catalogue) -> tuple[str, ...]:
    return handout_of(json.loads(dumped(week_document(solved))), catalogue).why


def test_without_a_priority_the_most_and_the_least_trained_are_named(
    solved_as: Callable[..., Solved], catalogue: Catalogue
) -> None:
    week = solved_as("mon 60 min", ONE)
    first, minutes, _ = reasons_of(week, catalogue)
    assert "most for quads (3 weekly sets)" in first
    assert "(0)" in first
    used = -(-week.audit.evaluated.seconds(0) // 60)
    assert minutes.startswith(f"{used} of your 60 minutes a week hold 5 working sets in 1 session:")
    assert f"the other {len(below(week.audit.evaluated))}" in minutes


def test_priority_muscles_are_named_with_sets_and_days(solved_as: Callable[..., Solved], catalogue: Catalogue) -> None:
    first = reasons_of(solved_as("mon 60 min, grow quads and biceps", ONE), catalogue)[0]
    said = "biceps with 2 weekly sets on 1 day and quads with 3 weekly sets on 1 day"
    assert first == f"First come the muscles you asked for: {said}."


def test_many_priorities_are_counted_not_listed(solved_as: Callable[..., Solved], catalogue: Catalogue) -> None:
    first = reasons_of(solved_as("mon 60 min, grow legs and arms", ONE), catalogue)[0]
    assert first.endswith(", and 2 more.")


def test_a_muscle_above_its_band_is_named_by_what_is_above(
    solved_as: Callable[..., Solved], catalogue: Catalogue
) -> None:
    week = solved_as("mon 60 min, quads at most 2 sets", ONE)
    assert above(week.audit.evaluated) == ["quads"]
