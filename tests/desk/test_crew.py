"""Searches in processes: their turns, their ends, and what becomes of one whose process dies."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from at_desk import until

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.desk.searches import driven, process
from setwright.solver.desk.searches.addresses import standing
from setwright.solver.desk.searches.crew import MOST_KEPT, READY, Crew
from setwright.solver.desk.searches.process import _end_of
from setwright.solver.desk.searches.search import Search
from setwright.solver.desk.searches.task import Task, Told
from setwright.solver.sheets.document.blocks.block_document import ask_part
from setwright.solver.uses.blocks.ask import BlockAsk


def brief(phrase: str) -> dict[str, Any]:
    return raw_of(parse_phrase(phrase, load_catalogue()).brief)


SHORT = brief("1 day x 10 min, bodyweight, novice, no pairs")
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


def until_ended(search: Search) -> None:
    until(lambda: search.told.ended)


def until_running(search: Search) -> None:
    until(lambda: search.told.state != "waiting")


def test_a_search_ends_with_the_document_that_the_command_prints(shared: Crew) -> None:
    from setwright.solver import plan, read_brief
    from setwright.solver.planning import Solved
    from setwright.solver.search.limits import SEARCHES
    from setwright.solver.search.solve_options import SolveOptions
    from setwright.solver.sheets.document.solved_week import week_document

    found = shared.ask("M", week(SHORT))
    until_ended(found)
    end = plan(read_brief(SHORT, load_catalogue()), load_catalogue(), SolveOptions(SEARCHES["quick"]))
    assert isinstance(end, Solved)
    assert (found.told.state, found.told.document) == ("done", week_document(end))


def test_a_brief_that_cannot_be_read_is_told_with_its_faults(shared: Crew) -> None:
    found = shared.ask("M", week({"days": [{"minutes": -3}]}))
    until_ended(found)
    assert found.told.state == "failed" and found.told.document is None
    assert any("minutes" in fault["where"] for fault in found.told.faults)


def test_those_who_wait_are_served_in_turn(shared: Crew) -> None:
    first = [shared.ask("A", week(SHORT)) for _ in range(3)]
    other = shared.ask("B", week(SHORT))
    until_ended(other)
    assert [search.told.state for search in first].count("waiting") >= 1
    for search in first:
        until_ended(search)
        assert search.told.state == "done"


def test_a_search_that_waits_is_taken_off_when_it_is_stopped(shared: Crew) -> None:
    first, second = shared.ask("M", week(SHORT)), shared.ask("M", week(SHORT))
    shared.stop(second)
    assert second.told.state == "stopped" and second.told.document is None
    until_ended(first)
    assert first.told.state == "done"


def test_a_search_that_runs_is_stopped_with_what_it_has_and_the_next_one_goes_on(shared: Crew) -> None:
    long = shared.ask("M", week(LONG, "thorough"))
    until_running(long)
    shared.stop(long)
    until_ended(long)
    assert long.told.state == "stopped"
    after = shared.ask("M", week(SHORT))
    until_ended(after)
    assert after.told.state == "done"


def test_a_process_that_dies_fails_its_search_alone(crew: Crew) -> None:
    lost = crew.ask("M", week(LONG, "thorough"))
    until_running(lost)
    os.kill(crew._processes[0].handle.pid, signal.SIGKILL)
    until_ended(lost)
    assert lost.told.state == "failed" and lost.told.faults
    after = crew.ask("M", week(SHORT))
    until_ended(after)
    assert after.told.state == "done"


def test_the_oldest_ends_are_forgotten_and_a_search_that_goes_on_never(crew: Crew) -> None:
    long = crew.ask("M", week(LONG, "thorough"))
    until_running(long)
    many = [crew.ask("M", week(SHORT)) for _ in range(MOST_KEPT + 5)]
    for search in many:
        crew.stop(search)
    crew.ask("M", week(SHORT))
    assert crew.search(many[0].id) is None and crew.search(many[-1].id) is not None
    assert crew.search(long.id) is long


def test_a_search_that_nobody_looks_at_is_stopped(shared: Crew) -> None:
    long = shared.ask("M", week(LONG, "thorough"))
    shared.stop_unwatched(60)
    assert not long.stopping
    shared.stop_unwatched(-1)
    until_ended(long)
    assert long.told.state == "stopped"


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


def test_a_process_that_has_done_enough_is_given_nothing_more(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each task has a process of its own here; before, the next one was sent to the one that was on its way out."""
    monkeypatch.setattr(driven, "MOST_TASKS", 1)
    crew = Crew(1)
    asked = [crew.ask("M", week(SHORT)) for _ in range(3)]
    for search in asked:
        until_ended(search)
    assert [search.told.state for search in asked] == ["done"] * 3
    crew.close()


