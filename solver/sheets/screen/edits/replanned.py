"""A replanned week in words: the sessions that are left, what changed in them, and what the week ends with."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.line_changes import LineChange
from setwright.solver.evaluation.week import Entry
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.words import (
    clock,
    counted,
    day_name,
    dose,
    listed,
    muscle_name,
    note,
    page_width,
    some_sets,
    wrapped,
)
from setwright.solver.sheets.screen.day_table import day_lines
from setwright.solver.sheets.screen.edits.differences import signed
from setwright.solver.uses.edits.card_swaps import swaps_on_cards
from setwright.solver.uses.replan.happened import DayChange
from setwright.solver.uses.replan.replanned import Replanned

SORENESS = (
    "Soreness of a muscle after training goes in some days. Pain that is sharp, in a joint, on one side only or that "
    "stays is no matter of a plan: stop, and have somebody look at it who is licensed to."
)
NO_CHASE = (
    "Nothing is chased after a missed day: its sets are let go, {sessions} more sets than planned, and the next week "
    "goes on as it stands."
)


def replanned_text(found: Replanned, width: int) -> str:
    """What happened, the sessions that are left, what changes, and what the week ends with."""
    width = page_width(width)
    after = found.after.evaluated
    swaps = swaps_on_cards(found.after, found.left)
    parts = [
        wrapped(_happened_words(found), width),
        *(day_lines(after, day, swaps, width) for day in found.left),
        _change_lines(found, width),
        [line for said in _end_words(found) for line in wrapped(said, width)],
        wrapped("`-o new.json` writes the new week.", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def replanned_words(found: Replanned) -> dict[str, Any]:
    """The same sentence by sentence: what happened, what changes, how the week ends."""
    return {
        "happened": _happened_words(found),
        "title": _changes_title(found),
        "changes": list(_changes(found)),
        "ends": list(_end_words(found)),
    }


# ---- what happened


def _happened_words(found: Replanned) -> str:
    """Monday and Tuesday are done; Thursday is missed. Friday: 25 minutes."""
    days = found.after.evaluated.resolved.days
    parts = []
    for which, said in ((found.happened.done, "done"), (found.happened.missed, "missed")):
        if which:
            names = listed(day_name(days[day]) for day in sorted(which))
            parts.append(f"{names} {'is' if len(which) == 1 else 'are'} {said}")
    sentences = ["; ".join(parts)] if parts else []
    for day, change in sorted(found.happened.changes.items()):
        sentences.append(f"{day_name(days[day])}: {'; '.join(_day_words(change, found.after.evaluated))}")
    for pin in found.happened.pins:
        on = f" on {day_name(next(d for d in days if d.weekday == pin.day))}" if pin.day else ""
        sentences.append(f"{_name(pin.exercise, found)} is pinned{on}")
    for pin in found.pins_dropped:
        sentences.append(f"The pin of {_name(pin.exercise, found)} goes with its missed day")
    return " ".join(f"{sentence}." for sentence in sentences)


def _day_words(change: DayChange, evaluated: EvaluatedWeek) -> Iterator[str]:
    """What is otherwise on a day."""
    catalogue = evaluated.resolved.catalogue
    if change.minutes is not None:
        yield counted(change.minutes, "minute")
    if change.kit is not None:
        yield f"the kit is that of {catalogue.kits[change.kit].name}"
    if change.without:
        yield f"taken: {listed(catalogue.items[item].name for item in change.without)}"
    if change.avoid:
        yield f"without {listed(catalogue.exercises[exercise].name for exercise in change.avoid)}"
    if change.rested:
        names = (catalogue.muscles[m].name if m in catalogue.muscles else m for m in change.rested)
        yield f"no direct sets for {listed(name.lower() for name in names)}"


# ---- what changes


def _change_lines(found: Replanned, width: int) -> list[str]:
    """The missed sessions, then the changed lines of each day."""
    changes = (line for said in _changes(found) for line in wrapped(f"  {said}", width, "    "))
    return [_changes_title(found), *changes]


def _changes(found: Replanned) -> Iterator[str]:
    """What is let go with each missed session, then each changed line."""
    old = found.before.evaluated
    for day in sorted(day for day in found.happened.missed if old.on[day]):
        sets = sum(line.sets for line in old.on[day])
        gone = f"{day_name(old.resolved.days[day])}, missed: {counted(len(old.on[day]), 'line')} of {some_sets(sets)}"
        yield f"{gone} let go"
    for change in found.changes:
        yield _change_words(change, found)


def _changes_title(found: Replanned) -> str:
    if not found.left:
        return "No session is left: nothing is planned."
    return f"What changes ({counted(found.changed_lines, 'line')}):" if found.changes else "No line changes."


def _change_words(change: LineChange, found: Replanned) -> str:
    """Friday, out: Leg press 3 x 8-12, 2 RIR, rest 2:00."""
    day = day_name(found.after.evaluated.resolved.days[change.day])
    if change.after is None:
        return f"{day}, out: {_line_words(change.before, found)}"
    if change.before is None:
        return f"{day}, new: {_line_words(change.after, found)}"
    was = _way_words(change.before, found)
    return f"{day}, otherwise: {_line_words(change.after, found)} (was {was})"


def _line_words(entry: Entry | None, found: Replanned) -> str:
    return f"{_name(entry.exercise, found)} {_way_words(entry, found)}" if entry else ""


def _way_words(entry: Entry, found: Replanned) -> str:
    """3 x 8-12, 2 RIR, rest 2:00, in a pair with Cable curl."""
    exercise = found.after.evaluated.resolved.catalogue.exercises[entry.exercise]
    parts = [dose(entry.sets, entry.reps, exercise), f"{entry.rir} RIR", f"rest {clock(entry.rest)}"]
    if entry.partner:
        parts.append(f"in a pair with {_name(entry.partner, found)}")
    return ", ".join([*parts, *([note(entry, exercise)] if note(entry, exercise) else [])])


def _name(exercise: str, found: Replanned) -> str:
    return found.after.evaluated.resolved.catalogue.exercises[exercise].name


# ---- what the week ends with


def _end_words(found: Replanned) -> Iterator[str]:
    """Bands, rules, what is not chased, and what few changes cost."""
    yield _band_words(found)
    yield from _rule_words(found)
    if found.happened.missed:
        yield NO_CHASE.format(sessions=_sessions_words(found))
    yield _worth_words(found)
    if any(change.rested for change in found.happened.changes.values()):
        yield SORENESS


def _band_words(found: Replanned) -> str:
    """The muscles below their band with their sets, those that the week was planned with, and where the band begins."""
    catalogue = found.after.evaluated.resolved.catalogue
    below = [
        f"{muscle_name(catalogue, m.muscle)} {m.sets:.3g} of {m.low:g} sets ({m.planned:.3g} as planned)"
        for m in found.below_band
    ]
    return f"Below their band: {listed(below)}." if below else "No muscle ends below its band."


def _rule_words(found: Replanned) -> Iterator[str]:
    """Which rules are broken, and which muscles are trained hard on two consecutive days."""
    resolved = found.after.evaluated.resolved
    broken = [f"{f.rule}: {finding_words(f, resolved)}" for f in found.after.broken]
    stacked = [finding_words(f, resolved) for f in found.after.charged if f.rule == "hard-days"]
    yield f"Broken by what is done: {listed(broken)}." if broken else "No rule is broken."
    yield (
        f"Hard days that follow each other: {listed(stacked)}."
        if stacked
        else "No muscle is trained hard on two consecutive days."
    )


def _sessions_words(found: Replanned) -> str:
    old, new = found.before.evaluated.resolved.days, found.after.evaluated.resolved.days
    longer = any(new[day].minutes > old[day].minutes for day in found.left)
    return "no session but one with more minutes gets" if longer else "no other session gets"


def _worth_words(found: Replanned) -> str:
    """The week index before and after, and the score that fewer changes cost."""
    said = (
        f"Week index {found.before.stimulus:.1f} as planned, {found.after.stimulus:.1f} now "
        f"({signed(found.after.stimulus - found.before.stimulus)})."
    )
    if found.given_up < 0.05:
        return said
    return (
        f"{said} With more lines changed the best week found scores {found.given_up:.1f} points more; up to "
        f"{100 * (1 - found.share):.0f} % of its index is given up for few changes."
    )
