"""The single changes that win back most of a poor week."""

from __future__ import annotations

from weeks import audited, days, terms_of

from setwright.solver.auditing import audit
from setwright.solver.uses.edits.candidate_moves import moves, week_after
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.single_changes import best_changes, seconds_over, value
from setwright.solver.uses.edits.sound_changes import is_sound

PRESSES = (
    "dumbbell-bench-press 3, barbell-overhead-press 3, dumbbell-curl 3",
    "machine-chest-press 3, rope-pushdown 3",
)


def test_the_first_change_is_the_best_of_all_there_are() -> None:
    """Every move is tried again here, one by one."""
    found = audited(terms_of(days=days("mon thu", 40)), PRESSES)
    best = max(
        value(after)
        for move in moves(found)
        if (week := week_after(found, move))
        and not Effect(found, after := audit(found.evaluated.resolved, week)).broken
        and is_sound(found, after, move)
    )
    first = best_changes(found, 1)[0]
    assert value(first.effect.after) == best if first.room is None else value(first.effect.after) > best


def test_each_change_stands_on_those_before_it_and_breaks_nothing() -> None:
    found = audited(terms_of(days=days("mon thu", 40)), PRESSES)
    changes = best_changes(found, 3)
    assert len(changes) == 3
    now = found
    for change in changes:
        assert change.effect.before is now
        assert not change.effect.broken
        assert change.effect.after.score_units > now.score_units
        now = change.effect.after


def test_a_day_that_is_too_long_is_cut_first() -> None:
    found = audited(terms_of(days=days("mon thu", 17)), PRESSES)
    assert seconds_over(found)
    change = best_changes(found, 1)[0]
    assert seconds_over(change.effect.after) < seconds_over(found)
    assert not change.effect.broken


def test_no_change_gives_a_big_lift_for_something_small() -> None:
    """A week without trunk work whose chest day has two presses: the crunch takes the fly's place, not the bench's."""
    found = audited(
        terms_of(days=days("mon thu", 40)),
        (
            "barbell-bench-press 4, incline-dumbbell-press 4, cable-fly 4",
            "barbell-row-to-chest 4, wide-grip-pulldown 4",
        ),
    )
    exercises = found.evaluated.resolved.catalogue.exercises
    changes = best_changes(found, 6)
    assert changes
    for change in changes:
        if change.old and change.new and exercises[change.old].main_lift:
            assert exercises[change.new].multi_joint, (change.old, change.new)
