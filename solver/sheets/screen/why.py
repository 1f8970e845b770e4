"""Why a week is as it is, in words and as a document: a reason for each line, and what holds the muscles below."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.addresses import address
from setwright.solver.sheets.common.choices import why
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import clock, day_name, held, muscle_name, span, wrapped
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.screen.changes import (
    broken_words,
    costs_up,
    cut_words,
    effect_document,
    muscle_moves,
    signed,
)
from setwright.solver.sheets.screen.week_table import labels
from setwright.solver.uses.explain.bottlenecks import Held, Trial
from setwright.solver.uses.explain.reasons import Reason

SCHEMA = "setwright.why/1"
HOW = (
    "By exact reckoning: each line is taken out, the rest is left as it is, and the week is audited again. "
    "Index is what the week index loses, Costs what comes up, Score both together, Frees the time."
)
HOLDS = {
    "kit": "Held by kit",
    "time": "Held by time",
    "spacing": "Held by spacing",
    "cap": "Held by a cap",
    "cost": "A further set does not pay",
    "minutes kept": "The goal keeps the minutes",
    "open": "Nothing holds it",
}


def why_text(audited: Audit, reasons: tuple[Reason, ...], holds: tuple[Held, ...] | None, width: int) -> str:
    """The reasons for a coach, day by day; `holds` None leaves the muscles out."""
    width = held(width)
    days = sorted({r.line.day.index for r in reasons})
    parts = [wrapped(HOW, width)]
    parts += [day_lines(audited, [r for r in reasons if r.line.day.index == day], width) for day in days]
    if holds is not None:
        parts.append(hold_lines(holds, width))
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def day_lines(audited: Audit, reasons: list[Reason], width: int) -> list[str]:
    """One day's table, then what each line's loss would mean in words."""
    evaluated = audited.evaluated
    catalogue = evaluated.resolved.catalogue
    day = reasons[0].line.day
    marks = labels(evaluated, day.index)
    table, told = [], []
    for r in reasons:
        mark, e = marks[r.line.place], r.effect
        numbers = [signed(e.stimulus), signed(e.stimulus - e.score), signed(e.score), clock(max(0, -e.seconds))]
        table.append([mark, r.line.exercise.name, muscle_name(catalogue, r.muscle), *numbers])
        told += wrapped(f"{mark}  {sentence(r)}", width, "   ")
    widest = [None, max(16, width - 58), None, None, None, None, None]
    headings = ["", "Exercise", "Serves most", "Index", "Costs", "Score", "Frees"]
    return [day_name(day), *grid(headings, table, "lllrrrr", widest), *told]


def sentence(reason: Reason) -> str:
    """What goes and what comes up without a line, or that the week is better without it."""
    effect = reason.effect
    parts = [f"without it {muscle_moves(effect) or 'no index moves by half a point'}"]
    if reason.line.entry.partner is not None:
        parts.append("its partner goes on alone")
    if costs := costs_up(effect):
        parts.append(f"comes up: {costs}")
    if effect.broken:
        parts.append(f"would break {broken_words(effect)}")
    elif effect.score > 0:
        parts.append("the week scores more without it")
    return "; ".join(parts)


# ---- muscles below their band


def hold_lines(holds: tuple[Held, ...], width: int) -> list[str]:
    """Each muscle below its band with what holds it there."""
    if not holds:
        return ["Every muscle that is sought reaches its band."]
    lines = wrapped("Below the band, and what holds it; one more set was tried wherever it could stand:", width)
    for hold in holds:
        lines += wrapped(f"  {hold_words(hold)}", width, "    ")
    return lines


def hold_words(hold: Held) -> str:
    """One muscle's hold in a sentence or two."""
    lead = f"{hold.name}: {hold.sets:g} of {span(hold.muscle.low, hold.muscle.high)} sets. {HOLDS[hold.hold]}: "
    match hold.hold:
        case "kit":
            return lead + kit_words(hold)
        case "time":
            return lead + time_words(hold)
        case "spacing" | "cap":
            return lead + rule_words(hold)
        case "cost":
            return lead + cost_words(hold)
        case "minutes kept":
            saved = "but efficiency may leave it out to spend fewer minutes"
            return f"{lead}{fits(hold)} and would add {score_of(hold)}, {saved}."
    return f"{lead}{fits(hold)} and would add {score_of(hold)}: the week can be bettered by hand."


