"""What holds a muscle below its band, found by trying one more set everywhere."""

from __future__ import annotations

import pytest
from hand_weeks import GYM
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.uses.explain.bottlenecks import Held, held, held_below


def held_by(resolved, lines, muscle: str) -> Held:
    found = audited(resolved, lines)
    return held(found, found.evaluated.resolved.muscles[muscle])


def test_only_sought_muscles_below_their_band_are_asked_about() -> None:
    found = audited(terms_of(days=days("mon thu", 45), muscles={"calves": "none"}), GYM)
    asked = {hold.muscle.id for hold in held_below(found)}
    below = {
        m.id
        for m in found.evaluated.resolved.muscles.values()
        if m.weight and found.evaluated.weekly_sets(m.id) < m.low * 10_000
    }
    assert asked == below
    assert "calves" not in asked
    assert "obliques" not in asked


def test_kit_that_trains_it_nowhere() -> None:
    """Home dumbbells hold no leg curl machine; with the one dumbbell form avoided hamstrings have hinges only."""
    curls = [e.id for e in CATALOGUE.exercises.values() if "calves" in e.direct]
    hold = held_by(terms_of(days=days("mon", 30), equipment="home-dumbbells", avoid=curls), ("",), "calves")
    assert hold.hold == "kit"
    assert sum(count for _, count in hold.closed) == len(curls)
    assert {rule for rule, _ in hold.closed} <= {"equipment", "avoided", "stand-in"}


def test_a_full_day_holds_by_time_and_names_the_cheapest_room() -> None:
    resolved = terms_of(days=days("mon thu", 26))
    hold = held_by(resolved, GYM, "biceps")
    assert hold.hold == "time"
    assert hold.trial is not None and hold.trial.over > 0
    assert "day-minutes" in hold.trial.rules


def test_room_is_the_best_of_every_single_cut() -> None:
    resolved = terms_of(days=days("mon", 22))
    lines = ("dumbbell-curl 2, machine-chest-press 2, leg-press 2",)
    hold = held_by(resolved, lines, "calves")
    assert hold.hold == "time" and hold.room is not None
    cut, both = hold.room
    assert not both.broken
    assert both.after.evaluated.seconds(0) <= resolved.days[0].limit
    assert cut.line.exercise.id != hold.trial.entry.exercise  # type: ignore[union-attr]


def test_an_open_week_is_held_by_nothing() -> None:
    hold = held_by(terms_of(days=days("mon thu", 90)), GYM, "calves")
    assert hold.hold == "open"
    assert hold.trial is not None and hold.trial.effect.score > 0


def test_efficiency_keeps_minutes() -> None:
    hold = held_by(terms_of(days=days("mon thu", 90), goal="efficiency"), GYM, "calves")
    assert hold.hold == "minutes kept"


def test_a_dear_line_does_not_pay() -> None:
    hold = held_by(terms_of(days=days("mon thu", 90), rules={"line": 50.0}), GYM, "calves")
    assert hold.hold == "cost"
    assert hold.trial is not None and not hold.trial.rules and hold.trial.effect.score < 0


def test_a_cap_on_exercises() -> None:
    resolved = terms_of(days=days("mon thu", 90), rules={"exercise-count": 4})
    hold = held_by(resolved, GYM, "calves")
    assert hold.hold == "cap"
    assert hold.trial is not None and hold.trial.rules == ("exercise-count",)


def test_forty_eight_hours_hold_by_spacing() -> None:
    """Five direct sets on Monday; a fifth on Tuesday would make two hard days in a row."""
    resolved = terms_of(
        days=days("mon tue", 60), goal="growth", muscles={"chest": "priority"}, rules={"exercise-count": 1}
    )
    lines = ("dumbbell-bench-press 5", "machine-chest-press 4")
    hold = held_by(resolved, lines, "chest")
    assert hold.hold == "spacing"
    assert hold.trial is not None and "hard-days" in hold.trial.rules


@pytest.mark.parametrize("minutes", [20, 30, 60])
def test_a_trial_that_breaks_nothing_is_the_nearest_where_there_is_one(minutes: int) -> None:
    from setwright.solver.uses.explain.bottlenecks import trials

    found = audited(terms_of(days=days("mon thu", minutes)), GYM)
    for hold in held_below(found)[:2]:
        if hold.trial is not None:
            assert bool(hold.trial.rules) == all(t.rules for t in trials(found, hold.muscle.id))
