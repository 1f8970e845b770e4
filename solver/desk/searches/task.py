"""What a search process is asked to do, what it tells while it does it, and how it ends: all of it plain data."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Literal, Protocol

from setwright.catalogue.faults import Fault

State = Literal["waiting", "running", "done", "failed", "stopped"]
ENDED: tuple[State, ...] = ("done", "failed", "stopped")


@dataclass(frozen=True)
class Task:
    """One search: the name of what is done (see `tasks.py`) and its arguments, as JSON values."""

    name: str
    arguments: Mapping[str, Any]
    overlay: str | None = None
    """The path of the coach's own catalogue file."""


@dataclass(frozen=True)
class Told:
    """How a search stands; a new value each time something changes."""

    state: State = "waiting"
    seconds: float = 0.0
    index: float | None = None
    """The week index of the best week so far."""
    gap: float | None = None
    """Index points that are left between the best score and what no week can pass; None while nothing is proven."""
    document: Mapping[str, Any] | None = None
    """The best week so far while it runs; what came out where it is done."""
    faults: tuple[Mapping[str, str], ...] = ()
    """Where it failed: place, what is said, remedy of each fault."""
    part: tuple[int, int] | None = None
    """(parts done, parts in all) where a task is made of several searches."""
    count: int = 0
    """How often the search has told something: a watcher asks for what came after."""

    @property
    def ended(self) -> bool:
        """Whether nothing more follows."""
        return self.state in ENDED


def told_of(fault: Fault) -> dict[str, str]:
    """A fault as a page or a program reads it, its remedy in words for who stands before a page."""
    return {"where": fault.where, "said": fault.said, "remedy": fault.on_page or fault.remedy}


class Telling(Protocol):
    """What a task is given to tell how it stands, and to ask whether it should end."""

    def due(self) -> bool:
        """Whether something told now would be sent: what is costly to tell is made only then."""

    def progress(self, **what: Any) -> None:
        """Tell fields of `Told`; told too soon after the last, it is left out."""

    def stopped(self) -> bool:
        """Whether the search is to end with what it has."""


Run = Callable[[Mapping[str, Any], Any, Telling], Mapping[str, Any]]
"""From arguments, the catalogue and a `Telling` to the document that came out; raises SetwrightError."""
