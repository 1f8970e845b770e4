"""Which changes a coach would stand by: none that takes a day's only big lift of its kind for something small."""

from __future__ import annotations

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.big_lifts import kind_of, kinds_on
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.uses.edits.candidate_moves import Move


def is_sound(before: Audit, after: Audit, move: Move) -> bool:
    """Whether a change splits no pair, takes no muscle below its band, and gives no big lift for something small."""
    old, new = before.evaluated, after.evaluated
    if _paired_lines(new) < _paired_lines(old):
        return False
    if {m.id for m in new.below_band} - {m.id for m in old.below_band}:
        return False
    taken_out = old.resolved.catalogue.exercises[move.old] if move.old else None
    may_not_stay = any(f.exercise == move.old and move.day in f.days for f in before.violations)
    for_something_small = move.new is not None and not move.new.multi_joint
    if taken_out is not None and taken_out.main_lift and for_something_small and not may_not_stay:
        return False
    lost = kinds_on(old, move.day) - kinds_on(new, move.day)
    if not lost:
        return True
    if taken_out is None or lost != {kind_of(taken_out)}:
        return False
    return may_not_stay or (move.new is not None and not for_something_small)


def _paired_lines(evaluated: EvaluatedWeek) -> int:
    return sum(line.entry.partner is not None for line in evaluated.lines)
