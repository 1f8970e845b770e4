"""What of a week's document may be handed over: everything but health notes and what gives them away."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.sheets.document.week_document import PRIVATE

TELLING: Final = ("caution", "injur", "rehab", "surgery", "clearance", "pain", "doctor", "physio", "pregnan")
"""Beginnings of words that tell of health in a title or a name."""


def open_part(document: Mapping[str, Any], catalogue: Catalogue) -> dict[str, Any]:
    """The document without cautions and clearance, and without titles, names and rules that would tell of them."""
    document = without_private(document)
    brief = document["brief"]
    brief["title"] = unless_telling(brief.get("title", ""), catalogue)
    brief["rules"] = {key: value for key, value in brief.get("rules", {}).items() if key != "caution"}
    others = brief.get("other", [])
    brief["other"] = [{**row, "name": unless_telling(row.get("name", ""), catalogue)} for row in others]
    return {
        **document,
        "brief": brief,
        "assumed": [said for said in document.get("assumed", []) if not tells(said, catalogue)],
        "overridden": [row for row in document.get("overridden", []) if row.get("id") != "caution"],
    }


def without_private(part: Any) -> Any:
    """The same without any field that is private, however deep it stands."""
    if isinstance(part, Mapping):
        return {key: without_private(value) for key, value in part.items() if key not in PRIVATE}
    return [without_private(value) for value in part] if isinstance(part, list) else part


def unless_telling(text: str, catalogue: Catalogue) -> str:
    return "" if tells(text, catalogue) else text


def tells(text: str, catalogue: Catalogue) -> bool:
    """Whether a text names a caution of the catalogue or tells of health in other words."""
    if text == "cautions: none":
        return False
    said = " ".join(re.findall(r"[^\W_]+", text.lower()))
    known = (word for c in catalogue.cautions.values() for word in (c.id, c.name, *c.aliases) if word != "expecting")
    plain = (" ".join(re.findall(r"[^\W_]+", word.lower())) for word in known)
    return any(f" {word} " in f" {said} " for word in plain) or any(f" {word}" in f" {said}" for word in TELLING)
