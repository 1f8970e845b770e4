"""Random briefs, and what search, CP-SAT, HiGHS and the audit say of each: one check for the tests and the bench."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from random import Random
from typing import Any

from light_search import LIGHT

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.engines import highs
from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance, instance_of
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.planning import delivered
from setwright.solver.rulebook import RULES, resolve
from setwright.solver.search.best_week import Outcome, search
from setwright.solver.search.decoding import week_of
from setwright.solver.search.limits import Limits
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.sheets.common.json_values import dumped, parse_json
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.document.week_reader import read_week

KITS = ("bands", "bodyweight-and-bands", "home-dumbbells", "hotel-gym", "barbell-garage", "machine-gym")
WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
MINUTES = (15, 20, 20, 25, 30, 35, 45)
EMPHASES = ("priority", "priority", "hold", "none")
CAUTIONS = ("shoulder", "elbow", "wrist", "lower-back", "hip", "knee")
FEW = 20
"""The first seeds, which the tests run: their briefs leave few exercises."""
POOL = 30
"""Exercises that such a brief leaves, of which a kit has perhaps half."""
WALL_CLOCK_LIMIT = 120.0
"""Seconds after which a run is ended whatever it found: far above what the work takes."""
ROUNDING = 50.0
"""Score units by which two outward-rounded models of one week may differ, as in test_engines."""
SHARE = 1e-4
"""The same as a share: CP-SAT's costs are whole numbers, and a week of many slacks adds their roundings up."""


@dataclass(frozen=True)
class Effort:
    """The work spent on one brief."""

    limits: Limits
    columns: int
    """Columns of the search's candidates on each day that both engines get."""
    work: float
    """CP-SAT's deterministic time on the whole week."""
    nodes: int
    """HiGHS's nodes on the whole week."""

    @property
    def options(self) -> SolveOptions:
        """How the search is called."""
        return SolveOptions(self.limits, wall_clock_limit=WALL_CLOCK_LIMIT)


USUAL = Effort(replace(LIGHT, rounds=6, work=0.1, nodes=3, pattern_nodes=1), 60, 1.0, 10)
BRIEF = Effort(replace(LIGHT, rounds=3, work=0.05, nodes=1, pattern_nodes=1), 30, 0.3, 2)


@lru_cache(maxsize=1)
def catalogue() -> Catalogue:
    return load_catalogue()


# ---- the briefs


def drawn(seed: int) -> ParsedBrief:
    """The random brief of a seed; a draw that contradicts itself is drawn anew."""
    for turn in range(100):
        random = Random(f"crossing {seed} {turn}")
        raw = raw_brief(random, POOL if seed < FEW or random.random() < 0.3 else None)
        try:
            return parse_brief(raw, catalogue(), f"seed {seed}", tuple(RULES))
        except UsageFault:
            continue
    raise AssertionError(f"seed {seed}: a hundred draws in turn contradict themselves")


def raw_brief(random: Random, pool: int | None) -> dict[str, Any]:
    """A brief's fields as a file would hold them, each part said or left out by chance.

    With `pool` so many exercises are left and all others avoided, which keeps every model small.
    """
    everything = sorted(catalogue().exercises)
    left = sorted(random.sample(everything, pool)) if pool else everything
    weekdays = sorted(random.sample(WEEKDAYS, random.choice((1, 1, 2, 2, 3, 4))), key=WEEKDAYS.index)
    raw: dict[str, Any] = {
        "days": [{"weekday": w, "minutes": random.choice(MINUTES)} for w in weekdays],
        "equipment": random.choice(KITS),
        "goal": random.choice(("growth", "balanced", "efficiency")),
        "client": client(random),
    }
    said: dict[str, Any] = {
        "pairs": random.random() < 0.5,
        "techniques": random.random() < 0.5,
        "reps": random.choice(("lower", "usual", "higher")),
        "muscles": muscles(random),
        "rules": rules(random),
        "dislike": exercises(random, left, 3),
        "like": exercises(random, left, 2),
        "avoid": exercises(random, left, 4),
        "pins": [pin(random, left, weekdays)],
        "must": [random.choice(sorted({e.slot.movement for e in catalogue().exercises.values()}))],
        "other": [{"weekday": random.choice(WEEKDAYS), "regions": [random.choice(("lower", "push", "pull"))]}],
        "dose": "minimum",
    }
    chances = {"muscles": 0.6, "rules": 0.5, "pins": 0.3, "must": 0.15, "other": 0.15, "dose": 0.1}
    raw |= {field: value for field, value in said.items() if random.random() < chances.get(field, 0.35)}
    closed = [name for name in everything if name not in left]
    return raw | {"avoid": [*raw.get("avoid", ()), *closed]} if closed else raw


