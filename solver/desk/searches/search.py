"""A search that was asked for, and how it ends where its process does not say."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from setwright.solver.desk.clock import seconds
from setwright.solver.desk.searches.task import Task, Told


@dataclass(eq=False)
class Search:
    """One search: who asked for it, what is done, and how it stands."""

    id: str
    asker: str
    """A client's code, or another word for those who share a turn."""
    task: Task
    told: Told = field(default_factory=Told)
    watched: float = field(default_factory=seconds)
    """When a page last looked at it."""
    stopping: bool = False

    def is_about(self, code: str) -> bool:
        """Whether a client asked for it, or their brief is among those that it compares."""
        briefs: list[dict[str, Any]] = self.task.arguments.get("others", [])
        codes = [self.asker, *(raw.get("client", {}).get("code", "") for raw in briefs)]
        return any(one.casefold() == code.casefold() for one in codes)


def ended_with(search: Search | None) -> dict[str, Any]:
    """How a search ends whose process is gone: with its best week where it was told to stop."""
    if search is not None and search.stopping:
        return {"state": "stopped"}
    fault = {"where": "search", "said": "its process ended", "remedy": "ask again; the desk's terminal may say why"}
    return {"state": "failed", "faults": (fault,)}
