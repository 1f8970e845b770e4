"""A block's document as the page lays it out: weeks in a row, lifts by session, muscles, the weeks away."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.sheets.blocks.words import reps_words
from setwright.solver.sheets.common.loads.load_words import FIND_IT, load_on_a_line
from setwright.solver.sheets.common.words import session_name
from setwright.solver.uses.blocks.targets import Target

SAME_LINES: Final = ("build", "lighter", "return", "minimum")
"""Kinds of weeks with the solved week's lines."""


UNKNOWN: Final[Mapping[str, str]] = {
    "find": FIND_IT,
    "next": "next load",
    "lighter": "lighter",
    "top": "top of the range",
}
"""Step of a lift whose load is not known -> what stands in the place of the load."""


@dataclass(frozen=True)
class Cell:
    """One lift in one week: 3 x 9 and under it 60 kg, or what is said where no load is known."""

    sets: str
    load: str


@dataclass(frozen=True)
class Row:
    """One lift with a cell a week; `session` is said once, on the session's first lift, with how many it has."""

    session: str
    lifts: int
    lift: str
    cells: tuple[Cell, ...]


def lift_rows(document: Mapping[str, Any], weeks: Sequence[Mapping[str, Any]], catalogue: Catalogue) -> list[Row]:
    """The lifts of some weeks that share their lines, session by session."""
    rows = []
    for day, session in enumerate(weeks[0]["days"] if weeks else ()):
        for place, line in enumerate(session["entries"]):
            cells = tuple(_cell(w["days"][day]["entries"][place], document["unit"], catalogue) for w in weeks)
            said = session_name(session["weekday"], day) if not place else ""
            rows.append(Row(said, len(session["entries"]), line["name"], cells))
    return rows


def same_weeks(document: Mapping[str, Any]) -> list[Mapping[str, Any]]:
    """The weeks with the solved week's lines."""
    return [week for week in document["weeks"] if week["kind"] in SAME_LINES]


def away_weeks(document: Mapping[str, Any]) -> list[Mapping[str, Any]]:
    """The weeks of other lines than the solved week's."""
    return [week for week in document["weeks"] if week["kind"] in ("travel", "short")]


def muscle_rows(document: Mapping[str, Any], catalogue: Catalogue) -> list[tuple[str, str, list[tuple[str, bool]]]]:
    """(muscle, its band, (sets, whether below the band) of each week with sessions) of the muscles that are sought."""
    weeks = [week for week in document["weeks"] if week["days"]]
    by_muscle: dict[str, list[Mapping[str, Any]]] = {}
    for week in weeks:
        for part in week["muscles"]:
            by_muscle.setdefault(part["muscle"], []).append(part)
    return [
        (catalogue.muscles[muscle].name, _band(parts[0]["band"]), [_sets(part) for part in parts])
        for muscle, parts in by_muscle.items()
        if parts[0]["band"] and any(part["sets"] for part in parts)
    ]


def _cell(line: Mapping[str, Any], unit: str, catalogue: Catalogue) -> Cell:
    exercise, said = catalogue.exercises[line["exercise"]], line["target"]
    target = Target(said["reps"], said["load"], said["step"])
    if target.load is not None:
        load = load_on_a_line(target.load, unit, exercise)
    else:
        load = UNKNOWN.get(target.step, "") if exercise.has_load else ""
    return Cell(f"{line['sets']} x {reps_words(target, exercise)}", load)


def _band(band: Sequence[float | None]) -> str:
    low, high = band
    return f"{low:g} or more" if high is None else f"{low:g} to {high:g}"


def _sets(part: Mapping[str, Any]) -> tuple[str, bool]:
    return f"{part['sets']:g}", part["band"] is not None and part["sets"] < part["band"][0]
