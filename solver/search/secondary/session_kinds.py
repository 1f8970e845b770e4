"""The kinds of big lifts that sessions had and should keep when they are planned again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import partial

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit
from setwright.solver.evaluation.big_lifts import kind_of, kinds_on
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.linear.linear_model import LinearModel

RULE = "kinds-kept"
"""What the counts are posted under; no rule of the rulebook."""
LOST = 10 * UNITS
"""What a kind lost from a session weighs: more than fewer changed lines may ever give up (convention)."""
Kinds = tuple[tuple[int, frozenset[str]], ...]
"""(day, kinds of which it should keep one)."""


def kinds_to_keep(planned: Audit, days: Iterable[int], shorter: Mapping[int, bool]) -> Kinds:
    """What each day should keep: one lift of each kind that it had and that is open, of a shorter day one of any.

    A day on which none of its kinds is open any more should keep a big lift of some other kind. `planned` is the
    earlier week under the brief as it is now.
    """
    resolved, found = planned.evaluated.resolved, []
    for day in days:
        had = kinds_on(planned.evaluated, day)
        able = frozenset(kind for exercise in resolved.open_on[day] if (kind := kind_of(exercise)))
        if had and not had & able:
            kept = [able] if able else []
        else:
            kept = [frozenset((kind,)) for kind in sorted(had & able)]
        if shorter.get(day):
            kept = [frozenset().union(*kept)] if kept else []
        found += [(day, kinds) for kinds in kept]
    return tuple(found)


def kinds_lost(found: Audit, keep: Kinds) -> int:
    """How many of the kinds to keep a week has lost."""
    return sum(not kinds & kinds_on(found.evaluated, day) for day, kinds in keep)


def charge_lost_kinds(model: LinearModel, keep: Kinds) -> None:
    """Charge each kind that its day loses; the model is of single days."""
    for day, kinds in keep:
        lifts = model.count(partial(_is_of, kinds), day)
        lost = model.variable(1, -LOST)
        model.constrain(RULE, {**lifts, lost: 1}, low=1)


def _is_of(kinds: frozenset[str], exercise: Exercise) -> bool:
    return kind_of(exercise) in kinds
