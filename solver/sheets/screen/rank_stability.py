"""How sure an order of weeks is, in words and as numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.planning import Solved
from setwright.solver.sheets.common.words import listed
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.document.solved_week import UNPROVEN

if TYPE_CHECKING:
    from setwright.solver.uses.compare.comparison import Compared
    from setwright.solver.uses.compare.rank_stability import Step
    from setwright.solver.uses.compare.sensitivity import Turn

LESS_MORE = {
    "rest": "rest between sets mattered {by} {way}",
    "effort": "stopping short of failure cost {by} {way}",
    "session": "a session held {by} {way} of a muscle's sets before they count less",
    "flattening": "the exponent of weekly sets were {by} {way}",
    "indirect": "an indirect set counted {by} {way}",
    "drops": "a drop counted {by} {way}",
}
"""How each knob's turn is said."""
NEAREST = 2
"""Turns named in one sentence; the document has them all."""


def order_words(compared: Compared) -> list[str]:
    """The share of draws in which the order holds; for each step what alone would turn it."""
    if compared.order is None:
        if len(compared.solved) > 1:
            return ["How sure: the briefs weigh the muscles differently, so their week indices have no order."]
        return []
    order = compared.order
    places = [i for i, _ in compared.solved]
    names = [compared.cases[places[i]].label for i in order.ranked]
    said = []
    if len(order.steps) > 1:
        said.append(
            f"How sure: the order {', '.join(names)} holds in {share(order.share)} of {order.draws:,} draws of all "
            "numbers together over their published ranges."
        )
    for step in order.steps:
        said.append(step_words(compared, step, places, order.draws if len(order.steps) == 1 else None))
    return said


def step_words(compared: Compared, step: Step, places: list[int], draws: int | None) -> str:
    """One step of the order."""
    higher, lower = places[step.higher], places[step.lower]
    first, second = compared.cases[higher].label, compared.cases[lower].label
    counted = f" of {draws:,} draws of all numbers together over their published ranges" if draws else ""
    lead = "How sure: " if draws else "  "
    begin = (
        f"{lead}{first} over {second} (by {step.difference:.1f}) holds in {share(step.share)}{counted or ' of them'}"
    )
    open_gap = max(gap(compared, higher), gap(compared, lower))
    hidden = (
        f" The searches left up to {open_gap:.1f} points open, more than that: a longer search may change it."
        if step.difference < open_gap
        else ""
    )
    return f"{begin}; {turn_words(step.turns)}.{hidden}"


def gap(compared: Compared, place: int) -> float:
    """What the search of one case left open, in index points."""
    end = compared.ends[place]
    return end.gap if isinstance(end, Solved) and end.bound < UNPROVEN else 0.0


def share(value: float) -> str:
    """A share of draws: never 100 % of a thing that is not certain."""
    return "all" if value >= 1.0 else f"{min(99.0, 100 * value):.0f} %"


def turn_words(turns: tuple[Turn, ...]) -> str:
    """What alone would turn the order, the nearest first."""
    able = [turn for turn in turns if turn.factor is not None]
    if not able:
        return "no number alone turns it, moved up to ten-fold within what it can mean"
    return f"it would turn if {listed((one_turn(turn) for turn in able[:NEAREST]), 'or if')}"


def one_turn(turn: Turn) -> str:
    """One knob's turn: by how much, from what to what, inside its published range or not."""
    factor = turn.factor or 1.0
    way = "more" if factor > 1 else "less"
    if turn.knob.name in ("session", "flattening"):
        way = "higher" if factor > 1 else "lower"
    if turn.knob.name == "session":
        way = "more" if factor > 1 else "fewer"
    said = LESS_MORE[turn.knob.name].format(by=by(factor), way=way)
    moved = listed(f"{value:g}" for value in turn.values), listed(f"{value * factor:.3g}" for value in turn.values)
    where = "inside" if turn.inside else "outside"
    return f"{said} ({moved[1]} instead of {moved[0]}, {where} the published range)"


def by(factor: float) -> str:
    """A factor in words: in hundredths when near 1, else so many times."""
    ratio = factor if factor > 1 else 1.0 / factor
    if ratio < 1.5:
        return f"{100 * abs(factor - 1.0):.0f} %"
    return f"{ratio:.1f} times"


def order_document(compared: Compared) -> dict[str, Any] | None:
    """The order, its shares, each step's turns and both ends of every number alone."""
    order = compared.order
    if order is None:
        return None
    places = [i for i, _ in compared.solved]
    return {
        "ranked": [places[i] for i in order.ranked],
        "share": rounded(order.share),
        "draws": order.draws,
        "steps": [
            {
                "higher": places[step.higher],
                "lower": places[step.lower],
                "difference": rounded(step.difference),
                "share": rounded(step.share),
                "numbers": [turn_document(turn) for turn in step.turns],
                "words": step_words(compared, step, places, order.draws).removeprefix("How sure: "),
            }
            for step in order.steps
        ],
        "words": order_words(compared),
    }


def turn_document(turn: Turn) -> dict[str, Any]:
    """One knob: the difference at its published ends, and where the order turns."""
    factor = turn.factor
    return {
        "numbers": list(turn.knob.keys),
        "values": list(turn.values),
        "difference_at_ends": list(turn.at_ends),
        "turns_at": None if factor is None else [rounded(v * factor) for v in turn.values],
        "factor": None if factor is None else rounded(factor),
        "inside_published_range": turn.inside,
    }
