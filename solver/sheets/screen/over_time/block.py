"""A block on screen: its weeks, each lift by week, the weeks away, the rule of progression, what is convention."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setwright.solver.evaluation.resolved_day import MuscleTarget
from setwright.solver.sheets.blocks.notes import day_words, week_note
from setwright.solver.sheets.blocks.words import MARKS_MEAN, cell_words, convention_words, progression_words
from setwright.solver.sheets.common.caution import CAUTION, CLEARANCE, clearance_needed
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import (
    counted,
    day_name,
    listed,
    page_width,
    span,
    weekday_name,
    whole_minutes,
    wrapped,
)
from setwright.solver.sheets.screen.headline import headline
from setwright.solver.sheets.screen.muscle_table import band_words
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.blocks.set_steps import weekly_sets

SAME_LINES = ("build", "lighter", "return", "minimum")
"""Kinds of weeks with the solved week's exercises on its days."""
NAME = 28
"""Letters of a lift's name before it is broken."""
HEADS = {"lighter": " light", "return": " back", "minimum": " min."}
BELOW_BAND = "< below the band; a lighter or minimum week is so on purpose."
LEFT_OUT = "In weeks that are not build weeks the brief's pins, exact lower ends and rules made hard are left out."
BELOW = (
    "The block ends below the solved week: the first week is held near the sets done now, and so many weeks do not "
    "reach it. A block after this one goes on from here."
)


def block_text(block: Block, width: int = 100) -> str:
    """The block for a coach: what was asked, a row for each week, the lifts by week, rules, conventions, caution."""
    width = page_width(width)
    brief, resolved = block.parsed.brief, block.base.evaluated.resolved
    parts = [
        wrapped(CLEARANCE, width) if clearance_needed(brief, resolved.catalogue) else [],
        wrapped(f"{headline(resolved)}; {counted(len(block.weeks), 'week')}", width),
        _weeks(block, width),
        *_lifts(block, width),
        *_muscles(block, width),
        *(_away(week) for week in block.weeks if week.kind in ("travel", "short")),
        wrapped(f"Progression: {progression_words(resolved.catalogue)}", width),
        [line for said in _remarks(block) for line in wrapped(said, width)],
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _remarks(block: Block) -> Iterator[str]:
    if block.below_base:
        yield BELOW
    if any(week.wishes_left for week in block.weeks):
        yield LEFT_OUT
    yield from convention_words(block)


def _weeks(block: Block, width: int) -> list[str]:
    """One row for each week."""
    dated = block.weeks[0].starts is not None
    rows = []
    for week in block.weeks:
        starts = [day_words(week.starts)] if week.starts else []
        minutes = " ".join(str(whole_minutes(seconds)) for seconds in week.seconds)
        rirs = span(week.rirs[0], week.rirs[-1]) if week.rirs else ""
        sets = str(week.sets) if week.sets else ""
        rows.append([str(week.number), *starts, week.kind, sets, minutes, rirs, week_note(block, week)])
    heads = ["Week", *(["Starts"] if dated else []), "Kind", "Sets", "Minutes", "RIR", "Note"]
    sides = f"r{'l' if dated else ''}lrlll"
    taken = sum(max(len(row[place]) for row in (heads, *rows)) + 2 for place in range(len(heads) - 1))
    return grid(heads, rows, sides, [*(None,) * (len(heads) - 1), max(16, width - taken)])


def _lifts(block: Block, width: int) -> Iterator[list[str]]:
    """Sets x repetitions @ load of each lift by week, as many weeks beside each other as the page holds."""
    weeks = [week for week in block.weeks if week.kind in SAME_LINES]
    said = [cell for week in weeks for cell in _cells(week).values()]
    widest = max([8, *(len(cell) for cell in said)]) + 2
    fit = max(1, (width - NAME - 7) // widest)
    for first in range(0, len(weeks), fit):
        yield _lift_table(weeks[first : first + fit])
    marks = {cell[-1] for cell in said}
    unit = block.parsed.brief.client.unit
    loads = [f"@ the load in {unit}"] if any("@" in cell for cell in said) else []
    meant = [f"{mark} {what}" for mark, what in MARKS_MEAN.items() if mark in marks]
    yield wrapped("; ".join(["sets x repetitions of each set", *loads, *meant]), width)


def _lift_table(weeks: Sequence[BlockWeek]) -> list[str]:
    first = weeks[0].evaluated
    assert first is not None
    cells = [_cells(week) for week in weeks]
    rows = []
    for day in first.on:
        for line in day:
            here = (line.day.index, line.place)
            name = day_name(line.day) if line.day.weekday is None else line.day.weekday.capitalize()
            rows.append([name if not line.place else "", line.exercise.name, *(found[here] for found in cells)])
    heads = ["", "Lift", *(_head(week) for week in weeks)]
    return grid(heads, rows, "l" * len(heads), [None, NAME, *(None,) * len(weeks)])


def _head(week: BlockWeek) -> str:
    return f"{week.number}{HEADS.get(week.kind, '')}"


def _muscles(block: Block, width: int) -> Iterator[list[str]]:
    """Each muscle's weekly sets by week beside its band; a week below it is marked."""
    weeks = [week for week in block.weeks if week.evaluated is not None]
    sets = [weekly_sets(week.evaluated.resolved, week.evaluated.week) for week in weeks if week.evaluated]
    resolved = block.base.evaluated.resolved
    fit = max(1, (width - 26) // 9)
    for first in range(0, len(weeks), fit):
        rows = [
            [resolved.catalogue.muscles[m.id].name, band_words(m), *(_sets(m, found[m.id]) for found in here)]
            for here in [sets[first : first + fit]]
            for m in resolved.muscles.values()
            if any(found[m.id] for found in here) and m.weight
        ]
        heads = ["Weekly sets", "Band", *(_head(week) for week in weeks[first : first + fit])]
        yield grid(heads, rows, "lr" + "r" * (len(heads) - 2))
    yield wrapped(BELOW_BAND, width)


def _sets(muscle: MuscleTarget, sets: float) -> str:
    """8.5, or 3< where the band begins higher."""
    return f"{sets:g}{'<' if sets < muscle.low else ' '}"


def _cells(week: BlockWeek) -> dict[tuple[int, int], str]:
    """(day, place) -> what is planned there."""
    assert week.evaluated is not None
    return {
        (line.day.index, line.place): cell_words(line.sets, target, line.exercise)
        for day, targets in zip(week.evaluated.on, week.targets, strict=True)
        for line, target in zip(day, targets, strict=True)
    }


def _away(week: BlockWeek) -> list[str]:
    """The sessions of a week that is not as usual."""
    assert week.evaluated is not None
    cells, table = _cells(week), []
    for day in week.evaluated.on:
        for line in day:
            name = weekday_name(line.day.weekday) if line.day.weekday else day_name(line.day)
            here = (line.day.index, line.place)
            table.append([name if not line.place else "", line.exercise.name, cells[here]])
    title = f"Week {week.number}, {week.kind}: {listed(str(whole_minutes(s)) for s in week.seconds)} min"
    return [title, *grid(["", "Lift", "Planned"], table, "lll")]
