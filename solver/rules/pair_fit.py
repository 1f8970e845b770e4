"""Which two exercises may be done in turn."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.finding import Finding, Rule
from setwright.solver.evaluation.pairs import unfit
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def misfits(resolved: ResolvedBrief, a: Line, b: Line) -> Iterator[str]:
    """Why two lines may not be a pair."""
    if not resolved.pairs:
        yield "pairs were not asked for"
    if (a.sets, a.entry.rest) != (b.sets, b.entry.rest):
        yield "the two differ in sets or rest"
    if b.place != a.place + 1:
        yield "the two do not stand one after the other"
    yield from unfit(resolved, a.exercise, b.exercise)


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    for lines in evaluated.on:
        here = {line.exercise.id: line for line in lines}
        for line in lines:
            if line.entry.partner is None:
                continue
            other = here.get(line.entry.partner)
            if other is None or other.entry.partner != line.exercise.id:
                yield Finding("pair-fit", f"{line.where} has no partner {line.entry.partner}")
            elif line.place < other.place:
                yield from (
                    Finding("pair-fit", f"{line.where}: {why}") for why in misfits(evaluated.resolved, line, other)
                )


RULE = Rule(
    id="pair-fit",
    kind="hard",
    sentence="A pair has equal sets and rests, low fatigue, no load on the spine, no shared prime mover, not two grip-limited lifts, not two fixed stations, dumbbells only at a bench, a rack or the floor, and partners from different regions or opposing muscles.",
    remedy="pair it with another exercise, or make both straight sets",
    check=check,
)
