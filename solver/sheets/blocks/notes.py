"""Why a week of a block is as it is, in one line."""

from __future__ import annotations

from datetime import date

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.sheets.blocks.words import off_words
from setwright.solver.sheets.common.words import counted, listed, muscle_name
from setwright.solver.uses.blocks.ask import Short, Span, Travel
from setwright.solver.uses.blocks.block import Block, BlockWeek
from setwright.solver.uses.blocks.set_steps import weekly_sets

NAMED = 3
"""Muscles that a build week names as those that gain most."""


def week_note(block: Block, week: BlockWeek) -> str:
    """The note of one week of the block."""
    catalogue = block.base.evaluated.resolved.catalogue
    numbers = catalogue.defaults.block
    if week.kind == "off":
        return "no sessions"
    if week.kind == "lighter":
        return f"same exercises, fewer sets, {100 * (1 - numbers.lighter_load):.0f} % less load"
    if week.kind == "return":
        return f"{off_words(week.place.weeks_off)}: fewer sets, lighter"
    if week.kind == "minimum":
        return "1-2 sets a lift, load kept"
    if week.kind == "build":
        return _build_note(block, week, catalogue)
    return "; ".join(_span_words(span, catalogue) for span in week.place.spans)


def _build_note(block: Block, week: BlockWeek, catalogue: Catalogue) -> str:
    """What changed since the build week before; the last one is the solved week."""
    before = [other for other in block.weeks if other.kind == "build" and other.number < week.number]
    if not before:
        more = block.below(week)
        return f"{counted(more, 'set')} below the solved week" if more else "the solved week"
    earlier, now = before[-1], week
    assert earlier.evaluated is not None and now.evaluated is not None
    if now.sets == earlier.sets:
        return "sets as before"
    old = weekly_sets(earlier.evaluated.resolved, earlier.evaluated.week)
    new = weekly_sets(now.evaluated.resolved, now.evaluated.week)
    gained = sorted((m for m in new if new[m] > old[m]), key=lambda m: (old[m] - new[m], m))[:NAMED]
    if now.sets < earlier.sets:
        return "climbing anew after the break"
    return f"{counted(now.sets - earlier.sets, 'set')} more: {listed(muscle_name(catalogue, m) for m in gained)}"


def _span_words(span: Span, catalogue: Catalogue) -> str:
    """hotel gym Wed 21 to Fri 30 Jan, 2 x 25 min."""
    when = _dates(span.first, span.last)
    sessions = getattr(span, "sessions", None)
    each = f", {sessions.count} x {sessions.minutes} min" if sessions else ""
    if isinstance(span, Travel):
        names = (catalogue.kits[w].name if w in catalogue.kits else catalogue.items[w].name.lower() for w in span.kit)
        return f"{listed(names)} {when}{each}"
    return f"{when}{each}" if isinstance(span, Short) else f"off {when}"


def _dates(first: date, last: date) -> str:
    return day_words(first) if first == last else f"{day_words(first)} to {day_words(last)}"


def day_words(day: date) -> str:
    """Wed 21 Jan, whatever the language of the machine."""
    return f"{WEEKDAYS[day.weekday()].capitalize()} {day.day} {MONTHS[day.month - 1]}"


MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
