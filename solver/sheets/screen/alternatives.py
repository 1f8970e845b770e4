"""Alternatives as text and JSON: each week, what it has that the first has not, and its cost."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import listed, muscle_name, page_width, wrapped
from setwright.solver.sheets.document.figures import evaluated_part
from setwright.solver.sheets.screen.day_table import day_lines
from setwright.solver.uses.edits.card_swaps import swaps_on_cards

if TYPE_CHECKING:
    from setwright.solver.uses.compare.alternatives import Alternative


def alternatives_documents(found: tuple[Alternative, ...]) -> list[dict[str, Any]]:
    """The alternatives as JSON, best first: a week each, with what sets it apart from the first."""
    return [
        {
            "rank": place,
            "score": rounded(other.audit.score),
            "cost": rounded(other.cost),
            "stimulus_cost": rounded(other.stimulus_cost),
            "seconds_more": other.seconds,
            "distance": rounded(other.distance),
            "gains": list(other.gains),
            "lacks": list(other.lacks),
            "sets_more": [{"muscle": muscle, "sets": rounded(sets)} for muscle, sets in other.muscles],
            **evaluated_part(other.audit),
        }
        for place, other in enumerate(found, 1)
    ]


def alternatives_text(found: tuple[Alternative, ...], asked: int, share: float, width: int = 100) -> str:
    """Each alternative for a coach: its cost and what is other in it, then its days."""
    width = page_width(width)
    parts = [wrapped(_opening(found, asked, share), width)]
    for place, other in enumerate(found, 1):
        evaluated = other.audit.evaluated
        parts.append(_about(place, other, width))
        swaps = swaps_on_cards(other.audit)
        parts += [day_lines(evaluated, day.index, swaps, width) for day in evaluated.resolved.days]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def _opening(found: tuple[Alternative, ...], asked: int, share: float) -> str:
    """How many there are, and what makes a week different."""
    from setwright.solver.search.secondary.distance import LEAST_DISTANCE, LEAST_OTHER

    count = {0: "No other week was", 1: "One other week was"}.get(len(found), f"{len(found)} other weeks were")
    few = f" ({asked} were asked for)" if len(found) < asked else ""
    return (
        f"Alternatives: {count} found{few} whose score is at most {100 * share:g} % of the week index below the first "
        f"week's and that are clearly different: against each week before, however its days are matched, at least "
        f"{100 * LEAST_DISTANCE:g} % of the lines and {100 * LEAST_OTHER:g} % of the exercises are others; exercises "
        "that are worth the same count as one."
    )


def _about(place: int, other: Alternative, width: int) -> list[str]:
    """One alternative's cost and differences."""
    price, *differences = alternative_words(other)
    lines = wrapped(f"Alternative {place}: score {other.audit.score:.1f}, {price}.", width)
    for said in differences:
        lines += wrapped(f"  {said}", width, "    ")
    return lines


def alternative_words(other: Alternative) -> tuple[str, ...]:
    """What an alternative costs, then what it has instead, what it leaves out and whose weekly sets it changes."""
    catalogue = other.audit.evaluated.resolved.catalogue
    names = (("Has instead", other.gains), ("Leaves out", other.lacks))
    found = [f"{word}: {listed(catalogue.exercises[e].name for e in ids)}" for word, ids in names if ids]
    if other.muscles:
        sets = listed(f"{more:+g} {muscle_name(catalogue, m)}" for m, more in other.muscles)
        found.append(f"Weekly sets: {sets}")
    return _price(other), *found


def _price(other: Alternative) -> str:
    """What it costs against the first, in words."""
    cost = round(other.cost, 2)
    score = f"{abs(cost):g} {'below' if cost > 0 else 'above'} the first" if cost else "as good as the first"
    index = round(other.stimulus_cost, 1)
    said = f"week index {other.audit.stimulus:.1f} ({'the same' if not index else f'{-index:+.1f}'})"
    minutes = round(other.seconds / 60)
    time = f", {abs(minutes)} min a week {'more' if minutes > 0 else 'less'}" if minutes else ""
    return f"{score}; {said}{time}; {100 * other.distance:.0f} % of the lines are others than in the first"
