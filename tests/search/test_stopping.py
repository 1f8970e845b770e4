"""What ends a search: the user's wish, the wall clock, the work limit or a proof, told by one type."""

from __future__ import annotations

import json
import math
import time

import pytest
from boards import days, terms_of
from light_search import LITTLE

from setwright.solver.linear.instance import instance_of
from setwright.solver.search import best_week
from setwright.solver.search.bounding import is_proved
from setwright.solver.search.courses.given import Given
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.search.stopping import EndedBy, Interrupted, StopSignal


def test_the_users_wish_ends_a_search() -> None:
    with pytest.raises(Interrupted) as stopped:
        StopSignal(60.0, lambda: True).check()
    assert stopped.value.ended_by is EndedBy.STOPPED


def test_the_wall_clock_ends_a_search_that_began_long_ago() -> None:
    StopSignal(60.0).check()
    with pytest.raises(Interrupted) as late:
        StopSignal(60.0, begun=time.monotonic() - 61.0).check()
    assert late.value.ended_by is EndedBy.TIME_LIMIT


def test_an_engine_always_gets_a_moment() -> None:
    assert StopSignal(0.0).seconds_left() > 0.0
    assert 50.0 < StopSignal(60.0).seconds_left() <= 60.0


def test_only_an_interrupted_search_says_nothing_of_the_brief() -> None:
    assert [end for end in EndedBy if end.interrupted] == [EndedBy.TIME_LIMIT, EndedBy.STOPPED]


def test_documents_and_messages_have_the_words() -> None:
    assert json.dumps({"ended_by": EndedBy.WORK_LIMIT}) == '{"ended_by": "work limit"}'
    assert f"({EndedBy.TIME_LIMIT})" == "(time limit)"


@pytest.mark.parametrize(
    ("score", "bound", "proved"), [(9_999, 10_000.0, True), (9_900, 10_000.0, False), (9_999, math.inf, False)]
)
def test_a_score_is_proved_by_a_bound_that_leaves_only_rounding(score: int, bound: float, proved: bool) -> None:
    assert is_proved(score, bound) is proved


def test_a_search_whose_last_engine_met_the_limit_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nobody looks at the clock after the last engine; its bound is not that of the whole work."""

    def course(given: Given) -> None:
        assert given.find_first()
        given.lns.solver.signal._until = time.monotonic()

    monkeypatch.setattr(best_week, "_course_for", lambda instance: course)
    place = instance_of(terms_of(days=days("mon", 15), equipment="bands"))
    found = best_week.search(place, SolveOptions(LITTLE, workers=1))
    assert found.ended_by is EndedBy.TIME_LIMIT and found.best is not None
