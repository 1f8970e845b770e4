"""The week nearest another: no change where none is needed, and the least there is by brute force on a tiny brief."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache
from typing import Any

import pytest
from boards import CATALOGUE, audited, days, only, place_of, terms_of
from light_search import LIGHT

from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.instance import instance_of
from setwright.solver.planning import Solved, plan_near
from setwright.solver.search.best_week import Outcome, search
from setwright.solver.search.secondary.member_names import change
from setwright.solver.search.secondary.minimal_change import nearest_week
from setwright.solver.search.solve_options import SolveOptions

CHEAP = SolveOptions(replace(LIGHT, rounds=4, work=0.1, nodes=0))
HOME: dict[str, Any] = {"days": days("mon thu", 30), "equipment": "home-dumbbells"}
LONGER: dict[str, Any] = {"days": days("mon thu", 35), "equipment": "home-dumbbells"}
TINY: dict[str, Any] = {
    "days": days("mon thu", 12),
    "equipment": "bands",
    "avoid": only("band-curl", "push-up"),
    "techniques": False,
    "client": {"experience": "intermediate"},
}


@lru_cache(maxsize=8)
def outcome(name: str) -> Outcome:
    return search(instance_of(terms_of(**globals()[name])), CHEAP)


def week(name: str) -> Week:
    best = outcome(name).best
    assert best is not None
    return best.evaluated.week


def floor_of(name: str, share: float) -> int:
    best = outcome(name).best
    assert best is not None
    return math.ceil(best.score_units - share * best.stimulus_units)


def test_change_counts_sets_by_exercise_and_day() -> None:
    """Worked by hand: 1 set less of one, 2 of another gone, 3 of a third come: 1 + 2 + 3 = 6; order is no change."""
    a, b, c = (Entry(name, 3, (8, 12), 1, 60) for name in ("a", "b", "c"))
    before = Week(((a, replace(b, sets=2)), (b,)))
    after = Week(((replace(a, sets=2), c), (replace(b, rest=90),)))
    assert change(after, before) == change(before, after) == 6
    assert change(Week(((c, a), (b,))), Week(((a, c), (b,)))) == 0


def test_a_week_that_is_good_enough_stays_as_it_is() -> None:
    found = nearest_week(outcome("HOME").lns, week("HOME"), 0.0, CHEAP)
    assert found.change == 0 and found.audit.evaluated.week == week("HOME")


@pytest.mark.parametrize("share", (0.0, 0.02, 0.1))
def test_the_floor_holds_and_more_room_never_changes_more(share: float) -> None:
    found = nearest_week(outcome("LONGER").lns, week("HOME"), share, CHEAP)
    assert not found.audit.broken
    assert found.floor == floor_of("LONGER", share) <= found.audit.score_units
    assert found.change == change(found.audit.evaluated.week, week("HOME")) <= change(week("LONGER"), week("HOME"))
    assert found.audit.score_units == audit(found.audit.evaluated.resolved, found.audit.evaluated.week).score_units


def test_a_shorter_week_keeps_most_of_a_longer_one() -> None:
    """With a fifth of the stimulus to spare, sets are cut rather than exercises exchanged."""
    found = nearest_week(outcome("HOME").lns, week("LONGER"), 0.2, CHEAP)
    fresh = change(week("HOME"), week("LONGER"))
    assert found.change < fresh


def test_the_same_input_gives_the_same_week() -> None:
    one, two = (nearest_week(outcome("LONGER").lns, week("HOME"), 0.02, CHEAP) for _ in range(2))
    assert one.audit.evaluated.week == two.audit.evaluated.week and one.change == two.change


def test_the_search_is_left_as_it_was() -> None:
    lns = outcome("LONGER").lns
    before = lns.incumbent()
    nearest_week(lns, week("HOME"), 0.02, CHEAP)
    assert lns.incumbent() == before


def test_an_exercise_now_avoided_goes_and_the_rest_stays() -> None:
    gone = week("HOME").days[0][0].exercise
    raw = {**HOME, "avoid": [gone]}
    end, near = plan_near(parse_brief(raw, CATALOGUE, "test"), CATALOGUE, week("HOME"), 0.05, CHEAP)
    assert isinstance(end, Solved) and near is not None
    assert end.audit is near.audit and gone not in {e.exercise for e in end.audit.evaluated.week.entries}
    kept = {(d, e.exercise) for d, day in enumerate(end.audit.evaluated.week.days) for e in day}
    before = {(d, e.exercise) for d, day in enumerate(week("HOME").days) for e in day if e.exercise != gone}
    assert len(kept & before) >= len(before) / 2
    assert end.bound_units >= end.audit.score_units


def test_the_days_must_agree_in_number() -> None:
    with pytest.raises(ValueError, match="1 days, the brief 2"):
        nearest_week(outcome("HOME").lns, Week(((),)), 0.02, CHEAP)


def test_the_least_change_of_a_tiny_brief_by_brute_force() -> None:
    """Every week of the brief listed and audited: none above the floor is nearer than the one found."""
    place = place_of(**TINY)
    by_day = [[c for c in place.columns if c.group == day] for day in range(2)]
    chosen = [subsets(place.instance.classes, columns) for columns in by_day]
    previous = Week(
        tuple((Entry("push-up", 4, (8, 15), 1, 60), Entry("band-curl", 1, (8, 15), 1, 60)) for _ in range(2))
    )
    found = nearest_week(outcome("TINY").lns, previous, 0.3, CHEAP)
    least = math.inf
    for one in chosen[0]:
        for two in chosen[1]:
            result = audited(place.instance, (*one, *two))
            if not result.broken and result.score_units >= found.floor:
                least = min(least, change(result.evaluated.week, previous))
    assert found.change == least > 0


def subsets(classes: Any, columns: list[Any]) -> list[tuple[Any, ...]]:
    """Every choice of columns with at most one for each class."""
    found: list[tuple[Any, ...]] = [()]
    for cls in sorted({c.assignments[0].cls for c in columns}):
        mine = [c for c in columns if c.assignments[0].cls == cls]
        found = [(*before, *one) for before in found for one in [(), *((c,) for c in mine)]]
    return found
