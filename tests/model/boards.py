"""Small briefs, random weeks on their boards, and what the model makes of a week whose columns are held."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from random import Random
from typing import Any

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import understand
from setwright.solver.engines.build import all_day_columns
from setwright.solver.linear.columns import REGIONS, Board, Column, board_of
from setwright.solver.engines import highs
from setwright.solver.engines.cpsat import Program
from setwright.solver.search.decoding import week_of
from setwright.solver.linear.linear_model import Sheet
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.resolving import resolve
from setwright.solver.evaluation.resolved_brief import Terms

CATALOGUE = load_catalogue()
Week = tuple[Column, ...]


def days(weekdays: str, *minutes: int, **more: Any) -> list[dict[str, Any]]:
    names = weekdays.split()
    each = minutes if len(minutes) > 1 else minutes * len(names)
    return [{"weekday": w, "minutes": m, **more} for w, m in zip(names, each, strict=True)]


def terms_of(**raw: Any) -> Terms:
    return resolve(understand(raw, CATALOGUE, "test").brief, CATALOGUE)


def only(*kept: str) -> list[str]:
    """What to avoid so that these exercises are left."""
    return [name for name in CATALOGUE.exercises if name not in kept]


@dataclass(frozen=True, eq=False)
class Place:
    """A brief's board and all columns of its days."""

    board: Board
    columns: tuple[Column, ...]

    @property
    def terms(self) -> Terms:
        return self.board.terms


def place_of(**raw: Any) -> Place:
    board = board_of(terms_of(**raw))
    return Place(board, all_day_columns(board))


def audited(board: Board, week: Iterable[Column]) -> Audit:
    """The audit of the printed week that these columns on days make."""
    return audit(board.terms, week_of(board, [(column.cell, column) for column in week]))


def sound_week(place: Place, random: Random, tries: int) -> Week:
    """Columns drawn one by one, each kept when it breaks no more rules than before."""
    chosen: tuple[Column, ...] = ()
    broken = {"day-share", *(f.rule for f in audited(place.board, chosen).broken)}
    for column in random.sample(place.columns, min(tries, len(place.columns))):
        used = {a.cls for c in chosen if c.cell == column.cell for a in c.atoms}
        if used & {a.cls for a in column.atoms}:
            continue
        now = {f.rule for f in audited(place.board, (*chosen, column)).broken}
        if now <= broken:
            chosen, broken = (*chosen, column), {"day-share", *now}
    return chosen


# ---- a week held in a sheet


@dataclass(frozen=True)
class Held:
    """What the model says of a week whose columns are held: possible or not, least cost, worth with curves."""

    possible: bool
    cost: float
    value: float


def amounts(sheet: Sheet, week: Iterable[Column]) -> dict[int, int]:
    """Each column's amount in the sheet: days as they are, or halves in a group's or a theme's cell."""
    place = {(c.cell, c.atoms): j for j, c in enumerate(sheet.columns)}
    week = tuple(week)
    if sheet.daily:
        return Counter(place[c.cell, c.atoms] for c in week)
    regions = {c.cell: trained(sheet.board, week, c.cell) for c in week}
    found: Counter[int] = Counter()
    for column in week:
        (cell,) = (
            cell.index
            for cell in sheet.cells
            if column.cell in cell.days and cell.regions in (None, regions[column.cell])
        )
        for atom in column.atoms:
            found[place[cell, (atom,)]] += 1
    return found


def trained(board: Board, week: Week, day: int) -> tuple[str, ...]:
    lifts = [board.classes[a.cls].exercise for c in week if c.cell == day for a in c.atoms]
    return tuple(r for r in REGIONS if any(e.multi_joint and e.region == r for e in lifts))


def held(sheet: Sheet, week: Iterable[Column], curves: bool = True) -> Held:
    """CP-SAT's word on the rest of the sheet once the columns are held (costs rounded down to whole units)."""
    counts = amounts(sheet, week)
    if any(v > sheet.high[j] for j, v in counts.items()):
        return Held(False, 0.0, 0.0)
    fixed = {j: counts.get(j, 0) for j in range(len(sheet.columns))}
    cost = solved(sheet, fixed, with_curves=False)
    if cost is None:
        return Held(False, 0.0, 0.0)
    return Held(True, -cost, (solved(sheet, fixed, with_curves=True) or 0.0) if curves else 0.0)


def solved(sheet: Sheet, fixed: dict[int, int], with_curves: bool) -> float | None:
    kept = sheet.curves
    sheet.curves = kept if with_curves else []
    try:
        program = Program(sheet, fixed)
        program.maximise()
        found = program.solve(5.0, 20.0)
    finally:
        sheet.curves = kept
    assert found.status in ("OPTIMAL", "INFEASIBLE"), found.status
    return None if found.columns is None else found.value


def bounded(sheet: Sheet, week: Iterable[Column]) -> float:
    """HiGHS's bound once the columns are held: what the proven bound rests on (-inf: not possible)."""
    counts = amounts(sheet, week)
    low, high = list(sheet.low), list(sheet.high)
    if any(v > high[j] for j, v in counts.items()):
        return float("-inf")
    try:
        for j in range(len(sheet.columns)):
            sheet.low[j] = sheet.high[j] = counts.get(j, 0)
        found = highs.bound(sheet, 2000, 20.0)
    finally:
        sheet.low, sheet.high = low, high
    return float("-inf") if found.infeasible else found.bound


@lru_cache(maxsize=64)
def cached(name: str) -> Place:
    return place_of(**BRIEFS[name])


BRIEFS: dict[str, dict[str, Any]] = {
    "home": {"days": days("mon thu", 30), "equipment": "home-dumbbells"},
    "arms first": {
        "days": days("mon tue", 30),
        "equipment": "home-dumbbells",
        "muscles": {"arms": "priority", "calves": "none"},
    },
    "pairs": {"days": days("mon tue", 25), "equipment": "bands", "pairs": True},
    "efficiency": {"days": days("mon wed", 30), "equipment": "home-dumbbells", "goal": "efficiency", "pairs": False},
    "efficiency of four": {
        "days": days("mon tue thu fri", 20),
        "equipment": "bands",
        "goal": "efficiency",
        "pairs": False,
    },
    "growth": {"days": days("mon tue thu", 60), "goal": "growth"},
    "novice": {"days": days("mon thu", 45), "client": {"experience": "novice"}, "equipment": "barbell-garage"},
    "four days": {"days": days("mon tue thu fri", 40), "muscles": {"glutes": "priority"}, "dislike": ["cable"]},
    "two places": {
        "days": [*days("mon wed", 40), *days("fri sat", 25, equipment="bands")],
        "like": ["barbell-curl", "band-curl"],
        "goal": "balanced",
    },
    "bands exact": {
        "days": days("mon tue wed", 30),
        "equipment": "bands",
        "muscles": {"biceps": {"at_most": 8.0}, "quads": {"at_most": 6.0}, "lats": "priority"},
    },
    "minimum": {"days": days("mon tue fri", 20), "dose": "minimum", "pairs": True},
    "odd weights": {
        "days": days("mon thu", 25),
        "equipment": "home-dumbbells",
        "muscles": {"legs": "none", "calves": "hold", "abs": "hold", "chest": "priority"},
    },
    "sports": {
        "days": days("mon tue thu sun", 45),
        "other": [{"weekday": "wed", "regions": ["lower"]}],
        "client": {"experience": "advanced", "trains_alone": True, "cautions": [{"tag": "wrist"}]},
        "techniques": True,
    },
}
