"""Alternatives: other weeks nearly as good as the first, what each has that the first has not, and its cost."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.planning import End, Solved, plan_apart
from setwright.solver.search.secondary.diverse_weeks import DiverseWeek
from setwright.solver.search.solve_options import SolveOptions

MOST_MUSCLES = 4
"""Muscles named whose weekly sets differ most."""


@dataclass(frozen=True)
class Alternative:
    """One other week against the first."""

    audit: Audit
    distance: float
    """The share of lines in which it differs from the first, on the days that match best."""
    cost: float
    """Score points below the first; negative where the first search had not found it."""
    stimulus_cost: float
    """Week index points below the first."""
    seconds: int
    """Seconds a week more than the first; negative for fewer."""
    gains: tuple[str, ...]
    """Exercises that the first has not, nor their like, by id in the catalogue's order."""
    lacks: tuple[str, ...]
    """Exercises of the first that it has not."""
    muscles: tuple[tuple[str, float], ...]
    """(muscle, weekly sets more or fewer), the largest differences first."""


def with_alternatives(
    parsed: ParsedBrief,
    catalogue: Catalogue,
    count: int,
    share: float,
    options: SolveOptions,
) -> tuple[End, tuple[Alternative, ...]]:
    """The brief's week and up to `count` alternatives whose score is no more than `share` of the stimulus below it."""
    end, found = plan_apart(parsed, catalogue, count, share, options)
    if not isinstance(end, Solved):
        return end, ()
    return end, tuple(_against(end.audit, other) for other in found)


def _against(first: Audit, other: DiverseWeek) -> Alternative:
    """Another week set against the first."""
    return Alternative(
        audit=other.audit,
        distance=other.distance,
        cost=first.score - other.audit.score,
        stimulus_cost=first.stimulus - other.audit.stimulus,
        seconds=other.audit.evaluated.week_seconds - first.evaluated.week_seconds,
        gains=other.gains,
        lacks=other.lacks,
        muscles=_differences(first, other.audit),
    )


def _differences(first: Audit, other: Audit) -> tuple[tuple[str, float], ...]:
    """The muscles whose weekly sets differ by one or more, the largest differences first."""
    found = []
    for muscle in first.evaluated.resolved.muscles:
        more = (other.evaluated.weekly_sets(muscle) - first.evaluated.weekly_sets(muscle)) / WHOLE
        if abs(more) >= 1:
            found.append((muscle, more))
    return tuple(sorted(found, key=lambda m: (-abs(m[1]), m[0]))[:MOST_MUSCLES])
