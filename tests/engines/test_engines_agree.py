"""The two engines agree, the bound holds, and the audit and the model say the same of every small week."""

from __future__ import annotations

import itertools
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from light_search import LITTLE

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.engines import highs
from setwright.solver.engines.build import all_day_columns, day_model, week_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.linear.instance import instance_of
from setwright.solver.planning import Clash, plan
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import search
from setwright.solver.search.decoding import week_of
from setwright.solver.search.solve_options import SolveOptions

ROOT = Path(__file__).parents[2]
CHEAP = SolveOptions(replace(LITTLE, rounds=2, nodes=2))
CATALOGUE = load_catalogue()


def terms_of(**raw):
    raw.setdefault("equipment", "home-dumbbells")
    raw.setdefault("pairs", raw.get("goal") == "efficiency")
    return resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE)


def days(*minutes: int, weekdays=("mon", "tue", "thu", "sat")):
    return [{"weekday": w, "minutes": m} for w, m in zip(weekdays, minutes, strict=False)]


SMALL = {
    "one day": {"days": days(20)},
    "bands": {"days": days(15, 15), "equipment": "bands"},
    "efficiency": {"days": days(15), "goal": "efficiency", "pairs": False},
    "priority": {"days": days(20, 20), "muscles": {"arms": "priority"}, "equipment": "bands"},
    "novice": {"days": days(20), "client": {"experience": "novice"}},
}


@pytest.mark.parametrize("name", SMALL)
def test_cpsat_and_highs_overlap_on_the_whole_week(name) -> None:
    instance = instance_of(terms_of(**SMALL[name]))
    model = day_model(instance, all_day_columns(instance))
    program = CpSatModel(model)
    program.maximise()
    ours = program.solve(2.0, 60.0)
    theirs = highs.bound(model, 10, 30.0)
    assert ours.columns is not None
    assert ours.value <= theirs.bound + 50
    assert theirs.value <= ours.bound + 50


@pytest.mark.parametrize("name", SMALL)
def test_no_score_passes_the_bound_and_threads_change_nothing(name) -> None:
    instance = instance_of(terms_of(**SMALL[name]))
    beside, alone = (search(instance, replace(CHEAP, workers=workers)) for workers in (2, 1))
    assert beside.best is not None and alone.best is not None
    assert beside.best.score_units <= beside.bound
    assert beside.best.evaluated.week == alone.best.evaluated.week
    assert beside.bound == alone.bound


TINY = {
    "plain": {},
    "priority": {"muscles": {"biceps": "priority"}},
    "exact": {"muscles": {"biceps": {"at_least": 3.0, "at_most": 6.0}}},
    "pairs": {"pairs": True},
    "novice": {"client": {"experience": "novice"}},
}
KEPT = ("dumbbell-curl", "dumbbell-side-raise", "chest-supported-dumbbell-row", "dumbbell-bench-press")


def tiny(**raw):
    """A two-day brief in which four exercises are left, with two ways to do each at most."""
    everything = [e.id for e in CATALOGUE.exercises.values() if e.id not in KEPT]
    resolved = terms_of(days=days(15, 15, weekdays=("mon", "tue")), avoid=everything, **raw)
    instance = instance_of(resolved)
    columns = [c for c in all_day_columns(instance) if all(a.prescription.sets in (2, 4) for a in c.assignments)]
    firsts: dict[tuple[object, ...], object] = {}
    for column in columns:
        ids = tuple(instance.classes[a.cls].exercise.id for a in column.assignments)
        firsts.setdefault((column.group, ids, column.assignments[0].prescription.sets), column)
    return resolved, instance, list(firsts.values())


@pytest.mark.parametrize("name", TINY)
def test_what_the_model_allows_is_what_the_audit_passes(name) -> None:
    resolved, instance, columns = tiny(**TINY[name])
    model = day_model(instance, columns)
    checked = allowed = 0
    for chosen in subsets(columns):
        held = {j: int(j in chosen) for j in range(len(columns))}
        found = CpSatModel(model, held)
        found.maximise()
        solved = found.solve(1.0, 10.0)
        week = week_of(instance, [(model.groups[columns[j].group].days[0], columns[j]) for j in sorted(chosen)])
        result = audit(resolved, week)
        broken = [f for f in result.broken if f.rule != "order"]
        assert (solved.status == "OPTIMAL") == (not broken), (week, broken)
        checked += 1
        if not broken:
            allowed += 1
            assert solved.value >= result.score_units - highs.ROUNDING, week
            assert solved.value <= result.score_units + 700, (week, result.costs())
    assert checked > 100 and 0 < allowed < checked


def subsets(columns) -> list[frozenset[int]]:
    """Up to two columns a day in every way, no exercise twice a day; thinned to about two hundred."""
    by_day = [[j for j, c in enumerate(columns) if c.group == day] for day in (0, 1)]

    def sides(mine):
        pairs = [p for p in itertools.combinations(mine, 2) if not shared(columns, p)]
        return [(), *[(j,) for j in mine], *pairs]

    every = [frozenset(a + b) for a in sides(by_day[0]) for b in sides(by_day[1])]
    return every[:: max(1, len(every) // 160)]


def shared(columns, pair) -> bool:
    a, b = ({assignment.cls for assignment in columns[j].assignments} for j in pair)
    return bool(a & b)


def test_the_week_without_days_bounds_the_week_on_days() -> None:
    instance = instance_of(terms_of(**SMALL["priority"]))
    wide = highs.relax(week_model(instance)).value
    program = CpSatModel(day_model(instance, all_day_columns(instance)))
    program.maximise()
    assert program.solve(4.0, 60.0).value <= wide + 50


CLASHES = {
    "a movement the kit lacks": {"days": days(40), "must": ["vertical-pull"]},
    "more sets than minutes": {"days": days(20), "muscles": {"quads": {"at_least": 14.0}}},
    "two wishes": {
        "days": days(20),
        "muscles": {"biceps": {"at_most": 1.0}},
        "pins": [{"exercise": "dumbbell-curl", "sets": 3}],
    },
}


@pytest.mark.parametrize("name", CLASHES)
def test_a_clash_names_parts_that_clash(name) -> None:
    parsed = parse_brief({"equipment": "home-dumbbells", "pairs": False, **CLASHES[name]}, CATALOGUE, "test")
    end = plan(parsed, CATALOGUE, CHEAP)
    assert isinstance(end, Clash)
    assert end.conflicts
    assert any(conflict.wish for conflict in end.conflicts)


@pytest.mark.slow
def test_the_same_bytes_under_any_hash_seed() -> None:
    code = (
        "import sys; from setwright.solver.cli import main; "
        "sys.argv = ['setwright', 'week', '1 day x 20 min, bands, growth, grow arms', '--search', 'quick', '--json']; "
        "main()"
    )
    outputs = []
    for seed in ("0", "1"):
        env = {"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT / ".names"), "PATH": "/usr/bin:/bin"}
        run = subprocess.run([sys.executable, "-c", code], env=env, capture_output=True, check=False)
        assert run.returncode == 0, run.stderr
        outputs.append(run.stdout)
    assert outputs[0] == outputs[1]
