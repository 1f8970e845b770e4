"""Every scenario solves, and its week passes the audit."""

from __future__ import annotations

import re
import tomllib
from dataclasses import replace
from pathlib import Path
from statistics import mean

import pytest
from light_search import LIGHT
from planning import ROOT, planned

from setwright.solver.planning import Solved
from setwright.solver.search.limits import SEARCHES

WEEK_ONLY = replace(LIGHT, nodes=0)
"""For the week itself: a week of few minutes takes a better search, the bound stays at the relaxation."""
SCENARIOS = sorted(str(path) for path in (ROOT / "scenarios").glob("*.toml"))


def test_there_are_at_least_fourteen() -> None:
    assert len(SCENARIOS) >= 14


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda p: p.rsplit("/", 1)[-1])
def test_a_scenario_says_who_and_what(path) -> None:
    """A comment that says who, a title, and a code where a name would stand."""
    text = Path(path).read_text(encoding="utf-8")
    brief = tomllib.loads(text)
    assert text.startswith("# ") and "Invented." in text.splitlines()[0]
    assert brief["title"]
    assert re.fullmatch(r"[A-Z]\d\d", brief["client"]["code"])


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda p: p.rsplit("/", 1)[-1])
def test_a_scenario_solves_and_breaks_no_rule(path, catalogue) -> None:
    end = planned(path, catalogue)
    assert isinstance(end, Solved)
    assert end.audit.broken == ()
    assert end.audit.score_units <= end.bound_units
    for day in end.resolved.days:
        assert end.audit.evaluated.seconds(day.index) <= 60 * day.minutes


@pytest.mark.slow
def test_delts_in_three_short_days_get_what_was_asked(catalogue) -> None:
    end = planned("3 days x 40 min, grow delts", catalogue, SEARCHES["quick"])
    assert isinstance(end, Solved)
    evaluated = end.audit.evaluated
    assert all(evaluated.seconds(day.index) <= 2400 for day in end.resolved.days)
    assert evaluated.weekly_sets("side-delts") / 10_000 >= end.resolved.muscles["side-delts"].low
    assert not end.audit.broken
    assert not {"coverage", "full-session", "priority-days"} & set(end.audit.costs())
    assert end.gap_share <= 0.06


@pytest.mark.slow
def test_the_three_goals_differ_as_designed(catalogue) -> None:
    goals = ("growth", "balanced", "efficiency")
    ends = {goal: planned(f"2 days x 45 min, {goal}", catalogue, WEEK_ONLY) for goal in goals}
    assert all(isinstance(end, Solved) for end in ends.values())
    rests = {  # after each set of the week
        goal: mean(x.entry.rest for x in end.audit.evaluated.lines for _ in range(x.sets)) for goal, end in ends.items()
    }
    assert rests["growth"] > rests["balanced"] > rests["efficiency"]
    seconds = {goal: sum(end.audit.evaluated.seconds(d.index) for d in end.resolved.days) for goal, end in ends.items()}
    assert seconds["efficiency"] <= 0.85 * seconds["growth"]

    def low_fatigue(end: Solved) -> float:
        sets = [(x.sets, x.exercise.fatigue == "low") for x in end.audit.evaluated.lines]
        return sum(n for n, low in sets if low) / sum(n for n, _ in sets)

    shares = {goal: low_fatigue(end) for goal, end in ends.items()}
    assert shares["efficiency"] == max(shares.values())