def client(random: Random) -> dict[str, Any]:
    found: dict[str, Any] = {"experience": random.choice(("novice", "intermediate", "advanced"))}
    if random.random() < 0.3:
        found["cautions"] = [{"tag": random.choice(CAUTIONS)}]
    if random.random() < 0.3:
        found["trains_alone"] = True
    return found


def muscles(random: Random) -> dict[str, Any]:
    """One to three muscles with an emphasis or a band that is hard at the ends it names."""
    names = random.sample(sorted(catalogue().muscles), random.randint(1, 3))
    return {name: band(random) if random.random() < 0.4 else random.choice(EMPHASES) for name in names}


def band(random: Random) -> dict[str, float | int]:
    low = random.choice((0.5, 1.0, 2.0, 3.0))
    ends: dict[str, float | int] = {"at_least": low, "at_most": low + random.choice((1.0, 3.0, 6.0))}
    kept = random.choice((("at_least",), ("at_most",), ("at_least", "at_most")))
    return {end: ends[end] for end in kept}


def rules(random: Random) -> dict[str, Any]:
    """Up to three scored rules switched off, made hard, or given a cost of their own."""
    scored = sorted(rule.id for rule in RULES.values() if rule.kind == "scored")
    asks: tuple[Any, ...] = ("off", "off", "hard", 0.5, 2.0)
    return {rule: random.choice(asks) for rule in random.sample(scored, random.randint(1, 3))}


def exercises(random: Random, left: list[str], most: int) -> list[str]:
    return random.sample(left, random.randint(1, most))


def pin(random: Random, left: list[str], weekdays: list[str]) -> dict[str, Any]:
    found: dict[str, Any] = {"exercise": random.choice(left)}
    if random.random() < 0.5:
        found["day"] = random.choice(weekdays)
    if random.random() < 0.5:
        found["sets"] = random.choice((1, 2, 3))
    return found


# ---- the check


@dataclass(frozen=True)
class Crossed:
    """What came of one brief: whether the search found a week, and a line for each disagreement."""

    seed: int
    solved: bool
    disagreements: tuple[str, ...]


@dataclass(frozen=True)
class Interval:
    """One engine on a sheet: its own best and bound in score units, and the audit of its best week."""

    name: str
    best: float
    bound: float
    week: Audit | None


def crossed(seed: int, effort: Effort = USUAL) -> Crossed:
    """Everything that is said of the brief of a seed, held against each other."""
    parsed = drawn(seed)
    instance = instance_of(resolve(parsed.brief, catalogue()))
    found = search(instance, effort.options)
    said = [*threads(instance, effort, found)]
    model = day_model(instance, whole_columns(found, effort.columns))
    engines = (by_cpsat(model, effort), by_highs(model, effort))
    said += [*between(*engines), *against(found, engines)]
    if found.best is not None:
        said += printed(parsed, instance, found, effort)
        said += above(found.best, engines)
    return Crossed(seed, found.best is not None, tuple(said))


def whole_columns(found: Outcome, most: int) -> tuple[Column, ...]:
    """The first columns of each day, those that a pin may need, and the search's own week."""
    candidates, incumbent = found.lns.solver.candidates, found.lns.incumbent()
    kept = {j for day in candidates.ranked for j in day[:most]} | candidates.must
    columns = [candidates.columns[j] for j in sorted(kept)]
    own = [incumbent.solver.model.columns[j] for j in sorted(incumbent.chosen)] if incumbent else []
    return tuple(dict.fromkeys([*columns, *own]))


def by_cpsat(model: LinearModel, effort: Effort) -> Interval:
    program = CpSatModel(model)
    program.maximise()
    found = program.solve(effort.work, WALL_CLOCK_LIMIT)
    bound = -math.inf if found.status == "INFEASIBLE" else found.bound
    best = found.value if found.columns is None else settled(model, found.columns, effort)
    return Interval("CP-SAT", best, bound, audited(model, found.columns))


def settled(model: LinearModel, used: frozenset[int], effort: Effort) -> float:
    """What the model says of a week with nothing left to choose: cut short, an engine may leave its slacks too wide."""
    low, high = list(model.low), list(model.high)
    for j in range(len(model.columns)):
        model.low[j] = model.high[j] = int(j in used)
    program = CpSatModel(model)
    model.low[:], model.high[:] = low, high
    program.maximise()
    return float(program.solve(effort.work, WALL_CLOCK_LIMIT).value)


