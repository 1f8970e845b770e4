"""Lifts that do not move, what to try in order, and the estimated maximum drawn over the sessions."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.catalogue.entries import Catalogue
from setwright.solver.sheets.charts.charts import ChartStyle, maximum_chart
from setwright.solver.sheets.common.words import listed, page_width, wrapped
from setwright.solver.sheets.screen.progress.amounts import built_words, day_month
from setwright.solver.sheets.screen.progress.next_table import left_more
from setwright.solver.uses.progress.maximum_course import MaximumEstimate
from setwright.solver.uses.progress.stalls import Stall

EFFORT = {
    "easier": "The sets left more than was asked for: go closer to it first.",
    "as-asked": "The sets left what was asked for.",
    "harder": "The sets left fewer than was asked for: stop earlier first.",
    "unsaid": "The log does not say what was left: write it down for two weeks.",
}
SETS = {
    "more": "Its muscle is under its band: do one set more a week.",
    "fewer": "Its muscle is over its band: do one or two sets fewer a week.",
    "either": "Its muscle is inside its band: do fewer sets for two weeks, then one more than before.",
}


def stalls_text(stalls: Sequence[Stall], catalogue: Catalogue, unit: str, width: int = 100) -> str:
    """Each stalled lift with what to try in order; a sentence where there is none."""
    width = page_width(width)
    if not stalls:
        return (
            "\n".join(wrapped(f"No lift stands still, as far as the log tells. {_definition(catalogue)}", width)) + "\n"
        )
    lines: list[str] = []
    for stall in stalls:
        lines += _stall_lines(stall, catalogue, unit, width)
    said = stall_note(catalogue)
    return "\n".join([*lines, "", *wrapped(said, width)]) + "\n"


def _stall_lines(stall: Stall, catalogue: Catalogue, unit: str, width: int) -> list[str]:
    """The lift and its numbers, then a numbered line for each thing to try."""
    head, advice = stall_words(stall, catalogue, unit)
    lines = wrapped(head, width)
    for place, said in enumerate(advice, 1):
        lines += wrapped(f"  {place}. {said}", width, "     ")
    return lines


def stall_words(stall: Stall, catalogue: Catalogue, unit: str) -> tuple[str, list[str]]:
    """The lift with its numbers as a sentence, and a sentence for each thing to try, in order."""
    exercise = catalogue.exercises[stall.exercise]
    first, last = stall.course[0], stall.course[-1]
    head = (
        f"{exercise.name}: estimated maximum {first.value:.0f} {unit} on {day_month(stall.since)}, "
        f"{last.value:.0f} {unit} ({last.low:.0f} to {last.high:.0f}) on {day_month(stall.until)}, "
        f"in {len(stall.course)} sessions."
    )
    back = "" if stall.back_to is None else built_words(stall.back_to, unit, exercise)
    others = listed((catalogue.exercises[other].name.lower() for other in stall.others), "or")
    said = {
        "sleep-and-effort": f"Ask how sleep, food and the weeks outside the gym went. {EFFORT[stall.effort]}",
        "load-back": f"Take the load back to {back} and build up again.",
        "another-lift": f"Do another lift of the same kind for some weeks: {others}.",
        "change-sets": SETS[stall.sets],
    }
    return head, [said[advice] for advice in stall.advice]


def stall_note(catalogue: Catalogue) -> str:
    """What counts as a stall, and how far what is left is misjudged."""
    return f"{_definition(catalogue)} {left_more(catalogue)}"


def _definition(catalogue: Catalogue) -> str:
    """What counts as a stall here."""
    sessions, days = catalogue.number("stall-exposures"), catalogue.number("stall-days")
    return (
        f"A lift stands still where in {sessions:g} sessions or more over {days:g} days or more its best estimated "
        "maximum of the later half is less than half a repetition above that of the earlier half (convention)."
    )


def drawn_maximum(course: Sequence[MaximumEstimate], name: str, unit: str, key: str = "maximum") -> str:
    """The estimated maximum of a lift over the days as SVG, each estimate with its interval; `key` leads its ids."""
    first = course[0].on
    points = [((one.on - first).days, one.value, one.low, one.high) for one in course]
    return maximum_chart(points, name, unit, day_month(first), ChartStyle(key=key))