def test_an_idle_process_that_died_costs_nobody_a_search(crew: Crew) -> None:
    until_ended(crew.ask("M", week(SHORT)))
    first = crew._processes[0].handle
    os.kill(first.pid, signal.SIGKILL)
    first.join()
    found = crew.ask("M", week(SHORT))
    until_ended(found)
    assert found.told.state == "done"


def test_a_search_that_is_stopped_before_its_first_week_has_not_failed(shared: Crew) -> None:
    long = shared.ask("M", week(LONG, "thorough"))
    until_running(long)
    shared.stop(long)
    until_ended(long)
    assert (long.told.state, long.told.faults) == ("stopped", ())


def test_what_a_stopped_search_raises_is_no_failure_and_its_best_week_stays() -> None:
    """As the process has it: a search that is told to stop says that it found nothing in time."""

    class Stopping:
        value = 1

    class Sent(list[Any]):
        def send(self, what: Any) -> None:
            self.append(what)

    teller = process._Teller(Sent(), Stopping())  # type: ignore[arg-type]
    told = Told("running", document={"a week": 1})
    after = replace(told, **process._end_of(week({"days": [{"minutes": -3}]}), teller))
    assert (after.state, after.document, after.faults) == ("stopped", {"a week": 1}, ())


def test_a_stop_that_comes_late_does_not_touch_the_next_search(shared: Crew) -> None:
    first = shared.ask("M", week(SHORT))
    until_ended(first)
    second = shared.ask("M", week(SHORT))
    shared.stop(first)
    until_ended(second)
    assert (first.told.state, second.told.state) == ("done", "done")


def test_what_is_told_after_the_end_is_dropped(crew: Crew) -> None:
    search = Search("s", "M", week(SHORT), Told("stopped"))
    crew._tell(search, {"state": "running", "document": {}})
    assert (search.told.state, search.told.document) == ("stopped", None)


def test_two_processes_are_kept_ready_and_no_more_remain_than_that() -> None:
    crew = Crew(8)
    crew.start()
    assert len(crew._processes) == READY
    asked = [crew.ask(asker, week(SHORT)) for asker in "ABC"]
    assert len(crew._processes) == READY + len(asked)
    for search in asked:
        until_ended(search)
    until(lambda: len(crew._processes) == READY)
    crew.close()


def test_the_searches_of_one_who_is_gone_are_stopped_and_forgotten(crew: Crew) -> None:
    ran, waited, other = crew.ask("M", week(LONG, "thorough")), crew.ask("m", week(SHORT)), crew.ask("N", week(SHORT))
    until_running(ran)
    crew.forget("M")
    assert [crew.search(search.id) for search in (ran, waited, other)] == [None, None, other]
    until_ended(ran)
    until_ended(other)
    assert [search.told.state for search in (ran, waited, other)] == ["stopped", "stopped", "done"]


def test_no_process_that_can_be_started_fails_the_search(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(driven.Driven, "start", lambda self: False)
    crew = Crew(1)
    search = crew.ask("M", week(SHORT))
    until_ended(search)
    assert search.told.state == "failed" and search.told.faults


def test_a_process_that_is_gone_is_given_nothing_more_though_it_looks_alive() -> None:
    """For a moment after its death it may still count as alive; before, it took the next search and failed it."""

    class Gone:
        work, leaving = None, False

        def told(self, task: Task) -> Iterator[dict[str, Any]]:
            return iter(())

    crew, process, search = Crew(1), Gone(), Search("one", "M", Task("week", {}))
    crew._do(process, search)  # type: ignore[arg-type]
    assert process.leaving and search.told.state == "failed"
