"""What of a week's document may be handed over: everything but health notes and what gives them away."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.assumed import NO_CAUTIONS
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.brief.schema import PRIVATE, Brief

TELLING: Final = (
    "caution", "injur", "rehab", "surgery", "clearance", "pain", "doctor", "physio", "pregnan",
    "birth", "arthrit", "osteo", "elder", "pension", "retire", "senior", "teen", "menopau",
)  # fmt: skip
"""Beginnings of words that tell of health or of an age in a title or a name."""
_AGE: Final = re.compile(
    r"\bage[ds]? \d|\baged\b|\b\d+ ?(y|yo|yrs?|years?)\b"
    r"|\b(over|under|above|below)( the age of)? \d+s?\b(?! (min|mins|minutes|hours|kg|lb|sets|reps|days)\b)"
)
"""An age in the plain words of a text: `aged 64`, `15 year old`, `over 60`."""


def redacted(document: Mapping[str, Any], brief: Brief, catalogue: Catalogue) -> dict[str, Any]:
    """A document without age, cautions and clearance, and without titles, names and rules that would tell of them.

    `brief` is the document's own as it was read; written anew, it has every field, whatever the document left out.
    """
    document = _without_private({**document, "brief": raw_of(brief)})
    said = document["brief"]
    said["title"] = unless_telling(brief.title, catalogue)
    said["rules"] = {key: value for key, value in said["rules"].items() if not _of_cautions(key)}
    said["other"] = [{**row, "name": unless_telling(row["name"], catalogue)} for row in said["other"]]
    withheld = {"private_left_out": True} if any(getattr(brief.client, field) for field in PRIVATE) else {}
    return {
        **document,
        **withheld,
        "assumed": [
            text for text in document.get("assumed", []) if text == NO_CAUTIONS or not tells_of_health(text, catalogue)
        ],
        "overridden": [row for row in document.get("overridden", []) if not _of_cautions(row["id"])],
    }


def _of_cautions(rule: str) -> bool:
    """Whether a rule holds what cautions and age ask, so that its name alone would tell of them."""
    return rule == "caution" or rule.startswith("caution-")


def unless_telling(text: str, catalogue: Catalogue) -> str:
    """A title or a name, or nothing where it tells of health."""
    return "" if tells_of_health(text, catalogue) else text


def tells_of_health(text: str, catalogue: Catalogue) -> bool:
    """Whether a text of the brief names a caution of the catalogue or tells of health or an age in other words."""
    said = _words(text)
    known = (word for c in catalogue.cautions.values() for word in (c.id, c.name, *c.aliases) if word != "expecting")
    named = any(f" {_words(word)} " in f" {said} " for word in known)
    return named or any(f" {word}" in f" {said}" for word in TELLING) or _AGE.search(said) is not None


def _words(text: str) -> str:
    """A text's letters and digits in small letters, with one blank between words."""
    return " ".join("".join(letter if letter.isalnum() else " " for letter in text.lower()).split())


def _without_private(part: Any) -> Any:
    """The same without any field that is private, however deep it stands."""
    if isinstance(part, Mapping):
        return {key: _without_private(value) for key, value in part.items() if key not in PRIVATE}
    return [_without_private(value) for value in part] if isinstance(part, list) else part
