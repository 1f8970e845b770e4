"""What stands in one field of the form of a brief, read: a number, a place, names, clauses."""

from __future__ import annotations

import math
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault
from setwright.solver.brief.phrase.lexicon import Kind, lexicon_of
from setwright.solver.brief.phrase.parse import draft_phrase
from setwright.solver.desk.forms import Fields

ONE_DAY: Final = "1 day x 40 min"
"""A phrase is read whole, so a clause of the form stands behind a day that is left aside again."""


def put(table: dict[str, Any], field: str, value: Any) -> None:
    """Set a field, or take it away where nothing is said."""
    if value in (None, ""):
        table.pop(field, None)
    else:
        table[field] = value


def number(text: str | None) -> Any:
    """A number of a field, the text itself where it is none, None where nothing stands there."""
    said = (text or "").strip().replace(",", ".")
    try:
        found = float(said)
    except ValueError:
        return said or None
    if not math.isfinite(found):
        return said
    return int(found) if found == int(found) else found


def place_said(text: str | None, catalogue: Catalogue) -> Any:
    """A kit or an item as one word, several as a list; None where nothing is said."""
    lexicon = lexicon_of(catalogue)
    said = (text or "").strip()
    if not said:
        return None
    if known := lexicon.resolve(said, ("kit", "item")):
        return known[1] if known[0] == "kit" else [known[1]]
    words = [word.strip() for word in said.replace(" and ", ",").split(",") if word.strip()]
    return words if len(words) > 1 else said


def lines(fields: Fields, field: str) -> list[str]:
    """The lines of a field that say something."""
    return [line.strip() for line in fields.get(field, "").splitlines() if line.strip()]


def names_said(fields: Fields, field: str, kinds: tuple[Kind, ...], catalogue: Catalogue) -> list[str]:
    """The names of a field, one a line or with commas between them."""
    lexicon = lexicon_of(catalogue)
    found: list[str] = []
    for line in lines(fields, field):
        whole = lexicon.resolve(line, kinds or ("exercise", "item"))
        found += [line] if whole else [word.strip() for word in line.split(",") if word.strip()]
    return found


def lifts_said(fields: Fields, field: str, catalogue: Catalogue) -> list[str]:
    """The exercises of a field; a word such as squats stands for all that are called so."""
    lexicon = lexicon_of(catalogue)
    found: list[str] = []
    for name in names_said(fields, field, ("exercise", "movement"), catalogue):
        kinds: tuple[Kind, ...] = ("exercise", "movement") if field == "avoid" else ("item", "exercise", "movement")
        known = lexicon.resolve(name, kinds)
        found += [name] if known is None or known[0] == "item" else lexicon.family(name, *known)
    return list(dict.fromkeys(found))


def clauses_said(
    fields: Fields, field: str, word: str, catalogue: Catalogue, faults: list[Fault], target: str = ""
) -> list[Any]:
    """The lines of a field, each read as the clause that a word leads in a phrase; what is wrong is kept."""
    found: list[Any] = []
    for line in lines(fields, field):
        raw, wrong = draft_phrase(f"{ONE_DAY}, {word} {line}", catalogue)
        faults += (fault.at(field) for fault in wrong)
        if raw.keys() - {"days", target or field} or len(raw.get("days", ())) > 1:
            faults.append(Fault(field, f"{line!r} says more than one thing", "one thing a line"))
        found += raw.get(target or field, [])
    return found