def score_of(hold: Held) -> str:
    return f"{hold.trial.effect.score:.1f} to the score" if hold.trial else ""


def kit_words(hold: Held) -> str:
    """Which rules close the exercises that would train it."""
    closed = ", ".join(f"{rule} closes {count}" for rule, count in hold.closed)
    return f"no exercise for it is open ({closed})." if closed else "no exercise trains it directly."


def trial_words(trial: Trial) -> str:
    """Standing calf raise on Wednesday at 3 sets, or as a new line of 2 sets."""
    exercise = trial.effect.before.evaluated.resolved.catalogue.exercises[trial.entry.exercise]
    how = f"as a new line of {trial.entry.sets} sets" if trial.new else f"at {trial.entry.sets} sets"
    both = ", its partner too" if trial.entry.partner else ""
    return f"{exercise.name} on {day_name(trial.day)} {how}{both}"


def fits(hold: Held) -> str:
    return f"{trial_words(hold.trial)} fits" if hold.trial else ""


def time_words(hold: Held) -> str:
    """By how much the nearest try passes the day's minutes, and what making room would cost."""
    trial = hold.trial
    if trial is None:
        return ""
    others = [rule for rule in trial.rules if rule != "day-minutes"]
    also = f" and breaks {', '.join(others)}" if others else ""
    said = f"{trial_words(trial)} is the nearest and needs {clock(trial.over)} more than the day has{also}"
    if hold.room is None:
        return f"{said}; no cut of one other line that day makes room without breaking a rule."
    cut, both = hold.room
    verdict = "and the week is the better for it" if both.score > 0 else "so it stays out"
    return f"{said}; with {cut_words(cut)} it would fit, the score would change by {signed(both.score)}, {verdict}."


def rule_words(hold: Held) -> str:
    """The rules that the nearest try breaks."""
    if hold.trial is None:
        return "no further set of any open exercise is allowed."
    return f"{trial_words(hold.trial)} is the nearest and breaks {broken_words(hold.trial.effect)}."


def cost_words(hold: Held) -> str:
    """What a set that fits would cost beyond what it gives."""
    if hold.trial is None:
        return ""
    effect = hold.trial.effect
    up = costs_up(effect)
    return (
        f"{fits(hold)}, but adds {signed(effect.stimulus)} to the index and {signed(effect.stimulus - effect.score)} "
        f"in costs{': ' + up if up else ''}."
    )


# ---- as a document


def why_document(audited: Audit, reasons: tuple[Reason, ...], holds: tuple[Held, ...] | None) -> dict[str, Any]:
    """The reasons as JSON; every number is after less before."""
    evaluated = audited.evaluated
    return {
        "schema": SCHEMA,
        "reckoned": "exactly: the line taken out, the rest left as it is",
        "score": rounded(audited.score),
        "stimulus": rounded(audited.stimulus),
        "reasons": [
            {
                "entry": address(evaluated, r.line),
                "exercise": r.line.exercise.id,
                "muscle": r.muscle,
                "serves": why(evaluated, r.line),
                "sentence": sentence(r),
                "without": effect_document(r.effect),
            }
            for r in reasons
        ],
        "below": None if holds is None else [hold_document(hold) for hold in holds],
    }


def hold_document(hold: Held) -> dict[str, Any]:
    """One muscle below its band."""
    trial = hold.trial
    return {
        "muscle": hold.muscle.id,
        "sets": rounded(hold.sets),
        "from": hold.muscle.low,
        "held_by": hold.hold,
        "open_exercises": hold.open_direct,
        "closed_by": [{"rule": rule, "exercises": count} for rule, count in hold.closed],
        "sentence": hold_words(hold),
        "nearest": None
        if trial is None
        else {
            "day": trial.day.name,
            "exercise": trial.entry.exercise,
            "sets": trial.entry.sets,
            "new_line": trial.new,
            "breaks": [{"rule": rule, "remedy": RULES[rule].remedy} for rule in trial.rules],
            "seconds_over": trial.over,
            "does": effect_document(trial.effect),
        },
        "room": None
        if hold.room is None
        else {
            "cut": hold.room[0].line.exercise.id,
            "to_sets": hold.room[0].sets,
            "does": effect_document(hold.room[1]),
        },
    }
