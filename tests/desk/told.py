"""Tasks done in this process by little work, and searches in a desk's memory as if a process had told them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from light_search import LITTLE
from starlette.testclient import TestClient

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.desk.searches.search import Search
from setwright.solver.desk.searches.task import Task, Told
from setwright.solver.rulebook import RULES

CHEAP = {"quick": LITTLE}


@dataclass
class Listener:
    """A `Telling` that hears everything; it asks to stop once so many parts were told as done."""

    stop_at: int | None = None
    told: list[Mapping[str, Any]] = field(default_factory=list)

    def due(self) -> bool:
        return True

    def progress(self, **what: Any) -> None:
        self.told.append(what)

    def stopped(self) -> bool:
        return self.stop_at is not None and any(what.get("part", (0,))[0] >= self.stop_at for what in self.told)


def raw(phrase: str = "1 day x 20 min, home dumbbells, novice") -> dict[str, Any]:
    """A phrase as the raw brief that a task is given."""
    return raw_of(parse_phrase(phrase, load_catalogue(), tuple(RULES)).brief)


def stood(browser: TestClient, name: str, document: Mapping[str, Any] | None, **told: Any) -> str:
    """The address of a search of client M that has told this."""
    crew = browser.app.state.desk.crew  # type: ignore[attr-defined]
    search = Search(
        f"{name}-told", "M", Task(name, {"stamp": "0.0"}), Told(**{"state": "done", "document": document, **told})
    )
    crew._searches[search.id] = search
    return f"/searches/{search.id}"


def asked(browser: TestClient, address: str) -> Task:
    """What a search was asked to do; it is stopped."""
    crew = browser.app.state.desk.crew  # type: ignore[attr-defined]
    search = crew.search(address.rsplit("/", 1)[-1])
    crew.stop(search)
    task: Task = search.task
    return task
