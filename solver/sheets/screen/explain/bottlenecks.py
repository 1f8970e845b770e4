"""What keeps each muscle below its band, in sentences and as a document."""

from __future__ import annotations

from typing import Any, assert_never

from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import clock, day_name, listed, muscle_name, some_sets, span, wrapped
from setwright.solver.sheets.screen.edits.differences import broken_words, costs_up, cut_words, effect_document, signed
from setwright.solver.uses.edits.effects import TIME
from setwright.solver.uses.explain.bottlenecks import Bottleneck, Increase

CAUSES = {
    "kit": "Kept there by the kit",
    "time": "Kept there by time",
    "spacing": "Kept there by the days between",
    "cap": "Kept there by a cap",
    "cost": "A further set does not pay",
    "minutes kept": "The goal saves the minutes",
    "open": "Nothing keeps it there",
}


def bottleneck_lines(found: tuple[Bottleneck, ...], resolved: ResolvedBrief, width: int) -> list[str]:
    """Each muscle below its band with what keeps it there."""
    if not found:
        return ["Every muscle that is sought reaches its band."]
    lead = "Muscles below their band, and what keeps them there; one more set was tried wherever it could stand:"
    lines = wrapped(lead, width)
    for bottleneck in found:
        lines += wrapped(f"  {_bottleneck_words(bottleneck, resolved)}", width, "    ")
    return lines


def _bottleneck_words(found: Bottleneck, resolved: ResolvedBrief) -> str:
    """One muscle's bottleneck in a sentence or two."""
    name, band = muscle_name(resolved.catalogue, found.muscle.id), span(found.muscle.low, found.muscle.high)
    return f"{name}: {found.sets:g} of {band} sets. {CAUSES[found.cause]}: {_why(found)}"


def _why(found: Bottleneck) -> str:
    nearest = found.nearest
    if nearest is None:
        return _kit_words(found) if found.cause == "kit" else "no further set of any open exercise is allowed."
    match found.cause:
        case "kit":
            return _kit_words(found)
        case "time":
            return _time_words(found, nearest)
        case "spacing" | "cap":
            return f"{_increase_words(nearest)} is the nearest and breaks {broken_words(nearest.effect)}."
        case "cost":
            return _cost_words(nearest)
        case "minutes kept":
            return f"{_gain_words(nearest)}, but efficiency may leave it out to spend fewer minutes."
        case "open":
            return f"{_gain_words(nearest)}: the week can be improved by hand."
        case _:
            assert_never(found.cause)


def _kit_words(found: Bottleneck) -> str:
    """Which rules exclude the exercises that would train the muscle."""
    excluded = listed(f"{rule} excludes {count}" for rule, count in found.excluded_by)
    return f"no exercise for it is open ({excluded})." if excluded else "no exercise trains it directly."


def _increase_words(increase: Increase) -> str:
    """Standing calf raise on Wednesday at 3 sets, or as a new line of 2 sets."""
    exercise = increase.effect.before.evaluated.resolved.catalogue.exercises[increase.entry.exercise]
    how = f"{'as a new line of' if increase.new else 'at'} {some_sets(increase.entry.sets)}"
    both = ", its partner too" if increase.entry.partner else ""
    return f"{exercise.name} on {day_name(increase.day)} {how}{both}"


def _gain_words(increase: Increase) -> str:
    return f"{_increase_words(increase)} fits and would add {increase.effect.score:.1f} to the score"


def _time_words(found: Bottleneck, nearest: Increase) -> str:
    """By how much the nearest increase passes the day's minutes, and what making room would cost."""
    others = [rule for rule in nearest.rules if rule != TIME]
    also = f" and breaks {listed(others)}" if others else ""
    said = f"{_increase_words(nearest)} is the nearest and needs {clock(nearest.over)} more than the day has{also}"
    if found.room is None:
        return f"{said}; no cut of one other line that day makes room without breaking a rule."
    cut, both = found.room
    verdict = "so the week would be better for it" if both.score > 0 else "so it stays out"
    return f"{said}; with {cut_words(cut)} it would fit, and the score would change by {signed(both.score)}, {verdict}."


def _cost_words(nearest: Increase) -> str:
    """What a set that fits would cost beyond what it gives."""
    effect = nearest.effect
    up = costs_up(effect)
    return (
        f"{_increase_words(nearest)} fits, but adds {signed(effect.stimulus)} to the index and "
        f"{signed(effect.stimulus - effect.score)} in costs{': ' + up if up else ''}."
    )


def bottleneck_document(found: Bottleneck, resolved: ResolvedBrief) -> dict[str, Any]:
    """One muscle below its band as JSON; every difference is after less before."""
    nearest, room = found.nearest, found.room
    return {
        "muscle": found.muscle.id,
        "sets": rounded(found.sets),
        "from": found.muscle.low,
        "held_by": found.cause,
        "open_exercises": found.open_direct,
        "closed_by": [{"rule": rule, "exercises": count} for rule, count in found.excluded_by],
        "sentence": _bottleneck_words(found, resolved),
        "nearest": None if nearest is None else _increase_document(nearest),
        "room": None
        if room is None
        else {"cut": room[0].line.exercise.id, "to_sets": room[0].sets, "does": effect_document(room[1])},
    }


def _increase_document(increase: Increase) -> dict[str, Any]:
    return {
        "day": increase.day.name,
        "exercise": increase.entry.exercise,
        "sets": increase.entry.sets,
        "new_line": increase.new,
        "breaks": [{"rule": rule, "remedy": RULES[rule].remedy} for rule in increase.rules],
        "seconds_over": increase.over,
        "does": effect_document(increase.effect),
    }
