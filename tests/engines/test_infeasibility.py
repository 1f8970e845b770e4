"""A brief that no week can meet: the clash names wishes and rules of which none can be left in place of the others."""

from __future__ import annotations

import itertools
from dataclasses import replace
from typing import Any

import pytest
from boards import CATALOGUE, days, only, terms_of
from light_search import LIGHT

from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.engines import cpsat
from setwright.solver.engines.build import all_day_columns, day_model
from setwright.solver.engines.cpsat import CpSatModel, CpSatResult
from setwright.solver.engines.infeasibility import conflict_of, feasibility_model, parts_of
from setwright.solver.evaluation.finding import ClashMember
from setwright.solver.linear.instance import instance_of
from setwright.solver.linear.rule import held_by_columns, held_by_decoding
from setwright.solver.planning import Clash, OutOfTime, Solved, plan
from setwright.solver.rulebook import RULES
from setwright.solver.search.solve_options import SolveOptions

CHEAP = SolveOptions(replace(LIGHT, rounds=1, work=0.1, nodes=0))
HEAVY = ("barbell-back-squat", "barbell-bench-press", "barbell-row-to-hip", "barbell-overhead-press")
CLASHES: dict[str, dict[str, Any]] = {
    "six heavy lifts in twenty minutes": {
        "days": days("mon", 20),
        "equipment": "barbell-garage",
        "pins": [{"exercise": name, "day": "mon", "sets": 4} for name in HEAVY],
    },
    "a band that the minutes cannot give": {
        "days": days("mon", 15),
        "equipment": "bands",
        "muscles": {"quads": {"at_least": 12.0}},
    },
    "a movement the kit lacks": {"days": days("mon", 30), "equipment": "home-dumbbells", "must": ["vertical-pull"]},
    "a pin under an upper end": {
        "days": days("mon", 20),
        "equipment": "bands",
        "muscles": {"biceps": {"at_most": 1.0}},
        "pins": [{"exercise": "band-curl", "sets": 3}],
    },
    "two pins of one slot": {
        "days": days("mon", 60),
        "equipment": "home-dumbbells",
        "pins": [{"exercise": "dumbbell-bench-press"}, {"exercise": "dumbbell-floor-press"}],
    },
}


@pytest.mark.parametrize("name", CLASHES)
def test_leaving_any_part_out_makes_a_week_possible(name: str) -> None:
    instance = instance_of(terms_of(**CLASHES[name]))
    conflicts = conflict_of(instance)
    assert conflicts and any(c.wish for c in conflicts)
    parts = set(conflicts)
    model = day_model(instance, all_day_columns(instance))

    def status(kept: set[ClashMember]) -> str:
        return CpSatModel(model, skip=lambda member: member not in kept).solve(5.0, 30.0).status

    assert status(parts) == "INFEASIBLE"
    for part in parts:
        assert status(parts - {part}) in ("OPTIMAL", "FEASIBLE"), part


@pytest.mark.parametrize("name", CLASHES)
def test_the_plan_ends_in_the_clash(name: str) -> None:
    end = plan(parse_brief(CLASHES[name], CATALOGUE, "test"), CATALOGUE, CHEAP)
    assert isinstance(end, Clash)
    assert end.conflicts == conflict_of(instance_of(end.resolved))


def test_a_taste_made_hard_is_named_in_its_clash() -> None:
    """Dislikes made hard close every row: both that rule and the wish for a row belong to the clash."""
    constraints = [e.id for e in CATALOGUE.exercises.values() if e.movement == "row"]
    raw = {"days": days("mon", 30), "equipment": "bands", "dislike": constraints, "must": ["row"]}
    conflicts = conflict_of(instance_of(terms_of(**raw, rules={"disliked": "hard"})))
    assert {c.rule for c in conflicts} == {"must", "disliked"}


