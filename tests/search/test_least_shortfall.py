"""Where no week is found that keeps every band: the one that misses lower ends by the fewest sets, and what is said."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from boards import CATALOGUE, days, only, terms_of
from light_search import LIGHT

from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.linear.instance import instance_of
from setwright.solver.planning import Clash, End, OutOfTime, Solved, plan, planner
from setwright.solver.search.feasibility import possible
from setwright.solver.search.secondary.least_shortfall import least_shortfall_week
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.sheets.common.findings import no_week_words

LIGHTLY = SolveOptions(LIGHT, workers=1, pairs_note=False)
FEW = ("band-curl", "push-up", "band-squat", "band-row-to-the-hip", "band-side-raise", "band-pushdown")


def brief(quads: float, **more: Any) -> dict[str, Any]:
    """Two short days on which six exercises are open, with so many sets of quads asked for."""
    asks = {"quads": {"at_least": quads}, "biceps": {"at_least": 2.0}}
    return {"days": days("mon thu", 15), "equipment": "bands", "avoid": only(*FEW), "muscles": asks, **more}


def test_what_can_be_kept_is_kept() -> None:
    found = least_shortfall_week(instance_of(terms_of(**brief(3.0))), LIGHTLY)
    assert found is not None and not found.broken


@pytest.mark.parametrize("pairs", [False, True])
def test_the_sets_that_lack_are_the_fewest(pairs: bool) -> None:
    """A brief that asks for what the nearest week has can be met, and none that asks for a little more of any."""
    asked = {"quads": 20.0, "biceps": 18.0}
    found = least_shortfall_week(instance_of(terms_of(**brief(20.0, muscles=ends(asked), pairs=pairs))), LIGHTLY)
    assert found is not None
    assert {(finding.rule, finding.case) for finding in found.broken} == {("exact-band", "at least")}
    has = {muscle: found.evaluated.weekly_sets(muscle) / WHOLE for muscle in asked}
    assert possible(instance_of(terms_of(**brief(0, muscles=ends(has), pairs=pairs)))).able
    for muscle in asked:
        more = ends(has | {muscle: has[muscle] + 0.5})
        assert possible(instance_of(terms_of(**brief(0, muscles=more, pairs=pairs)))).able is False


def ends(sets: dict[str, float]) -> dict[str, dict[str, float]]:
    """Lower ends as a brief writes them."""
    return {muscle: {"at_least": number} for muscle, number in sets.items()}


def test_a_brief_without_bands_of_its_own_has_none() -> None:
    assert least_shortfall_week(instance_of(terms_of(days=days("mon", 15), equipment="bands")), LIGHTLY) is None


def test_one_that_is_stopped_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever stops the search while the nearest week is sought is not told of its work limit."""
    wanted: list[bool] = []
    monkeypatch.setattr(planner, "conflict_of", lambda instance, seconds: wanted.append(True) or ())
    asked = parse_brief(brief(20.0), CATALOGUE, "test")
    end = plan(asked, CATALOGUE, replace(LIGHTLY, stopped=lambda: bool(wanted)))
    assert isinstance(end, OutOfTime) and end.ended_by == "stopped" and end.least_shortfall is None


def planned(raw: dict[str, Any]) -> End:
    return plan(parse_brief(raw, CATALOGUE, "test"), CATALOGUE, LIGHTLY)


def test_no_week_says_what_the_nearest_lacks(monkeypatch: pytest.MonkeyPatch) -> None:
    """The proof of the clash is taken away, as where the work limit comes before it."""
    assert isinstance(planned(brief(20.0)), Clash)
    monkeypatch.setattr(planner, "conflict_of", lambda instance, seconds: ())
    end = planned(brief(20.0))
    assert isinstance(end, OutOfTime) and end.least_shortfall is not None
    sets = end.least_shortfall.evaluated.weekly_sets("quads") / WHOLE
    said = f"no week was found (work limit); the nearest week found misses only this: quads: {sets:g} sets, "
    assert no_week_words(end) == f"{said}at least 20"
    assert no_week_words(replace(end, least_shortfall=None)) == "no week was found (work limit)"


def test_a_week_that_lacks_nothing_is_gone_on_from(monkeypatch: pytest.MonkeyPatch) -> None:
    """The search that finds no week is the first; it is called again with the week that keeps every band."""
    real, starts = planner.search, []

    def search(instance: Any, options: Any, start: Any = None, fill_days: bool = False) -> Any:
        starts.append(start)
        outcome = real(instance, options, start, fill_days)
        return replace(outcome, best=None) if start is None else outcome

    monkeypatch.setattr(planner, "search", search)
    end = planned(brief(3.0))
    assert isinstance(end, Solved) and not end.audit.broken
    assert starts[0] is None and starts[1] is not None and len(starts) == 2
