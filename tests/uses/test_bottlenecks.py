"""What keeps a muscle below its band, found by trying one more set everywhere."""

from __future__ import annotations

import pytest
from hand_weeks import GYM
from weeks import CATALOGUE, audited, days, terms_of

from setwright.solver.uses.explain.bottlenecks import Bottleneck, bottleneck_of, bottlenecks_of


def bottleneck(resolved, lines, muscle: str) -> Bottleneck:
    found = audited(resolved, lines)
    return bottleneck_of(found, found.evaluated.resolved.muscles[muscle])


def test_only_sought_muscles_below_their_band_are_asked_about() -> None:
    found = audited(terms_of(days=days("mon thu", 45), muscles={"calves": "none"}), GYM)
    asked = {here.muscle.id for here in bottlenecks_of(found)}
    below = {
        m.id
        for m in found.evaluated.resolved.muscles.values()
        if m.weight and found.evaluated.weekly_sets(m.id) < m.low * 10_000
    }
    assert asked == below
    assert "calves" not in asked
    assert "obliques" not in asked


def test_kit_that_trains_it_nowhere() -> None:
    """Home dumbbells found_ no leg curl machine; with the one dumbbell form avoided hamstrings have hinges only."""
    curls = [e.id for e in CATALOGUE.exercises.values() if "calves" in e.direct]
    here = bottleneck(terms_of(days=days("mon", 30), equipment="home-dumbbells", avoid=curls), ("",), "calves")
    assert here.cause == "kit"
    assert sum(count for _, count in here.excluded_by) == len(curls)
    assert {rule for rule, _ in here.excluded_by} <= {"equipment", "avoided", "stand-in"}


def test_a_full_day_is_held_by_time_and_names_the_cheapest_room() -> None:
    resolved = terms_of(days=[*days("mon", 25), *days("thu", 22)])
    here = bottleneck(resolved, GYM, "biceps")
    assert here.cause == "time"
    assert here.nearest is not None and here.nearest.over > 0
    assert "day-minutes" in here.nearest.rules


def test_room_is_the_best_of_every_single_cut() -> None:
    resolved = terms_of(days=days("mon", 15))
    lines = ("dumbbell-curl 2, machine-chest-press 2, leg-press 2",)
    here = bottleneck(resolved, lines, "calves")
    assert here.cause == "time" and here.room is not None
    cut, both = here.room
    assert not both.broken
    assert both.after.evaluated.seconds(0) <= resolved.days[0].limit
    assert cut.line.exercise.id != here.nearest.entry.exercise  # type: ignore[union-attr]


def test_an_open_week_is_held_by_nothing() -> None:
    here = bottleneck(terms_of(days=days("mon thu", 90)), GYM, "calves")
    assert here.cause == "open"
    assert here.nearest is not None and here.nearest.effect.score > 0


def test_efficiency_keeps_minutes() -> None:
    here = bottleneck(terms_of(days=days("mon thu", 90), goal="efficiency"), GYM, "calves")
    assert here.cause == "minutes kept"


def test_a_dear_line_does_not_pay() -> None:
    here = bottleneck(terms_of(days=days("mon thu", 90), rules={"line": 50.0}), GYM, "calves")
    assert here.cause == "cost"
    assert here.nearest is not None and not here.nearest.rules and here.nearest.effect.score < 0


def test_a_cap_on_exercises() -> None:
    resolved = terms_of(days=days("mon thu", 90), rules={"exercise-count": 4})
    here = bottleneck(resolved, GYM, "calves")
    assert here.cause == "cap"
    assert here.nearest is not None and here.nearest.rules == ("exercise-count",)


def test_hard_days_apart_are_a_bottleneck_of_spacing() -> None:
    """Five direct sets on Monday; a fifth on Tuesday would make two hard days in a row."""
    resolved = terms_of(
        days=days("mon tue", 60),
        goal="growth",
        muscles={"chest": "priority"},
        rules={"exercise-count": 1, "hard-days": "hard"},
        client={"experience": "novice"},
    )
    lines = ("dumbbell-bench-press 5", "machine-chest-press 4")
    here = bottleneck(resolved, lines, "chest")
    assert here.cause == "spacing"
    assert here.nearest is not None and "hard-days" in here.nearest.rules


@pytest.mark.parametrize("minutes", [20, 30, 60])
def test_an_increase_that_breaks_nothing_is_the_nearest_where_there_is_one(minutes: int) -> None:
    from setwright.solver.uses.explain.bottlenecks import increases

    found = audited(terms_of(days=days("mon thu", minutes)), GYM)
    for here in bottlenecks_of(found)[:2]:
        if here.nearest is not None:
            assert bool(here.nearest.rules) == all(i.rules for i in increases(found, here.muscle.id))
