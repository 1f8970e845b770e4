"""The lifts of a client that stand still, told from what the book keeps as `block next` tells it from the audit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.book.at_once.held import Held
from setwright.solver.evaluation.week import Entry
from setwright.solver.log.mondays import monday_of
from setwright.solver.records.week_documents import block_week, kinds_of, week_document
from setwright.solver.sheets.screen.over_time.due import StandingStill
from setwright.solver.uses.progress.in_block import LIGHTER
from setwright.solver.uses.progress.maximum_course import maximum_course
from setwright.solver.uses.progress.stalls import stalled


def standing_still(of: Held, catalogue: Catalogue, today: date) -> tuple[StandingStill, ...]:
    """The lifts of the block's week at hand whose maximum does not rise, each once, in the week's order.

    None outside a block, and where loads are logged in another unit than the client's: they say nothing together.
    """
    monday = monday_of(today)
    if block_week(of.blocks, monday) is None or _other_units(of):
        return ()
    lighter = {starts for starts, kind in kinds_of(of.blocks).items() if kind in LIGHTER}
    sessions = [s for s in of.sessions if s.on <= today and str(monday_of(s.on)) not in lighter]
    found: dict[str, StandingStill] = {}
    for entry in _entries(week_document(of.weeks, of.blocks, monday) or {}, catalogue):
        if entry.exercise not in found:
            window = stalled(maximum_course(sessions, entry, catalogue), catalogue)
            if window:
                name = catalogue.exercises[entry.exercise].name
                found[entry.exercise] = StandingStill(entry.exercise, name, window[0].on)
    return tuple(found.values())


def _entries(week: Mapping[str, Any], catalogue: Catalogue) -> Iterator[Entry]:
    """The lines of a week's document whose exercises are known."""
    for line in (line for day in week.get("days", ()) for line in day.get("entries", ())):
        if line["exercise"] in catalogue.exercises:
            low, high = line["reps"]
            technique = line.get("technique", "straight")
            yield Entry(line["exercise"], line["sets"], (low, high), line["rir"], line["rest_seconds"], technique)


def _other_units(of: Held) -> bool:
    return any(s.unit != of.client.unit and any(done.load is not None for done in s.sets) for s in of.sessions)
