"""The `clock` table of a brief from what was told of a pace, and a week evaluated with it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.schema import Clock
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import resolve
from setwright.solver.uses.pace.client_pace import FittedPart, Part

FIELDS: tuple[Part, ...] = ("warm_up", "seconds_per_rep", "pair_change", "spare")
"""The parts that a brief's clock has a field for."""


def clock_of(resolved: ResolvedBrief, parts: Sequence[FittedPart]) -> tuple[Clock, tuple[Part, ...]]:
    """The brief's clock with the parts that were told, and those of them that a limit changed.

    Whole seconds, hundredths for a repetition. Nothing is spared where sessions are over early; and the
    warm-up of a client who may give nothing of it up is never made shorter than planned.
    """
    said: dict[str, Any] = resolved.brief.clock.model_dump()
    limited: list[Part] = []
    for part in parts:
        if part.part not in FIELDS:
            continue
        low, high = LIMITS[part.part]
        if part.part == "warm_up" and _keeps_warm_up(resolved):
            low = max(low, part.planned)
        value = min(max(part.value, low), high)
        if value != part.value:
            limited.append(part.part)
        said[part.part] = round(value, 2) if part.part == "seconds_per_rep" else round(value)
    return Clock(**said), tuple(limited)


def with_clock(evaluated: EvaluatedWeek, clock: Clock) -> EvaluatedWeek:
    """The same week under the same brief with another clock, its spare seconds left aside."""
    resolved = evaluated.resolved
    brief = resolved.brief.model_copy(update={"clock": clock.model_copy(update={"spare": None})})
    return EvaluatedWeek(resolve(brief, resolved.catalogue), evaluated.week)


def _keeps_warm_up(resolved: ResolvedBrief) -> bool:
    """Whether this client's warm-up may not be shorter than planned."""
    return bool(resolved.brief.client.cautions or resolved.age_group)
