"""Small briefs, random weeks on their boards, and what the model makes of a week whose columns are held."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from random import Random
from typing import Any

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.engines import highs
from setwright.solver.engines.build import all_day_columns
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.columns import REGIONS, Column
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rulebook import resolve
from setwright.solver.search.decoding import week_of

CATALOGUE = load_catalogue()
Week = tuple[Column, ...]


def days(weekdays: str, *minutes: int, **more: Any) -> list[dict[str, Any]]:
    names = weekdays.split()
    each = minutes if len(minutes) > 1 else minutes * len(names)
    return [{"weekday": w, "minutes": m, **more} for w, m in zip(names, each, strict=True)]


def terms_of(**raw: Any) -> ResolvedBrief:
    """A brief resolved; without pairs where it does not ask for them, but in efficiency."""
    raw.setdefault("pairs", raw.get("goal") == "efficiency")
    return resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE)


def only(*kept: str) -> list[str]:
    """What to avoid so that these exercises are left."""
    return [name for name in CATALOGUE.exercises if name not in kept]


@dataclass(frozen=True, eq=False)
class Place:
    """A brief's board and all columns of its days."""

    instance: Instance
    columns: tuple[Column, ...]

    @property
    def resolved(self) -> ResolvedBrief:
        return self.instance.resolved


def place_of(**raw: Any) -> Place:
    instance = instance_of(terms_of(**raw))
    return Place(instance, all_day_columns(instance))


def audited(instance: Instance, week: Iterable[Column]) -> Audit:
    """The audit of the printed week that these columns on days make."""
    return audit(instance.resolved, week_of(instance, [(column.group, column) for column in week]))


def sound_week(place: Place, random: Random, tries: int) -> Week:
    """Columns drawn one by one, each kept when it breaks no more rules than before."""
    chosen: tuple[Column, ...] = ()
    broken = {"day-share", *(f.rule for f in audited(place.instance, chosen).broken)}
    for column in random.sample(place.columns, min(tries, len(place.columns))):
        used = {a.cls for c in chosen if c.group == column.group for a in c.assignments}
        if used & {a.cls for a in column.assignments}:
            continue
        now = {f.rule for f in audited(place.instance, (*chosen, column)).broken}
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


def amounts(model: LinearModel, week: Iterable[Column]) -> dict[int, int]:
    """Each column's amount in the sheet: days as they are, or halves in a group's or a theme's cell."""
    place = {(c.group, c.assignments): j for j, c in enumerate(model.columns)}
    week = tuple(week)
    if model.daily:
        return Counter(place[c.group, c.assignments] for c in week)
    regions = {c.group: trained(model.instance, week, c.group) for c in week}
    found: Counter[int] = Counter()
    for column in week:
        (group,) = (
            group.index
            for group in model.groups
            if column.group in group.days and group.regions in (None, regions[column.group])
        )
        for assignment in column.assignments:
            found[place[group, (assignment,)]] += 1
    return found


def trained(instance: Instance, week: Week, day: int) -> tuple[str, ...]:
    lifts = [instance.classes[a.cls].exercise for c in week if c.group == day for a in c.assignments]
    return tuple(r for r in REGIONS if any(e.multi_joint and e.region == r for e in lifts))


def held(model: LinearModel, week: Iterable[Column], curves: bool = True) -> Held:
    """CP-SAT's word on the rest of the sheet once the columns are held (costs rounded down to whole units)."""
    counts = amounts(model, week)
    if any(v > model.high[j] for j, v in counts.items()):
        return Held(False, 0.0, 0.0)
    fixed = {j: counts.get(j, 0) for j in range(len(model.columns))}
    cost = solved(model, fixed, with_curves=False)
    if cost is None:
        return Held(False, 0.0, 0.0)
    return Held(True, -cost, (solved(model, fixed, with_curves=True) or 0.0) if curves else 0.0)


def solved(model: LinearModel, fixed: dict[int, int], with_curves: bool) -> float | None:
    kept = model.curves
    model.curves = kept if with_curves else []
    try:
        program = CpSatModel(model, fixed)
        program.maximise()
        found = program.solve(5.0, 20.0)
    finally:
        model.curves = kept
    assert found.status in ("OPTIMAL", "INFEASIBLE"), found.status
    return None if found.columns is None else found.value


def bounded(model: LinearModel, week: Iterable[Column]) -> float:
    """HiGHS's bound once the columns are held: what the proven bound rests on (-inf: not possible)."""
    counts = amounts(model, week)
    low, high = list(model.low), list(model.high)
    if any(v > high[j] for j, v in counts.items()):
        return float("-inf")
    try:
        for j in range(len(model.columns)):
            model.low[j] = model.high[j] = counts.get(j, 0)
        found = highs.bound(model, 2000, 20.0)
    finally:
        model.low, model.high = low, high
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
