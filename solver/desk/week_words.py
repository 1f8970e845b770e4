"""The words of a week's document that all pages of the desk share, as filters of their templates."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.sheets.common.words import dose, session_name


def week_filters(catalogue: Catalogue) -> dict[str, Callable[..., Any]]:
    """Name -> filter: what a line asks for (3 x 8-12, 3 x 30-45 s), and a session by its day or its number."""

    def line_dose(line: Mapping[str, Any]) -> str:
        low, high = line["reps"]
        return dose(line["sets"], (low, high), catalogue.exercises[line["exercise"]])

    def name_of_session(session: Mapping[str, Any], place: int) -> str:
        return session_name(session["weekday"], place)

    return {"dose": line_dose, "session_name": name_of_session}
