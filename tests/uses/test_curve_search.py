"""The curve: points that never fall, each a week the audit passes, the same on every run; weeks that start a search."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import lru_cache
from typing import Any

import pytest
from light_search import LIGHT
from side_weeks import CATALOGUE, brief_of, view_of

from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.linear.instance import instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import search
from setwright.solver.search.encoding import columns_of
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.sheets.screen.trade_offs.curve import curve_document, curve_text
from setwright.solver.uses.time_budget.curve_search import CurveSearch, PointState, curve_of
from setwright.solver.uses.time_budget.time_curve import Kind, TimeCurve

CHEAP = replace(LIGHT, rounds=2, work=0.1, nodes=1, pattern_nodes=1)
NO_ROUNDS = replace(CHEAP, rounds=0)
RAW: dict[str, Any] = {"equipment": "bands", "muscles": {"chest": "priority"}}
ONE_DAY = [{"weekday": "mon", "minutes": 40}]
AMOUNTS: dict[Kind, tuple[int, ...]] = {"minutes": (20, 30, 60), "weekly": (40, 70), "days": (1, 2)}


def brief(kind: Kind) -> ParsedBrief:
    """One day where only its minutes vary, two where they share a week."""
    return brief_of(**RAW) if kind == "weekly" else brief_of(**RAW, days=ONE_DAY)


@lru_cache
def curve(kind: Kind) -> TimeCurve:
    return curve_of(brief(kind), kind, AMOUNTS[kind], CATALOGUE, CHEAP)


@pytest.mark.parametrize("kind", AMOUNTS)
def test_no_point_is_below_the_one_before_it_and_each_is_under_its_bound(kind: Kind) -> None:
    points = curve(kind).points
    scores = [point.score for point in points]
    assert None not in scores and scores == sorted(scores)  # type: ignore[type-var]
    for point in points:
        assert point.solved is not None
        assert point.solved.audit.score_units <= point.solved.bound_units


@pytest.mark.parametrize("kind", AMOUNTS)
def test_every_row_is_a_week_that_the_audit_passes_within_its_time(kind: Kind) -> None:
    for point in curve(kind).points:
        assert point.solved is not None
        again = audit(point.solved.resolved, point.solved.audit.evaluated.week)
        assert not again.broken and again.score_units == point.solved.audit.score_units
        days = point.solved.resolved.days
        used = sum(again.evaluated.seconds(day.index) for day in days if again.evaluated.on[day.index])
        assert used <= 60 * point.given
        assert point.week_of is not None


def test_longer_bounds_hold_for_shorter_weeks_too() -> None:
    bounds = [point.solved.bound_units for point in curve("minutes").points if point.solved]
    assert bounds == sorted(bounds)


def test_the_same_command_gives_the_same_bytes() -> None:
    again = curve_of(brief("minutes"), "minutes", AMOUNTS["minutes"], CATALOGUE, CHEAP)
    assert json.dumps(curve_document(again)) == json.dumps(curve_document(curve("minutes")))
    assert curve_text(again) == curve_text(curve("minutes"))


def test_gain_is_index_points_for_each_further_half_hour() -> None:
    found = curve("minutes")
    first, second = found.points[:2]
    assert found.gain(0) is None
    assert found.gain(1) == pytest.approx((second.index - first.index) * 30 / (second.given - first.given))


def test_a_curve_that_is_stopped_keeps_the_rows_it_has() -> None:
    asked: list[int] = []

    def stopped() -> bool:
        return len(asked) > 1

    found = curve_of(
        brief("days"), "days", (1, 2, 3), CATALOGUE, CHEAP, lambda amount, left: asked.append(amount), stopped
    )
    assert found.ended_by == "stopped"
    assert found.points[0].solved is not None and found.searches == 2


# ---- weeks handed on


def state_at(
    minutes: int, days: tuple[tuple[tuple[str, int, int], ...], ...] | None = None, bound: float = 2e6
) -> PointState:
    raw = {"days": [{"weekday": "mon", "minutes": minutes}]}
    parsed = brief_of(**raw)
    resolved = resolve(parsed.brief, CATALOGUE)
    best = audit(resolved, view_of(days, **raw).week) if days else None
    return PointState(minutes, parsed, resolved, best, minutes if days else None, bound)


SHORT = ((("barbell-back-squat", 3, 120), ("wide-grip-pulldown", 3, 90)),)


def test_a_better_week_that_fits_in_less_time_is_offered() -> None:
    shorter, longer = state_at(30, SHORT), state_at(60, ((("leg-extension", 2, 60),),))
    assert longer.best is not None and shorter.best is not None
    assert longer.best.score_units < shorter.best.score_units
    longer.offer(shorter)
    assert longer.week_of == 30 and longer.best.score_units == shorter.best.score_units


def test_a_worse_week_is_not_offered() -> None:
    shorter, longer = state_at(30, ((("leg-extension", 2, 60),),)), state_at(60, SHORT)
    longer.offer(shorter)
    assert longer.week_of == 60


def test_a_longer_week_is_offered_to_a_shorter_day_only_where_it_fits() -> None:
    longer = state_at(60, SHORT)
    thirty, fifteen = state_at(30), state_at(15)
    thirty.offer(longer)
    fifteen.offer(longer)
    assert thirty.best is not None and thirty.best.evaluated.resolved is thirty.resolved
    assert fifteen.best is None


def test_amounts_near_the_ceiling_are_not_searched() -> None:
    """The top's bound is where the first point's week already is, so only the top is searched."""
    states = [state_at(30, SHORT), state_at(40), state_at(60, SHORT)]
    assert states[0].best is not None
    found = CurveSearch(states, SolveOptions(CHEAP), lambda *_: None)

    def search_one(state: PointState, start: object, left: int) -> None:
        found.searches += 1
        state.bound = float(states[0].best.score_units) if states[0].best else 0.0

    found.search_one = search_one  # type: ignore[method-assign]
    found.by_minutes()
    assert found.searches == 1
    assert [s.week_of for s in states] == [30, 30, 60]


# ---- a search that starts from a week


def test_a_search_is_never_below_the_week_it_starts_from() -> None:
    found = curve("minutes").points[1].solved
    assert found is not None
    instance = instance_of(resolve(replace_minutes(60).brief, CATALOGUE))
    begun = search(instance, SolveOptions(NO_ROUNDS), start=found.audit.evaluated.week)
    assert begun.best is not None
    assert begun.best.score_units >= found.audit.score_units


def replace_minutes(minutes: int) -> Any:
    return brief_of(**RAW, days=[{"weekday": day, "minutes": minutes} for day in ("mon",)])


def test_a_week_that_the_board_cannot_make_is_no_start() -> None:
    """A gym's week on a board of bands: the search begins from nothing, as without it."""
    gym = view_of(((("leg-press", 3, 120),),))
    instance = instance_of(resolve(brief("minutes").brief, CATALOGUE))
    assert columns_of(instance, gym.week) == ()
    plain, begun = search(instance, SolveOptions(CHEAP)), search(instance, SolveOptions(CHEAP), start=gym.week)
    assert plain.best is not None and begun.best is not None
    assert plain.best.evaluated.week == begun.best.evaluated.week
