"""Why a line stands in a week: the muscle it serves most, and the audit of the week without it."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.uses.edits.editing import without
from setwright.solver.uses.edits.effects import Effect, effect


@dataclass(frozen=True)
class Reason:
    """One line, the muscle it serves most (id), and what the week is without it, the rest left as it is."""

    line: Line
    muscle: str
    effect: Effect

    @property
    def asked(self) -> bool:
        """Whether the brief asks for it: without it a wish or a hard rule is no longer met."""
        return bool(self.effect.broken)


def reason_of(audited: Audit, line: Line) -> Reason:
    """The reason of one line, found by auditing the week again without it."""
    gone = effect(audited, without(audited.evaluated, line))
    return Reason(line, _most_served(line, gone), gone)


def _most_served(line: Line, gone: Effect) -> str:
    """The muscle whose loss moves the week index most; among muscles that do not count, the one that loses most."""
    muscles = [m for m in gone.before.evaluated.resolved.muscles if m in line.exercise.muscles]
    return min(muscles, key=lambda m: (round(gone.moved(m), 9), round(gone.index(m), 9), muscles.index(m)))
