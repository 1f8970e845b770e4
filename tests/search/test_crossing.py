"""On twenty random briefs search, both engines and the audit agree; `python -m tests.bench.cross` checks 200."""

from __future__ import annotations

from dataclasses import replace

import pytest
from crossing import BRIEF, Interval, above, against, between, catalogue, crossed, drawn, printed

from setwright.solver.linear.instance import instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import search

SEEDS = range(20)


@pytest.mark.parametrize("seed", SEEDS)
def test_search_engines_and_audit_agree(seed: int) -> None:
    assert crossed(seed, BRIEF).disagreements == ()


def test_a_seed_draws_the_same_brief_and_another_another() -> None:
    briefs = [drawn(seed).brief for seed in SEEDS]
    assert briefs == [drawn(seed).brief for seed in SEEDS]
    assert len({brief.model_dump_json() for brief in briefs}) == len(briefs)


def test_intervals_that_lie_apart_are_told() -> None:
    low, high = Interval("CP-SAT", 1000.0, 2000.0, None), Interval("HiGHS", 2100.0, 2500.0, None)
    assert between(low, high) == ["HiGHS's best 2100 passes CP-SAT's bound 2000"]
    assert between(replace(low, bound=2100.0), high) == []


def test_a_bound_that_is_too_low_is_told() -> None:
    parsed = drawn(3)
    instance = instance_of(resolve(parsed.brief, catalogue()))
    found = search(instance, BRIEF.options)
    assert found.best is not None
    score = found.best.score_units
    engine = Interval("CP-SAT", score, score, found.best)
    low = replace(found, bound=score - 100.0)
    assert against(found, (engine,)) == [] and len(against(low, (engine,))) == 2
    assert above(found.best, (engine,)) == [] and len(above(found.best, (replace(engine, bound=score - 100.0),))) == 1
    assert len(against(replace(found, best=None), (engine,))) == 1
    other = replace(found, best=replace(found.best, charged=found.best.charged[:-1]))
    assert found.best.charged and any(
        "printed week is audited" in line for line in printed(parsed, instance, other, BRIEF)
    )
