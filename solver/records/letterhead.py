"""The coach's own file beside the book: whose letterhead a client's sheets carry."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.sheets.handout.coach import DEFAULT_COACH, MOST_BYTES, Coach, parse_coach

NAME: Final = "coach.toml"


def coach_beside(book: Path, catalogue: Catalogue) -> Coach:
    """The coach of the `coach.toml` that lies beside a book, else the default one; raises UsageFault."""
    path = book.parent / NAME
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        return DEFAULT_COACH
    except OSError as error:
        raise UsageFault(Fault(NAME, f"cannot be read: {error.strerror}", "mend it or take it away")) from None
    return parse_coach(data, catalogue, NAME)
