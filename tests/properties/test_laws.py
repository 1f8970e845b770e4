"""Laws of drawn briefs: every solved week passes its audit, and more of anything never lowers what is proven."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from light_search import LIGHT

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.linear.instance import instance_of
from setwright.solver.planning import Clash, Solved, plan
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import Outcome, search
from setwright.solver.search.solve_options import SolveOptions

CATALOGUE = load_catalogue()
SMALL = SolveOptions(replace(LIGHT, rounds=2, work=0.05, nodes=1, pattern_nodes=1, columns=30))
UNPROVEN = replace(SMALL, limits=replace(SMALL.limits, nodes=0))
"""The same search without branching for the bound: with no neighbourhoods after the first week, the same week."""
FEW = settings(max_examples=3, derandomize=True, deadline=None, suppress_health_check=list(HealthCheck), database=None)
SWITCHED_ON = (
    "coverage",
    "main-lift",
    "region-main-lift",
    "second-choice",
    "full-session",
    "direct-work",
    "knee-flexion",
    "flat-press",
)
"""Costs that switch on with kit: taken out where the kit grows."""
KITS = ("bands", "home-dumbbells", "bodyweight-and-bands")
MUSCLES = ("biceps", "glutes", "chest", "side-delts", "calves")


@st.composite
def briefs(draw: st.DrawFn) -> dict[str, Any]:
    """Small briefs of one or two days at home."""
    weekdays = draw(st.sampled_from((("mon",), ("mon", "tue"), ("mon", "thu"))))
    muscles = draw(st.dictionaries(st.sampled_from(MUSCLES), st.sampled_from(("priority", "hold", "none")), max_size=2))
    return {
        "days": [{"weekday": day, "minutes": draw(st.sampled_from((10, 15, 20)))} for day in weekdays],
        "equipment": draw(st.sampled_from(KITS)),
        "goal": draw(st.sampled_from(("growth", "balanced", "efficiency"))),
        "pairs": draw(st.booleans()),
        "muscles": muscles,
        "client": {
            "experience": draw(st.sampled_from(("novice", "intermediate"))),
            "trains_alone": draw(st.booleans()),
        },
    }


def solve(raw: dict[str, Any], options: SolveOptions) -> Outcome:
    return search(instance_of(resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE)), options)


@pytest.mark.slow
@FEW
@given(briefs())
def test_every_solved_week_passes_its_audit(raw: dict[str, Any]) -> None:
    end = plan(parse_brief(raw, CATALOGUE, "test"), CATALOGUE, replace(SMALL, pairs_note=False))
    assert isinstance(end, Solved | Clash)
    if isinstance(end, Solved):
        again = audit(end.resolved, end.audit.evaluated.week)
        assert not again.broken
        assert again.score_units == end.audit.score_units <= end.bound_units


def no_worse(more: dict[str, Any], less: dict[str, Any]) -> None:
    """What is proven of the larger brief is no less than what was found of the smaller one."""
    larger, smaller = solve(more, SMALL), solve(less, UNPROVEN)
    if smaller.best is not None:
        assert larger.bound >= smaller.best.score_units
        assert larger.best is not None
        gap = larger.bound - larger.best.score_units
        assert larger.best.score_units >= smaller.best.score_units - gap


@pytest.mark.slow
@FEW
@given(briefs(), st.sampled_from((5, 10)))
def test_more_minutes_never_lower_what_is_proven(raw: dict[str, Any], extra: int) -> None:
    raw = {**raw, "goal": "balanced"}
    longer = [{**day, "minutes": day["minutes"] + extra} for day in raw["days"]]
    no_worse({**raw, "days": longer}, raw)


@pytest.mark.slow
@FEW
@given(briefs(), st.sampled_from(MUSCLES), st.sampled_from((3.0, 5.0)))
def test_a_wider_exact_band_never_lowers_what_is_proven(raw: dict[str, Any], muscle: str, most: float) -> None:
    wide, narrow = (
        {**raw, "goal": "balanced", "muscles": {muscle: {"at_least": 1.0, "at_most": top}}} for top in (most + 2, most)
    )
    no_worse(wide, narrow)


@pytest.mark.slow
@FEW
@given(briefs(), st.sampled_from(("low-bar", "plate", "step")))
def test_more_kit_never_lowers_what_is_proven(raw: dict[str, Any], item: str) -> None:
    """Stand-ins stay open in the larger kit, and the costs that kit switches on are left out."""
    rules = {"stand-in": "off", **dict.fromkeys(SWITCHED_ON, "off")}
    small = {**raw, "goal": "balanced", "rules": rules, "equipment": ["band"]}
    no_worse({**small, "equipment": ["band", item]}, small)
