"""Differences in words and as documents: what a change does to a week's score, sets, minutes and costs."""

from __future__ import annotations

from typing import Any

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.week import Entry
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.costs import ALWAYS, points
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import clock, day_name, listed, muscle_name, some_sets, wrapped
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.make_room import Cut

LEAST = 0.05
"""Index points below which a difference is not printed."""
MOST_NAMED = 3


def effect_document(effect: Effect) -> dict[str, Any]:
    """A difference as JSON: points of score and week index, seconds, sets and index of the muscles that change."""
    resolved = effect.after.evaluated.resolved
    return {
        "score": rounded(effect.score),
        "stimulus": rounded(effect.stimulus),
        "seconds": effect.seconds,
        "costs": [{"rule": rule, "cost": rounded(cost)} for rule, cost in effect.costs],
        "came_up": [_charged_document(f, resolved) for f in effect.came_up],
        "went": [_charged_document(f, resolved) for f in effect.went],
        "broken": [broken_document(f, resolved) for f in effect.broken],
        "muscles": [
            {
                "muscle": muscle,
                "sets": [rounded(before), rounded(after)],
                "index": [rounded(e.evaluated.index(muscle), 1) for e in (effect.before, effect.after)],
            }
            for muscle, before, after in effect.sets
        ],
    }


def _charged_document(finding: Finding, resolved: ResolvedBrief) -> dict[str, Any]:
    """A scored finding as JSON; its cost in index points."""
    return {"id": finding.rule, "text": finding_words(finding, resolved), "cost": rounded(points(finding.cost))}


def broken_document(finding: Finding, resolved: ResolvedBrief) -> dict[str, Any]:
    """A broken rule as JSON, with its sentence and remedy."""
    return {
        "id": finding.rule,
        "text": finding_words(finding, resolved),
        "sentence": sentence_of(finding.rule, resolved),
        "remedy": RULES[finding.rule].remedy,
    }


def signed(value: float, places: int = 1) -> str:
    """A difference with its sign; what rounds to nothing is 0."""
    text = f"{value:+.{places}f}"
    return f"{0:.{places}f}" if float(text) == 0 else text


def signed_clock(seconds: int) -> str:
    """A difference in minutes and seconds."""
    return "0:00" if not seconds else f"{'-' if seconds < 0 else '+'}{clock(abs(seconds))}"


def muscle_moves(effect: Effect, most: int = MOST_NAMED) -> str:
    """The muscles whose index moves most, by what they weigh: quads 62 to 45, glutes 70 to 66."""
    resolved = effect.before.evaluated.resolved
    moved = sorted((m for m, _, _ in effect.sets), key=lambda m: (-abs(effect.moved(m)), -abs(effect.index(m))))
    told = [m for m in moved if abs(effect.index(m)) >= 0.5]
    weighed = [m for m in told if resolved.muscles[m].weight] or told
    old, new = effect.before.evaluated, effect.after.evaluated
    return ", ".join(
        f"{muscle_name(resolved.catalogue, m)} {old.index(m):.0f} to {new.index(m):.0f}" for m in weighed[:most]
    )


def costs_up(effect: Effect, most: int = MOST_NAMED) -> str:
    """The costs that are added, dearest first, in index points: no row in the week (5.0); ..."""
    resolved = effect.after.evaluated.resolved
    found = [(finding_words(f, resolved), points(f.cost)) for f in effect.came_up if points(f.cost) >= LEAST]
    if not found:
        found = [(rule, cost) for rule, cost in effect.costs if cost >= LEAST and rule not in ALWAYS]
    more = f" and {len(found) - most} more" if len(found) > most else ""
    return "; ".join(f"{text} ({cost:.1f})" for text, cost in found[:most]) + more


def broken_words(effect: Effect) -> str:
    """The rules newly broken, in words."""
    resolved = effect.after.evaluated.resolved
    return "; ".join(f"{f.rule}: {finding_words(f, resolved)}" for f in effect.broken)


def cut_words(cut: Cut) -> str:
    """Cable crunch cut to 2 sets, or taken out."""
    return f"{cut.line.exercise.name} " + (f"cut to {some_sets(cut.sets)}" if cut.sets else "taken out")


def _changed_lines(before: EvaluatedWeek, after: EvaluatedWeek) -> list[str]:
    """How two weeks of the same days differ: lines out, lines in and sets that changed, day by day."""
    found: list[str] = []
    for day in before.resolved.days:
        old = {line.exercise.id: line for line in before.on[day.index]}
        new = {line.exercise.id: line for line in after.on[day.index]}
        out = [f"{x.exercise.name} ({x.sets})" for key, x in old.items() if key not in new]
        come = [f"{x.exercise.name} ({x.sets})" for key, x in new.items() if key not in old]
        sets = [
            f"{x.exercise.name} from {old[key].sets} to {some_sets(x.sets)}"
            for key, x in new.items()
            if key in old and old[key].sets != x.sets
        ]
        ways = [
            f"{x.exercise.name} done otherwise"
            for key, x in new.items()
            if key in old and old[key].sets == x.sets and _way(old[key].entry) != _way(x.entry)
        ]
        parts = [*([f"out: {listed(out)}"] if out else []), *([f"in: {listed(come)}"] if come else []), *sets, *ways]
        if parts:
            found.append(f"{day_name(day)}: {'; '.join(parts)}")
    return found


def _way(entry: Entry) -> tuple[object, ...]:
    """How a line is done beside its sets."""
    return entry.rest, entry.technique, entry.drops, entry.partner


def changed_document(before: EvaluatedWeek, after: EvaluatedWeek) -> list[dict[str, Any]]:
    """The same as JSON: for each day the exercises out, in, and with other sets."""
    found = []
    for day in before.resolved.days:
        old = {line.exercise.id: line.sets for line in before.on[day.index]}
        new = {line.exercise.id: line.sets for line in after.on[day.index]}
        found.append(
            {
                "day": day.name,
                "out": [{"exercise": key, "sets": sets} for key, sets in old.items() if key not in new],
                "in": [{"exercise": key, "sets": sets} for key, sets in new.items() if key not in old],
                "sets": [
                    {"exercise": key, "before": old[key], "after": sets}
                    for key, sets in new.items()
                    if key in old and old[key] != sets
                ],
            }
        )
    return found


def difference_lines(effect: Effect, width: int) -> list[str]:
    """Score, index, minutes and muscles of two weeks, then the lines that changed."""
    said = (
        f"Score {effect.before.score:.1f} to {effect.after.score:.1f} ({signed(effect.score)}), week index "
        f"{effect.before.stimulus:.1f} to {effect.after.stimulus:.1f} ({signed(effect.stimulus)}), "
        f"time {signed_clock(effect.seconds)}."
    )
    lines = wrapped(said, width, "  ")
    if moves := muscle_moves(effect, 5):
        lines += wrapped(f"Index of {moves}.", width, "  ")
    if costs := costs_up(effect):
        lines += wrapped(f"Costs added: {costs}.", width, "  ")
    if gone := costs_up(Effect(effect.after, effect.before)):
        lines += wrapped(f"Costs gone: {gone}.", width, "  ")
    changes = _changed_lines(effect.before.evaluated, effect.after.evaluated)
    for change in changes or ["No line changes."]:
        lines += wrapped(f"  {change}", width, "    ")
    return lines