SMALL: dict[str, dict[str, Any]] = {
    "pins against minutes and an upper end": {
        "days": days("mon", 15),
        "equipment": "bands",
        "avoid": only("band-curl", "band-squat", "push-up"),
        "muscles": {"biceps": {"at_most": 2.0}, "quads": {"at_least": 4.0}},
        "pins": [{"exercise": "band-curl", "sets": 4}, {"exercise": "push-up", "sets": 4}],
    },
    "two pins of a slot, and a movement nothing has": {
        "days": days("mon", 60),
        "equipment": "home-dumbbells",
        "avoid": only("dumbbell-bench-press", "dumbbell-floor-press"),
        "must": ["row"],
        "pins": [{"exercise": "dumbbell-bench-press"}, {"exercise": "dumbbell-floor-press"}],
    },
}
KEPT = ("day-minutes", "exact-band", "pinned", "must", "slot-once", "movement-once", "exercise-days")


@pytest.mark.parametrize("name", SMALL)
def test_the_clash_is_one_of_the_minimal_ones_by_brute_force(name: str) -> None:
    """Every subset of the parts solved: the clash is impossible, and each of its proper subsets is possible."""
    off = {
        rule: "off"
        for rule in RULES
        if rule not in KEPT and RULES[rule].post not in (held_by_columns, held_by_decoding)
    }
    instance = instance_of(terms_of(**SMALL[name], rules=off))
    model = feasibility_model(instance)
    parts = parts_of(model)
    assert 4 <= len(parts) <= 9

    def able(kept: tuple[ClashMember, ...]) -> bool:
        return CpSatModel(model, skip=lambda member: member not in kept).solve(5.0, 30.0).columns is not None

    subsets = [s for size in range(len(parts) + 1) for s in itertools.combinations(parts, size)]
    failing = [frozenset(s) for s in subsets if not able(s)]
    minimal = [s for s in failing if not any(other < s for other in failing)]
    assert len(minimal) > 1
    found = frozenset(conflict_of(instance))
    assert found in minimal


def test_a_brief_that_can_be_met_has_no_clash() -> None:
    assert conflict_of(instance_of(terms_of(days=days("mon", 20), equipment="bands"))) == ()


STATUSES = ("OPTIMAL", "FEASIBLE", "INFEASIBLE", "MODEL_INVALID", "UNKNOWN")


def test_the_statuses_are_all_that_cpsat_has() -> None:
    assert set(type(cpsat.cp_model.OPTIMAL).__members__) == set(STATUSES)


ENDS = [(s, True) for s in STATUSES] + [(s, False) for s in STATUSES if s != "INFEASIBLE"]
"""(status, whether it comes with a week); INFEASIBLE with none is the clash of the tests above."""


@pytest.mark.parametrize(("status", "found"), ENDS)
def test_every_status_has_its_end(status: str, found: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    """CP-SAT's word replaced: a week makes it Solved, none without a proof OutOfTime.

    Of three exercises, so that CP-SAT itself is done at once: what follows its word is the same.
    """
    real = CpSatModel.solve

    def solve(self: CpSatModel, work: float, seconds: float, heard: Any = None, presolve: bool = True) -> CpSatResult:
        result = real(self, work, seconds, heard if found else None, presolve)
        return replace(result, status=status, columns=result.columns if found else None)

    monkeypatch.setattr(CpSatModel, "solve", solve)
    raw = {"days": days("mon", 15), "equipment": "bands", "avoid": only("band-curl", "band-squat", "push-up")}
    end = plan(parse_brief(raw, CATALOGUE, "test"), CATALOGUE, replace(CHEAP, pairs_note=False))
    assert isinstance(end, Solved if found else OutOfTime)


def test_a_stopped_search_says_so() -> None:
    raw = {"days": days("mon", 15), "equipment": "bands"}
    end = plan(parse_brief(raw, CATALOGUE, "test"), CATALOGUE, replace(CHEAP, stopped=lambda: True))
    assert isinstance(end, OutOfTime) and end.ended_by == "stopped"


def test_no_time_at_all_is_out_of_time() -> None:
    raw = {"days": days("mon", 15), "equipment": "bands"}
    end = plan(parse_brief(raw, CATALOGUE, "test"), CATALOGUE, replace(CHEAP, wall_clock_limit=0.0))
    assert isinstance(end, OutOfTime) and end.ended_by == "time limit"
