"""Swaps: the same work, every rule kept, each audited in its week."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hand_weeks import GYM, PAIRED, line
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.reckoning.audit import audit
from setwright.solver.reckoning.week import Week
from setwright.solver.uses.swaps import refused, rules_broken, stand_ins, swap_to, swapped, swaps, with_room


@pytest.fixture(scope="module")
def gym():
    return audited(terms_of(days=days("mon thu", 45)), GYM)


def test_every_line_of_a_gym_week_has_two_swaps_that_keep_every_rule(gym) -> None:
    for x in gym.view.lines:
        found = swaps(gym, x)
        assert len(found) == 2, x.where
        for swap in found:
            assert not swap.effect.broken
            assert swap.exercise.direct & x.exercise.direct
            assert swap.exercise.axial <= x.exercise.axial


def test_a_swap_is_the_audit_of_the_week_with_the_line_exchanged(gym) -> None:
    x = line(gym, "dumbbell-bench-press")
    swap = swaps(gym, x)[0]
    entries = [swap.entry if e.exercise == x.exercise.id else e for e in gym.view.week.days[0]]
    by_hand = audit(gym.view.terms, Week((tuple(entries), *gym.view.week.days[1:])))
    assert swap.effect.after.score_units == by_hand.score_units
    assert swap.effect.seconds == by_hand.view.seconds(0) - gym.view.seconds(0)


def test_sets_stay_as_near_as_the_rules_let_them(gym) -> None:
    for x in gym.view.lines:
        assert all(swap.entry.sets == x.sets for swap in swaps(gym, x))


def test_none_is_avoided_disliked_or_closed_by_a_caution() -> None:
    first = audited(terms_of(days=days("mon thu", 45)), GYM)
    names = [swap.exercise.id for swap in swaps(first, line(first, "machine-shoulder-press", 1), 4)]
    assert names
    terms = terms_of(
        days=days("mon thu", 45), avoid=names[:1], dislike=names[1:2], client={"cautions": [{"tag": "shoulder"}]}
    )
    found = audited(terms, GYM)
    for x in found.view.lines:
        for exercise in [s.exercise for s in swaps(found, x, 5)] + list(stand_ins(found, x, 5)):
            assert exercise.id not in names[:2]
            assert not terms.closed_by(exercise, x.day)


def test_a_line_of_another_audit_of_the_same_week_gives_the_same_swaps(gym) -> None:
    again = audit(gym.view.terms, gym.view.week)
    x = line(gym, "barbell-back-squat")
    assert [s.exercise.id for s in swaps(again, x)] == [s.exercise.id for s in swaps(gym, x)]


def test_a_paired_swap_goes_on_in_step_with_its_partner() -> None:
    found = audited(terms_of(days=days("mon", 30), pairs=True), PAIRED)
    swap = swaps(found, line(found, "dumbbell-curl"))[0]
    after = swap.effect.after
    assert line(after, "lying-dumbbell-triceps-extension").entry.partner == swap.exercise.id
    assert swap.entry.partner == "lying-dumbbell-triceps-extension"
    assert (swap.entry.sets, swap.entry.rest) == (2, line(found, "lying-dumbbell-triceps-extension").entry.rest)


def test_what_is_refused_breaks_a_rule() -> None:
    full = audited(terms_of(days=days("mon thu", 27)), GYM)
    x = line(full, "dumbbell-curl")
    for swap in refused(full, x, ()):
        assert rules_broken(swap)


def test_room_is_made_by_one_cut_and_both_are_reckoned() -> None:
    """A day full to the second: a hack squat takes longer to change to than the bar."""
    terms = terms_of(days=days("mon thu", 60))
    week = audited(terms, GYM)
    limit = week.view.work_seconds(0) + terms.days[0].warm_up - terms.days[0].warm_up_give
    tight = replace(terms, days=(replace(terms.days[0], limit=limit), terms.days[1]), _open={})
    full = audit(tight, week.view.week)
    x = line(full, "barbell-back-squat")
    able = swaps(full, x, 9)
    for swap in with_room(full, x, able, 2):
        assert swap.room is not None
        assert not swap.effect.broken
        assert swap.effect.after.view.seconds(0) <= limit


def test_a_swap_by_name_may_be_of_other_work(gym) -> None:
    swap = swap_to(gym, line(gym, "dumbbell-curl"), CATALOGUE.exercises["rope-pushdown"])
    assert swap is not None and not swap.effect.broken
    assert swapped(gym, line(gym, "dumbbell-curl"), CATALOGUE.exercises["rope-pushdown"]) == swap