def by_highs(model: LinearModel, effort: Effort) -> Interval:
    found = highs.bound(model, effort.nodes, WALL_CLOCK_LIMIT)
    bound = -math.inf if found.infeasible else found.bound
    used = found.chosen
    best = found.value if used is None else settled(model, used, effort)
    return Interval("HiGHS", best, bound, audited(model, used))


def audited(model: LinearModel, used: frozenset[int] | None) -> Audit | None:
    """The audit of the week that some columns on days make."""
    if used is None:
        return None
    columns = [model.columns[j] for j in sorted(used)]
    return audit(
        model.instance.resolved, week_of(model.instance, [(model.groups[c.group].days[0], c) for c in columns])
    )


def between(one: Interval, other: Interval) -> list[str]:
    """Where the engines' intervals lie apart, in their own figures or in the audit's."""
    said = []
    for a, b in ((one, other), (other, one)):
        if a.best > loosely(b.bound):
            said.append(f"{a.name}'s best {a.best:.0f} passes {b.name}'s bound {b.bound:.0f}")
        if a.week and not a.week.broken and a.week.score_units > b.bound + highs.ROUNDING:
            said.append(f"{a.name}'s week, audited {a.week.score_units}, passes {b.name}'s bound {b.bound:.0f}")
    return said


def loosely(bound: float) -> float:
    """What an engine's own figure may reach where nothing is above a bound; an audited week may not."""
    return bound + ROUNDING + SHARE * abs(bound)


def against(found: Outcome, engines: tuple[Interval, ...]) -> list[str]:
    """Where an engine's week breaks a rule, is worth more than its engine says, or passes the search's bound."""
    said = []
    for engine in engines:
        if engine.week is None:
            continue
        score = engine.week.score_units
        if engine.week.broken:
            said.append(f"{engine.name}'s week breaks {', '.join(sorted({f.rule for f in engine.week.broken}))}")
        elif found.best is None:
            said.append(f"{engine.name} found a week of {score}, the search none ({found.ended_by})")
        if not engine.week.broken and score > found.bound:
            said.append(f"{engine.name}'s week {score} passes the search's bound {found.bound:.0f}")
        if engine.best > loosely(found.bound):
            said.append(f"{engine.name}'s best {engine.best:.0f} passes the search's bound {found.bound:.0f}")
        if not engine.week.broken and score > engine.best + highs.ROUNDING:
            said.append(f"{engine.name} says {engine.best:.0f} of a week that the audit gives {score}")
    return said


def above(best: Audit, engines: tuple[Interval, ...]) -> list[str]:
    """Where the search's week, which the sheet holds, passes an engine's bound on that sheet."""
    return [
        f"the search's week {best.score_units} passes {e.name}'s bound {e.bound:.0f} on columns that hold it"
        for e in engines
        if best.score_units > e.bound + highs.ROUNDING
    ]


def printed(parsed: ParsedBrief, instance: Instance, found: Outcome, effort: Effort) -> list[str]:
    """Where the search's score passes its bound, or the week's JSON, read back, is audited otherwise."""
    assert found.best is not None
    score, said = found.best.score_units, []
    if score > found.bound:
        said.append(f"the search's score {score} passes its bound {found.bound:.0f}")
    if found.best.broken:
        return [*said, f"the search's week breaks {', '.join(sorted({f.rule for f in found.best.broken}))}"]
    week = found.best.evaluated.week
    text = dumped(
        week_document(
            delivered(parsed, instance.resolved, week, found.bound, found.ended_by, effort.limits), private=True
        )
    )
    asked, week = read_week(parse_json(text.encode(), "week"), catalogue())
    again = audit(resolve(asked.brief, catalogue()), week)
    if again.score_units != score:
        said.append(f"the printed week is audited {again.score_units}, the search says {score}")
    if again.broken:
        said.append(f"the printed week breaks {', '.join(sorted({f.rule for f in again.broken}))}")
    return said


def threads(instance: Instance, effort: Effort, found: Outcome) -> list[str]:
    """Where the search with one worker ends otherwise, unless the wall-clock limit ended one of the two."""
    alone = search(instance, replace(effort.options, workers=1))
    if "time limit" in (found.ended_by, alone.ended_by):
        return []
    parts = {
        "week": (found.best and found.best.evaluated.week, alone.best and alone.best.evaluated.week),
        "bound": (found.bound, alone.bound),
        "end": (found.ended_by, alone.ended_by),
    }
    return [f"the {part} differs with one worker and two" for part, (two, one) in parts.items() if two != one]
