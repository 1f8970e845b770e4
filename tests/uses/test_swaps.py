"""Swaps: the same work, every rule kept, each audited in its week."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hand_weeks import GYM, PAIRED, line
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.auditing import audit
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.prescriptions import prescriptions_of
from setwright.solver.evaluation.week import Week
from setwright.solver.uses.edits.card_swaps import line_swaps, swaps_on_cards
from setwright.solver.uses.edits.editing import entry_as
from setwright.solver.uses.edits.substitutes import candidates
from setwright.solver.uses.edits.swaps import refused, rules_broken, swap_to, swapped, swaps


@pytest.fixture(scope="module")
def gym():
    return audited(terms_of(days=days("mon thu", 45)), GYM)


def test_every_line_of_a_gym_week_has_two_swaps_that_keep_every_rule(gym) -> None:
    for x in gym.evaluated.lines:
        found = swaps(gym, x)
        assert len(found) == 2, x.exercise.id
        for swap in found:
            assert not swap.effect.broken
            assert swap.exercise.direct & x.exercise.direct
            assert swap.exercise.axial <= x.exercise.axial


def test_a_swap_is_the_audit_of_the_week_with_the_line_exchanged(gym) -> None:
    x = line(gym, "dumbbell-bench-press")
    swap = swaps(gym, x)[0]
    entries = [swap.entry if e.exercise == x.exercise.id else e for e in gym.evaluated.week.days[0]]
    by_hand = audit(gym.evaluated.resolved, Week((tuple(entries), *gym.evaluated.week.days[1:])))
    assert swap.effect.after.score_units == by_hand.score_units
    assert swap.effect.seconds == by_hand.evaluated.seconds(0) - gym.evaluated.seconds(0)


def test_sets_stay_as_near_as_the_rules_let_them(gym) -> None:
    for x in gym.evaluated.lines:
        assert all(swap.entry.sets == x.sets for swap in swaps(gym, x))


def test_none_is_avoided_disliked_or_closed_by_a_caution() -> None:
    first = audited(terms_of(days=days("mon thu", 45)), GYM)
    names = [swap.exercise.id for swap in swaps(first, line(first, "machine-shoulder-press", 1), 4)]
    assert names
    resolved = terms_of(
        days=days("mon thu", 45), avoid=names[:1], dislike=names[1:2], client={"cautions": [{"tag": "shoulder"}]}
    )
    found = audited(resolved, GYM)
    for x in found.evaluated.lines:
        for exercise in [s.exercise for s in swaps(found, x, 5)] + list(line_swaps(found, x, 5)):
            assert exercise.id not in names[:2]
            assert resolved.excluded_by(exercise, x.day) in ((), ("stand-in",))
            assert "shoulder" not in exercise.joints


def test_a_line_of_another_audit_of_the_same_week_gives_the_same_swaps(gym) -> None:
    again = audit(gym.evaluated.resolved, gym.evaluated.week)
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
    assert all(rules_broken(swap) for swap in refused(full, x, candidates(full.evaluated, x)[0]))


def test_a_stand_in_comes_up_once_the_better_one_is_out() -> None:
    """In a garage the press overhead is the standing bar's; without it the seated one and the push press are next."""
    resolved = terms_of(days=days("mon", 45), equipment="barbell-garage")
    found = audited(resolved, ("barbell-row-to-chest 3, barbell-overhead-press 3",))
    able = swaps(found, line(found, "barbell-overhead-press"))
    assert able and all(swap.named for swap in able)
    assert all(swap.exercise.rank in (3, 4) for swap in able)
    after = able[0].effect.after
    assert not after.broken
    assert after.evaluated.resolved.pinned == {able[0].exercise.id}


def test_the_pin_of_a_line_goes_over_to_its_swap() -> None:
    pins = [{"exercise": "dumbbell-bench-press", "day": "mon", "sets": 3}, {"exercise": "dumbbell-curl"}]
    found = audited(terms_of(days=days("mon thu", 45), pins=pins), GYM)
    swap = swaps(found, line(found, "dumbbell-bench-press"))[0]
    assert not swap.effect.broken and swap.named
    moved, kept = swap.effect.after.evaluated.resolved.brief.pins
    assert (moved.exercise, moved.day, moved.sets) == (swap.exercise.id, "mon", 3)
    assert kept.exercise == "dumbbell-curl"
    other = swaps(found, line(found, "wide-grip-pulldown", 1))[0]
    assert other.effect.before is found and not other.named


def test_room_is_made_by_one_cut_and_both_are_reckoned() -> None:
    """A day full to the second, the curl at its fewest sets: a barbell curl is put on and off a bar and needs room."""
    resolved = terms_of(days=days("mon thu", 60))
    week = audited(resolved, GYM)
    limit = week.evaluated.work_seconds(0) + resolved.days[0].warm_up - resolved.days[0].warm_up_give
    tight = replace(resolved, days=(replace(resolved.days[0], limit=limit), resolved.days[1]), _closed={})
    full = audit(tight, week.evaluated.week)
    x = line(full, "dumbbell-curl")
    with_cut = [swap for swap in swaps(full, x, 9) if swap.room is not None]
    assert with_cut
    for swap in with_cut:
        assert not swap.effect.broken
        assert swap.effect.after.evaluated.seconds(0) <= limit


def test_a_swap_by_name_may_be_of_other_work(gym) -> None:
    swap = swap_to(gym, line(gym, "dumbbell-curl"), CATALOGUE.exercises["rope-pushdown"])
    assert swap is not None and not swap.effect.broken
    assert swapped(gym, line(gym, "dumbbell-curl"), CATALOGUE.exercises["rope-pushdown"]) == swap


def test_what_trains_half_of_a_hinge_is_no_swap_for_it() -> None:
    resolved = terms_of(days=days("mon", 45), equipment=["barbell", "rack"])
    lift = CATALOGUE.exercises["barbell-romanian-deadlift"]
    entry = entry_as(resolved, lift, resolved.days[0], prescriptions_of(resolved, lift, resolved.days[0])[0], None)
    same, others = candidates(
        EvaluatedWeek(resolved, Week(((entry,),))), EvaluatedWeek(resolved, Week(((entry,),))).lines[0]
    )
    assert all(e.movement == "hinge" for e in same)
    assert not {"single-leg-bridge", "barbell-hip-thrust"} & {e.id for e in others}
    assert all(e.direct >= {"hamstrings", "glutes"} for e in others)


def test_the_swaps_of_all_cards_are_those_of_each_line(gym) -> None:
    found = swaps_on_cards(gym)
    assert found == {(x.day.index, x.place): line_swaps(gym, x, 2) for x in gym.evaluated.lines}
    assert swaps_on_cards(gym, (1,)) == {key: swaps for key, swaps in found.items() if key[0] == 1}


def test_a_card_names_what_fits_and_what_only_runs_over_the_minutes() -> None:
    """On a day full to the minute: each swap named fits in some way, or breaks nothing but the minutes."""
    full = audited(terms_of(days=[*days("mon", 25), *days("thu", 22)]), GYM)
    over = 0
    for x in full.evaluated.lines:
        for exercise in line_swaps(full, x, 2):
            swap = swap_to(full, x, exercise)
            assert swap is not None and rules_broken(swap) in ((), ("day-minutes",))
            over += bool(swap.effect.broken)
    assert over
