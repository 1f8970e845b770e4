"""What the pages of trade-offs draw and tabulate of their documents."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from markupsafe import Markup

from setwright.catalogue.entries import Catalogue
from setwright.solver.desk.searches.found import is_theirs
from setwright.solver.sheets.charts.charts import curve_chart, side_by_side
from setwright.solver.sheets.charts.drawing import number
from setwright.solver.sheets.charts.pairs import FILLS
from setwright.solver.sheets.charts.season import chart_of_document
from setwright.solver.sheets.html.beside import plots_of_documents

Document = Mapping[str, Any]
KINDS: Final = {
    "lifting": "Lifting",
    "resting": "Resting",
    "ramp_up": "Ramp-up sets",
    "change_over": "Change-over",
    "warm_up": "Warm-up",
}


def filters(catalogue: Catalogue) -> dict[str, Callable[..., Any]]:
    """Name -> filter of the templates."""

    def pairs_svg(document: Document) -> Markup:
        if not 1 < len(solved(document)) <= len(FILLS):
            return Markup("")
        plots = plots_of_documents([("compare", document)], catalogue)
        return Markup(side_by_side(plots.rows, plots.names))

    def muscle_name(muscle: str) -> str:
        return catalogue.muscles[muscle].name

    return {
        "pairs_svg": pairs_svg,
        "curve_svg": lambda document: curve_svg(document, catalogue),
        "season_svg": lambda document: Markup(chart_of_document(document, catalogue)),
        "muscle_name": muscle_name,
        "compare_facts": compare_facts,
        "compare_muscles": compare_muscles,
        "solved_cases": solved,
        "is_theirs": is_theirs,
    }


def curve_svg(document: Document, catalogue: Catalogue) -> Markup:
    """The curve with its intervals and bend; nothing while no point has a week."""
    if all(row["stimulus"] is None for row in document["rows"]):
        return Markup("")
    plots = plots_of_documents([("curve", document)], catalogue)
    return Markup(curve_chart(plots.curve, plots.bend, intervals=plots.intervals))


def solved(document: Document) -> list[Document]:
    """The cases of a comparison that have a week."""
    return [case for case in document["cases"] if case["week"] is not None]


def compare_facts(document: Document) -> list[tuple[str, list[str]]]:
    """What each week is worth and takes: (what, one text for each case that has a week)."""
    cases = solved(document)
    weeks = [case["week"] for case in cases]
    rows = [
        ("Week index", [f"{week['stimulus']:.1f}" for week in weeks]),
        ("Interval of the index", [f"{week['interval'][0]} to {week['interval'][1]}" for week in weeks]),
        ("Given up, points", [f"{week['stimulus'] - week['score']:.1f}" for week in weeks]),
        ("Minutes a week", [str(case["minutes"]) for case in cases]),
        ("Minutes a session", [" ".join(map(str, case["session_minutes"])) for case in cases]),
        *((name, [f"{case['seconds_by_kind'][kind] / 60:.0f} min" for case in cases]) for kind, name in KINDS.items()),
        ("Sets", [str(case["sets"]) for case in cases]),
        ("Exercises", [str(case["exercises"]) for case in cases]),
        ("Index per minute", [_share(case["index_per_minute"]) for case in cases]),
        ("Proven gap, points", ["none" if week["gap"] is None else f"{week['gap']:.1f}" for week in weeks]),
    ]
    return [(name, cells) for name, cells in rows if any(cell != "0 min" for cell in cells)]


def compare_muscles(document: Document) -> list[dict[str, Any]]:
    """For each muscle that any week trains: its sets, index and interval in each, and whether the sets differ."""
    tables = [{muscle["muscle"]: muscle for muscle in case["week"]["muscles"]} for case in solved(document)]
    found = []
    for muscle in dict.fromkeys(name for table in tables for name in table):
        cells = [table.get(muscle) for table in tables]
        sets = [0.0 if cell is None else cell["sets"] for cell in cells]
        if any(sets):
            found.append(
                {"muscle": muscle, "cells": cells, "sets": [number(s) for s in sets], "same": len(set(sets)) == 1}
            )
    return found


def _share(value: float | None) -> str:
    return "" if value is None else f"{value:.2f}"
