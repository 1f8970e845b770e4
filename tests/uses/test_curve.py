"""The curve: rows that never fall, each a week the audit passes, the same on every run; weeks that start a search."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import lru_cache
from typing import Any

import pytest
from side_weeks import CATALOGUE, brief_of, view_of

from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.linear.columns import instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import search
from setwright.solver.search.encoding import columns_of
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.sheets.screen.curve import curve_document, curve_text
from setwright.solver.uses.time_budget.curve import Curve, Kind, Line, Stand, curve_of

CHEAP = replace(SEARCHES["quick"], rounds=2, work=0.1, nodes=1, pattern_nodes=1)
NO_ROUNDS = replace(CHEAP, rounds=0)
RAW: dict[str, Any] = {"equipment": "bands", "muscles": {"chest": "priority"}}
ONE_DAY = [{"weekday": "mon", "minutes": 40}]
AMOUNTS: dict[Kind, tuple[int, ...]] = {"minutes": (20, 30, 60), "weekly": (40, 70), "days": (1, 2)}


def brief(kind: Kind) -> ParsedBrief:
    """One day where only its minutes vary, two where they share a week."""
    return brief_of(**RAW) if kind == "weekly" else brief_of(**RAW, days=ONE_DAY)


@lru_cache
def curve(kind: Kind) -> Curve:
    return curve_of(brief(kind), kind, AMOUNTS[kind], CATALOGUE, CHEAP)


@pytest.mark.parametrize("kind", AMOUNTS)
def test_no_row_is_below_the_one_before_it_and_each_is_under_its_bound(kind: Kind) -> None:
    rows = curve(kind).rows
    scores = [row.score for row in rows]
    assert None not in scores and scores == sorted(scores)  # type: ignore[type-var]
    for row in rows:
        assert row.solved is not None
        assert row.solved.audit.score_units <= row.solved.bound_units


@pytest.mark.parametrize("kind", AMOUNTS)
def test_every_row_is_a_week_that_the_audit_passes_within_its_time(kind: Kind) -> None:
    for row in curve(kind).rows:
        assert row.solved is not None
        again = audit(row.solved.resolved, row.solved.audit.evaluated.week)
        assert not again.broken and again.score_units == row.solved.audit.score_units
        days = row.solved.resolved.days
        used = sum(again.evaluated.seconds(day.index) for day in days if again.evaluated.on[day.index])
        assert used <= 60 * row.given
        assert row.week_of is not None


def test_longer_bounds_hold_for_shorter_weeks_too() -> None:
    bounds = [row.solved.bound_units for row in curve("minutes").rows if row.solved]
    assert bounds == sorted(bounds)


def test_the_same_command_gives_the_same_bytes() -> None:
    again = curve_of(brief("minutes"), "minutes", AMOUNTS["minutes"], CATALOGUE, CHEAP)
    assert json.dumps(curve_document(again)) == json.dumps(curve_document(curve("minutes")))
    assert curve_text(again) == curve_text(curve("minutes"))


def test_gain_is_score_for_each_further_half_hour() -> None:
    found = curve("minutes")
    first, second = found.rows[:2]
    assert found.gain(0) is None
    assert found.gain(1) == pytest.approx((second.score - first.score) * 30 / (second.given - first.given))  # type: ignore[operator]


def test_a_curve_that_is_stopped_keeps_the_rows_it_has() -> None:
    asked: list[int] = []

    def stopped() -> bool:
        return len(asked) > 1

    found = curve_of(
        brief("days"), "days", (1, 2, 3), CATALOGUE, CHEAP, lambda amount, left: asked.append(amount), stopped
    )
    assert found.ended_by == "stopped"
    assert found.rows[0].solved is not None and found.searches == 2


# ---- weeks handed on


def stand(minutes: int, days: tuple[tuple[tuple[str, int, int], ...], ...] | None = None, bound: float = 2e6) -> Stand:
    raw = {"days": [{"weekday": "mon", "minutes": minutes}]}
    parsed = brief_of(**raw)
    resolved = resolve(parsed.brief, CATALOGUE)
    best = audit(resolved, view_of(days, **raw).week) if days else None
    return Stand(minutes, parsed, resolved, best, minutes if days else None, bound)


SHORT = ((("barbell-back-squat", 3, 120), ("wide-grip-pulldown", 3, 90)),)


def test_a_better_week_that_fits_in_less_time_is_offered() -> None:
    shorter, longer = stand(30, SHORT), stand(60, ((("leg-extension", 2, 60),),))
    assert longer.best is not None and shorter.best is not None
    assert longer.best.score_units < shorter.best.score_units
    longer.offer(shorter)
    assert longer.week_of == 30 and longer.best.score_units == shorter.best.score_units


def test_a_worse_week_is_not_offered() -> None:
    shorter, longer = stand(30, ((("leg-extension", 2, 60),),)), stand(60, SHORT)
    longer.offer(shorter)
    assert longer.week_of == 60


def test_a_longer_week_is_offered_to_a_shorter_day_only_where_it_fits() -> None:
    longer = stand(60, SHORT)
    thirty, fifteen = stand(30), stand(15)
    thirty.offer(longer)
    fifteen.offer(longer)
    assert thirty.best is not None and thirty.best.evaluated.resolved is thirty.resolved
    assert fifteen.best is None


def test_rows_near_the_ceiling_are_not_searched() -> None:
    """The top's bound is where the first row's week already is, so only the top is searched."""
    stands = [stand(30, SHORT), stand(40), stand(60, SHORT)]
    assert stands[0].best is not None
    line = Line(stands, SolveOptions(CHEAP), lambda *_: None)

    def searched(stand: Stand, start: object, left: int) -> None:
        line.searches += 1
        stand.bound = float(stands[0].best.score_units) if stands[0].best else 0.0

    line.searched = searched  # type: ignore[method-assign]
    line.by_minutes()
    assert line.searches == 1
    assert [s.week_of for s in stands] == [30, 30, 60]


# ---- a search that starts from a week


def test_a_search_is_never_below_the_week_it_starts_from() -> None:
    found = curve("minutes").rows[1].solved
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
