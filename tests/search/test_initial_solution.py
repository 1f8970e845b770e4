"""A search that starts from the week of fewer minutes fills its days before it goes on."""

from __future__ import annotations

from dataclasses import replace

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.columns import Instance, instance_of
from setwright.solver.rulebook import resolve
from setwright.solver.search.best_week import search
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.solve_options import SolveOptions

NO_ROUNDS = SolveOptions(replace(SEARCHES["quick"], rounds=0, nodes=0))


def instance(minutes: int) -> Instance:
    catalogue = load_catalogue()
    days = [{"weekday": day, "minutes": minutes} for day in ("mon", "thu")]
    return instance_of(resolve(parse_brief({"days": days, "equipment": "bands"}, catalogue).brief, catalogue))


def score(minutes: int, start: Week | None = None, fill_days: bool = False) -> tuple[int, Week]:
    best = search(instance(minutes), replace(NO_ROUNDS, workers=1), start, fill_days).best
    assert best is not None
    return best.score_units, best.evaluated.week


def test_the_added_minutes_of_a_longer_week_are_filled() -> None:
    _, shorter = score(20)
    (feasibility_only, week), (filled, first) = score(40, shorter), score(40, shorter, fill_days=True)
    assert week == shorter and filled > feasibility_only
    assert (filled, first) == score(40, shorter, fill_days=True)
    assert filled > 0.9 * score(40)[0]
