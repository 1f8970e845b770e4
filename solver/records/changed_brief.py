"""A client's brief changed: what stays with the person, what may not change, and how the change is noted."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.book.clients import Client
from setwright.solver.book.opened import Book
from setwright.solver.book.sessions import sessions_of
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.brief.schema import PRIVATE, Brief

PERSONAL: Final = ("client", "owned", "clock", "lifts")
"""What stays with the person where a new brief says nothing of it."""
FACTS: Final = "the client's facts"
"""What a note says of a change that is of nothing it may name."""


def with_new_brief(before: Brief, new: Brief) -> dict[str, Any]:
    """A new brief as a raw table, with what stays with the person where it says nothing of it."""
    raw = raw_of(before)
    said = new.model_dump(mode="json", exclude_none=True, exclude_defaults=True)
    kept: dict[str, Any] = {
        key: {**raw.get(key, {}), **said.get(key, {})} for key in PERSONAL if key in raw or key in said
    }
    return {**raw_of(new), **kept}


def refuse_another_unit(book: Book, client: Client, after: str, where: str) -> None:
    """Raise UsageFault where weights are logged in the unit that would be left: kg and lb are never mixed."""
    before = client.unit
    if before != after and any(s.unit == before for s in sessions_of(book, client)):
        said = f"{before} cannot become {after}: sets are logged in {before}, and kg and lb are never mixed"
        raise UsageFault(Fault(where, said, "add the client under another code for the other unit"))


def what_changed(before: Mapping[str, Any], after: Mapping[str, Any]) -> str:
    """The fields of a brief (raw tables) that differ, by name; a health note is not among them."""
    named = [field for field in {**after, **before} if field != "client" and before.get(field) != after.get(field)]
    one, other = before.get("client", {}), after.get("client", {})
    named += [field for field in {**other, **one} if field not in PRIVATE and one.get(field) != other.get(field)]
    return ", ".join(field.replace("_", " ") for field in named) or FACTS
