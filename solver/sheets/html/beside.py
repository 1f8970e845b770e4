"""What stands beside a week on its page: a curve's or a comparison's JSON read back as plots, every fault at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.sheets.charts.pairs import FILLS
from setwright.solver.sheets.document.week_reader import kind
from setwright.solver.sheets.html.page import Plots

CURVE: Final = "setwright.curve/1"
COMPARE: Final = "setwright.compare/1"


def plots_of_documents(documents: Sequence[tuple[str, Any]], catalogue: Catalogue) -> Plots:
    """The plots of (place, document); a later curve or comparison takes the place of an earlier one.

    Weeks are named by their goal or their number, never by the words of a brief. Raises UsageFault.
    """
    plots, faults = Plots(), []
    for where, document in documents:
        schema = document.get("schema") if isinstance(document, Mapping) else None
        try:
            if schema == CURVE:
                plots = with_curve(plots, document)
            elif schema == COMPARE:
                plots = with_weeks(plots, document, catalogue)
            else:
                said = f"got {schema!r}" if isinstance(document, Mapping) else f"is {kind(document)}"
                remedy = "write one with `setwright curve` or `compare` and --json"
                faults.append(Fault(where, f"{said}, expected {CURVE!r} or {COMPARE!r}", remedy))
        except (KeyError, TypeError, ValueError, AttributeError) as error:
            faults.append(Fault(where, f"is not whole: {error}", "write it anew with --json"))
    if faults:
        raise UsageFault(faults)
    return plots


def with_curve(plots: Plots, document: Mapping[str, Any]) -> Plots:
    """The week index for each amount of minutes that has a week, with its interval and the bend."""
    rows = [row for row in document["rows"] if row["stimulus"] is not None]
    if not rows:
        raise ValueError("no row has a week")
    at = {row["amount"]: float(row["minutes_given"]) for row in rows}
    return replace(
        plots,
        curve=tuple((float(row["minutes_given"]), float(row["stimulus"])) for row in rows),
        intervals=tuple((float(row["interval"][0]), float(row["interval"][1])) for row in rows),
        bend=None if document["bend"] is None else at[document["bend"]],
    )


def with_weeks(plots: Plots, document: Mapping[str, Any], catalogue: Catalogue) -> Plots:
    """The weekly sets of each muscle that counts, in each week that there is."""
    cases = [case for case in document["cases"] if case["week"] is not None]
    if not 2 <= len(cases) <= len(FILLS):
        raise ValueError(f"{len(cases)} weeks, expected 2 to {len(FILLS)}")
    goals = [str(case["goal"]) for case in cases]
    sets = [{m["muscle"]: m for m in case["week"]["muscles"]} for case in cases]
    rows = tuple(
        (catalogue.muscles[muscle].name, tuple(float(of[muscle]["sets"]) for of in sets))
        for muscle in catalogue.muscles
        if all(muscle in of for of in sets) and any(of[muscle]["emphasis"] != "counted" for of in sets)
    )
    distinct = len(set(goals)) == len(goals)
    return replace(plots, rows=rows, names=tuple(goals if distinct else [f"week {n + 1}" for n in range(len(cases))]))
