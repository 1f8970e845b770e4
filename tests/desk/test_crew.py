"""Searches in processes: their turns, their ends, and what becomes of one whose process dies."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from datetime import date
from typing import Any

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.desk.searches.addresses import standing
from setwright.solver.desk.searches.crew import MOST_KEPT, Crew, Search
from setwright.solver.desk.searches.process import _end_of
from setwright.solver.desk.searches.task import Task, Told
from setwright.solver.sheets.document.blocks.block_document import ask_part
from setwright.solver.uses.blocks.ask import BlockAsk

PATIENCE = 120.0


def brief(phrase: str) -> dict[str, Any]:
    return raw_of(parse_phrase(phrase, load_catalogue()).brief)


SHORT = brief("1 day x 15 min, home dumbbells, novice")
LONG = brief("6 days x 90 min, growth, advanced, commercial gym")


def week(raw: dict[str, Any], search: str = "quick") -> Task:
    return Task("week", {"brief": raw, "search": search})


@pytest.fixture(scope="module")
def shared() -> Iterator[Crew]:
    """One process for the tests that leave it as it was."""
    crew = Crew(1)
    yield crew
    crew.close()


@pytest.fixture
def crew() -> Iterator[Crew]:
    crew = Crew(1)
    yield crew
    crew.close()


def until_ended(crew: Crew, search: Search) -> None:
    while not search.told.ended:
        assert crew.after(search, search.told.count, PATIENCE).count, "nothing was told in two minutes"


def until_running(crew: Crew, search: Search) -> None:
    while search.told.state == "waiting":
        crew.after(search, search.told.count, PATIENCE)


def test_a_search_ends_with_the_document_that_the_command_prints(shared: Crew) -> None:
    from setwright.solver import plan, read_brief
    from setwright.solver.planning import Solved
    from setwright.solver.search.limits import SEARCHES
    from setwright.solver.search.solve_options import SolveOptions
    from setwright.solver.sheets.document.solved_week import week_document

    found = shared.ask("M", week(SHORT))
    until_ended(shared, found)
    end = plan(read_brief(SHORT, load_catalogue()), load_catalogue(), SolveOptions(SEARCHES["quick"]))
    assert isinstance(end, Solved)
    assert (found.told.state, found.told.document) == ("done", week_document(end))


def test_a_brief_that_cannot_be_read_is_told_with_its_faults(shared: Crew) -> None:
    found = shared.ask("M", week({"days": [{"minutes": -3}]}))
    until_ended(shared, found)
    assert found.told.state == "failed" and found.told.document is None
    assert any("minutes" in fault["where"] for fault in found.told.faults)


def test_those_who_wait_are_served_in_turn(shared: Crew) -> None:
    first = [shared.ask("A", week(SHORT)) for _ in range(3)]
    other = shared.ask("B", week(SHORT))
    until_ended(shared, other)
    assert [search.told.state for search in first].count("waiting") >= 1
    for search in first:
        until_ended(shared, search)
        assert search.told.state == "done"


def test_a_search_that_waits_is_taken_off_when_it_is_stopped(shared: Crew) -> None:
    first, second = shared.ask("M", week(SHORT)), shared.ask("M", week(SHORT))
    shared.stop(second)
    assert second.told.state == "stopped" and second.told.document is None
    until_ended(shared, first)
    assert first.told.state == "done"


def test_a_search_that_runs_is_stopped_with_what_it_has_and_the_next_one_goes_on(crew: Crew) -> None:
    long = crew.ask("M", week(LONG, "thorough"))
    until_running(crew, long)
    crew.stop(long)
    until_ended(crew, long)
    assert long.told.state == "stopped"
    after = crew.ask("M", week(SHORT))
    until_ended(crew, after)
    assert after.told.state == "done"


def test_a_process_that_dies_fails_its_search_alone(crew: Crew) -> None:
    lost = crew.ask("M", week(LONG, "thorough"))
    until_running(crew, lost)
    os.kill(crew._processes[0].handle.pid, signal.SIGKILL)
    until_ended(crew, lost)
    assert lost.told.state == "failed" and lost.told.faults
    after = crew.ask("M", week(SHORT))
    until_ended(crew, after)
    assert after.told.state == "done"


def test_the_oldest_ends_are_forgotten_and_a_search_that_goes_on_never(crew: Crew) -> None:
    long = crew.ask("M", week(LONG, "thorough"))
    until_running(crew, long)
    many = [crew.ask("M", week(SHORT)) for _ in range(MOST_KEPT + 5)]
    for search in many:
        crew.stop(search)
    crew.ask("M", week(SHORT))
    assert crew.search(many[0].id) is None and crew.search(many[-1].id) is not None
    assert crew.search(long.id) is long


def test_a_search_that_nobody_looks_at_is_named(crew: Crew) -> None:
    long = crew.ask("M", week(LONG, "thorough"))
    assert crew.unwatched(60) == ()
    assert crew.unwatched(-1) == (long,)


class StoppedTelling:
    """What a task is given whose user stopped it at once."""

    def due(self) -> bool:
        return False

    def progress(self, **what: Any) -> None:
        """Nothing is shown."""

    def stopped(self) -> bool:
        return True


ASK = ask_part(BlockAsk(4, date(2026, 11, 30)), 4)
SEASON = {"start": "2026-11-30", "weeks": 12, "block_weeks": [4, 6], "calendar": "", "emphasis": []}


@pytest.mark.parametrize(
    ("task", "asked"), [("season", SEASON), ("week", {}), ("others", {"count": 1}), ("block", {"ask": ASK})]
)
def test_a_search_that_was_stopped_before_it_had_anything_is_stopped_and_not_failed(
    task: str, asked: dict[str, Any]
) -> None:
    told = _end_of(Task(task, {"brief": LONG, "search": "quick", **asked}), StoppedTelling())
    assert told["state"] == "stopped" and not told.get("faults"), told


def test_how_a_search_stands_is_said_without_a_copy_of_what_it_found() -> None:
    document = {"schema": "setwright.compare/1", "cases": [{"week": {}}]}
    search = Search("one", "M", Task("compare", {}), Told("done", document=document))
    assert standing(search)["document"] is document
