"""A brief whose days cannot hold one set is a clash that says why; one that can is none."""

from __future__ import annotations

from typing import Any

import pytest
from boards import CATALOGUE, days, terms_of

from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.planning import Clash, plan
from setwright.solver.planning.empty_week import what_leaves_no_room
from setwright.solver.search.limits import SEARCHES
from setwright.solver.search.solve_options import SolveOptions

QUICK = SolveOptions(SEARCHES["quick"], pairs_note=False)
ALL = tuple(CATALOGUE.exercises)


@pytest.mark.parametrize(
    ("brief", "rule"),
    [
        ({"days": days("mon", 10), "clock": {"warm_up": 600}}, "day-minutes"),
        ({"days": days("mon", 30), "avoid": ALL}, "avoided"),
    ],
)
def test_a_week_without_a_set_is_a_clash_that_says_why(brief: dict[str, Any], rule: str) -> None:
    end = plan(parse_brief(brief, CATALOGUE, "test"), CATALOGUE, QUICK)
    assert isinstance(end, Clash)
    assert rule in {member.rule for member in end.conflicts}


def test_a_day_that_holds_a_set_leaves_room() -> None:
    assert what_leaves_no_room(terms_of(days=days("mon", 10))) == ()
