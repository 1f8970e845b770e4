"""One worker and two give the same week through planning, for every goal and kind of plan; one starts no thread."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from boards import CATALOGUE, days, only
from light_search import LIGHT

from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.planning import Solved, plan, plan_apart, plan_near
from setwright.solver.search import worker
from setwright.solver.search.solve_options import SolveOptions

TWO = SolveOptions(replace(LIGHT, rounds=6, work=0.05, nodes=2, pattern_nodes=1, columns=30))
ONE = replace(TWO, workers=1)
GOALS = ("growth", "balanced", "efficiency")
WEEKS = {"short": "mon thu", "long": "mon tue thu fri"}
FEW = (
    "band-curl",
    "push-up",
    "band-squat",
    "band-row-to-the-hip",
    "band-side-raise",
    "band-pushdown",
    "band-glute-bridge",
)
"""The exercises left, so that a plan takes a second."""
OTHERS = ("band-chest-press", "band-pulldown", "band-split-squat", "band-face-pull", "band-overhead-extension")
"""More of them, where another week is asked for."""


def brief(goal: str, weekdays: str, minutes: int = 15, pairs: bool = False) -> ParsedBrief:
    raw: dict[str, Any] = {
        "days": days(weekdays, minutes),
        "equipment": "bands",
        "goal": goal,
        "pairs": pairs,
        "avoid": only(*FEW),
    }
    return parse_brief(raw, CATALOGUE, "test")


def no_thread(*_: object) -> None:
    pytest.fail("a thread was started")


@pytest.mark.parametrize("week", WEEKS)
@pytest.mark.parametrize("goal", GOALS)
def test_a_plan_by_one_worker_starts_no_thread_and_gives_the_same(
    goal: str, week: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The note on pairs and efficiency's second step included: they had a second thread whatever was asked."""
    note = goal == "balanced" and week == "short"
    asked = brief(goal, WEEKS[week], pairs=note)
    two = plan(asked, CATALOGUE, replace(TWO, pairs_note=note))
    monkeypatch.setattr(worker, "ThreadPoolExecutor", no_thread)
    one = plan(asked, CATALOGUE, replace(ONE, pairs_note=note))
    assert isinstance(one, Solved) and isinstance(two, Solved)
    assert one.audit.evaluated.week == two.audit.evaluated.week
    assert (one.bound_units, one.ended_by) == (two.bound_units, two.ended_by)
    assert one.best_without_pairs == two.best_without_pairs
    assert (one.best_without_pairs is not None) == note
    if goal == "efficiency":
        assert one.shortest is not None and two.shortest is not None
        assert (one.shortest.seconds, one.shortest.least_seconds) == (two.shortest.seconds, two.shortest.least_seconds)


def test_other_weeks_by_one_worker_are_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    raw = {"days": days("mon", 15), "equipment": "bands", "pairs": False, "avoid": only(*FEW, *OTHERS)}
    asked = parse_brief(raw, CATALOGUE, "test")
    two = plan_apart(asked, CATALOGUE, 1, 0.1, replace(TWO, pairs_note=False))[1]
    monkeypatch.setattr(worker, "ThreadPoolExecutor", no_thread)
    one = plan_apart(asked, CATALOGUE, 1, 0.1, replace(ONE, pairs_note=False))[1]
    assert [a.audit.evaluated.week for a in one] == [a.audit.evaluated.week for a in two]
    assert one, "there is another week to compare"


@pytest.mark.parametrize("goal", GOALS)
def test_a_near_week_by_one_worker_is_the_same(goal: str, monkeypatch: pytest.MonkeyPatch) -> None:
    before = plan(brief(goal, "mon thu"), CATALOGUE, replace(TWO, pairs_note=False))
    assert isinstance(before, Solved)
    previous = before.audit.evaluated.week
    two, near_two = plan_near(brief(goal, "mon thu", 20), CATALOGUE, previous, 0.05, TWO)
    monkeypatch.setattr(worker, "ThreadPoolExecutor", no_thread)
    one, near_one = plan_near(brief(goal, "mon thu", 20), CATALOGUE, previous, 0.05, ONE)
    assert isinstance(one, Solved) and isinstance(two, Solved) and near_one is not None and near_two is not None
    assert one.audit.evaluated.week == two.audit.evaluated.week
    assert (near_one.change, near_one.floor, one.bound_units) == (near_two.change, near_two.floor, two.bound_units)
