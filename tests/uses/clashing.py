"""Briefs that no week can meet, each with its clash."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Any

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.engines.infeasibility import conflict_of
from setwright.solver.linear.instance import instance_of
from setwright.solver.planning import Clash
from setwright.solver.rulebook import resolve
from setwright.solver.search import feasibility
from setwright.solver.uses.relax.relaxations import Relaxations, relaxations_of

CATALOGUE = load_catalogue()


def days(weekdays: str, minutes: int) -> list[dict[str, Any]]:
    return [{"weekday": weekday, "minutes": minutes} for weekday in weekdays.split()]


TEN = ("chest", "side-delts", "rear-delts", "lats", "upper-back", "biceps", "triceps", "quads", "hamstrings", "calves")
"""Ten muscles."""
IMPOSSIBLE: dict[str, dict[str, Any]] = {
    "a vertical pull with dumbbells only": {
        "days": days("mon", 30),
        "equipment": "home-dumbbells",
        "must": ["vertical-pull"],
    },
    "ten muscles at ten sets in two half hours": {
        "days": days("mon thu", 30),
        "goal": "growth",
        "pairs": False,
        "techniques": False,
        "muscles": {muscle: {"at_least": 10.0} for muscle in TEN},
    },
    "hard chest days on consecutive days": {
        "days": days("sat sun", 40),
        "muscles": {"chest": {"at_least": 17.0, "days_at_least": 2}},
        "client": {"experience": "novice"},
        "rules": {"hard-days": "hard"},
    },
    "two lifts of one bar as a pair": {
        "days": days("mon", 30),
        "equipment": "barbell-garage",
        "pairs": True,
        "pins": [{"exercise": "barbell-curl", "pair_with": "barbell-upright-row"}],
    },
    "rests too long for the pins": {
        "days": days("mon", 30),
        "equipment": "barbell-garage",
        "rest_at_least": 300,
        "pins": [
            {"exercise": "barbell-back-squat", "day": "mon", "sets": 3},
            {"exercise": "barbell-bench-press", "day": "mon", "sets": 3},
        ],
    },
    "pins that the day cannot hold": {
        "days": days("mon", 15),
        "equipment": "barbell-garage",
        "pins": [
            {"exercise": "barbell-back-squat", "day": "mon", "sets": 4},
            {"exercise": "barbell-bench-press", "day": "mon", "sets": 4},
        ],
    },
    "a muscle that nothing trains on its day": {
        "days": [*days("mon", 30), {"weekday": "thu", "minutes": 30, "trained": ["side-delts"]}],
        "equipment": "bodyweight",
    },
    "a taste made hard": {
        "days": days("mon", 30),
        "equipment": "bands",
        "dislike": ["band-row-to-the-chest", "band-row-to-the-hip"],
        "must": ["row"],
        "rules": {"disliked": "hard"},
    },
}


@lru_cache(maxsize=16)
def clash_named(name: str) -> Clash:
    """The clash of one of the briefs."""
    raw = IMPOSSIBLE[name]
    # Pairs would only make these briefs larger; those that are about a pair ask for them.
    parsed = parse_brief(raw if "pins" in raw else {"pairs": False, **raw}, CATALOGUE, "test")
    resolved = resolve(parsed.brief, CATALOGUE)
    return Clash(parsed, resolved, conflict_of(instance_of(resolved)))


AS_SHIPPED = "a vertical pull with dumbbells only"
"""The clash whose relaxations are solved by as much work as in the product."""
LITTLE = replace(feasibility.CHEAP, limits=replace(feasibility.CHEAP.limits, rounds=0, work=0.05))
"""Work for the others: which relaxations there are does not depend on it, nor that each has a sound week."""


@lru_cache(maxsize=16)
def relaxations_named(name: str) -> Relaxations:
    """The relaxations of one of the clashes."""
    with pytest.MonkeyPatch.context() as patch:
        if name != AS_SHIPPED:
            patch.setattr(feasibility, "CHEAP", LITTLE)
        return relaxations_of(clash_named(name))
