"""What stands beside a week on its page: a curve's or a comparison's JSON read back as plots, every fault at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Annotated, Any, Final, Literal

from pydantic import AfterValidator, Field, ValidationError

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.fault_words import shown
from setwright.solver.brief.validation_faults import model_faults, refusal
from setwright.solver.sheets.charts.pairs import FILLS
from setwright.solver.sheets.document.week_fields import Many, Part
from setwright.solver.sheets.html.page import Plots

CURVE: Final = "setwright.curve/1"
COMPARE: Final = "setwright.compare/1"
WRITE_ONE: Final = "name a curve or a comparison that setwright wrote as JSON"


class CurveRow(Part):
    """One amount of minutes; week index and interval null where it has no week."""

    amount: int
    minutes_given: int
    stimulus: float | None
    interval: Annotated[Many[float], Field(min_length=2, max_length=2)] | None


def _with_weeks(rows: tuple[CurveRow, ...]) -> tuple[CurveRow, ...]:
    found = tuple(row for row in rows if row.stimulus is not None and row.interval is not None)
    if not found:
        raise refusal("no row has a week", WRITE_ONE)
    return found


class CurveFile(Part):
    """What is read of a curve: its rows that have a week, and the amount at its bend."""

    rows: Annotated[Many[CurveRow], AfterValidator(_with_weeks)]
    bend: int | None


class ComparedMuscle(Part):
    """A muscle's weekly sets in one week."""

    muscle: str
    sets: float
    emphasis: str


class ComparedWeek(Part):
    """One week of a comparison."""

    muscles: Many[ComparedMuscle]


class ComparedCase(Part):
    """One brief of a comparison and its week; null where it has none."""

    goal: Literal["growth", "efficiency", "balanced"]
    week: ComparedWeek | None


def _as_many_as_are_drawn(cases: tuple[ComparedCase, ...]) -> tuple[ComparedCase, ...]:
    found = tuple(case for case in cases if case.week is not None)
    if not 2 <= len(found) <= len(FILLS):
        raise refusal(f"{len(found)} weeks, expected 2 to {len(FILLS)}", WRITE_ONE)
    return found


class CompareFile(Part):
    """What is read of a comparison: its cases that have a week."""

    cases: Annotated[Many[ComparedCase], AfterValidator(_as_many_as_are_drawn)]


def plots_of_documents(documents: Sequence[tuple[str, Any]], catalogue: Catalogue) -> Plots:
    """The plots of (place, document); a later curve or comparison takes the place of an earlier one.

    Weeks are named by their goal or their number, never by the words of a brief. Raises UsageFault.
    """
    plots, faults = Plots(), []
    for where, document in documents:
        schema = document.get("schema") if isinstance(document, Mapping) else None
        if schema not in (CURVE, COMPARE):
            said = f"got {shown(schema)}" if isinstance(document, Mapping) else f"is {shown(document)}"
            faults.append(Fault(where, f"{said}, expected {CURVE!r} or {COMPARE!r}", WRITE_ONE))
            continue
        model = CurveFile if schema == CURVE else CompareFile
        try:
            found = model.model_validate(document)
        except ValidationError as error:
            faults += model_faults(error, model, document, where)
            continue
        if isinstance(found, CurveFile):
            faults += _bend_faults(found, where)
            plots = _with_curve(plots, found)
        else:
            plots = _with_weeks_of(plots, found, catalogue)
    if faults:
        raise UsageFault(faults)
    return plots


def _bend_faults(curve: CurveFile, where: str) -> list[Fault]:
    amounts = [row.amount for row in curve.rows]
    if curve.bend is None or curve.bend in amounts:
        return []
    said = f"got {curve.bend}, expected the amount of a row that has a week ({', '.join(map(str, amounts))}) or null"
    return [Fault(f"{where}: bend", said, WRITE_ONE)]


def _with_curve(plots: Plots, curve: CurveFile) -> Plots:
    """The week index for each amount of minutes that has a week, with its interval and the bend."""
    rows = [(row, row.stimulus, row.interval) for row in curve.rows]
    at = {row.amount: float(row.minutes_given) for row in curve.rows}
    return replace(
        plots,
        curve=tuple((float(row.minutes_given), index) for row, index, _ in rows if index is not None),
        intervals=tuple((ends[0], ends[1]) for _, _, ends in rows if ends is not None),
        bend=None if curve.bend is None else at.get(curve.bend),
    )


def _with_weeks_of(plots: Plots, compared: CompareFile, catalogue: Catalogue) -> Plots:
    """The weekly sets of each muscle that counts, in each week that there is."""
    goals = [case.goal for case in compared.cases]
    weeks = [{m.muscle: m for m in case.week.muscles} for case in compared.cases if case.week is not None]
    rows = tuple(
        (catalogue.muscles[muscle].name, tuple(week[muscle].sets for week in weeks))
        for muscle in catalogue.muscles
        if all(muscle in week for week in weeks) and any(week[muscle].emphasis != "counted" for week in weeks)
    )
    distinct = len(set(goals)) == len(goals)
    names: Sequence[str] = goals if distinct else [f"week {n + 1}" for n in range(len(goals))]
    return replace(plots, rows=rows, names=tuple(names))
