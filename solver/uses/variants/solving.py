"""One variant solved in one process: near the shorter variant's week where there is one, fresh where there is none."""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.planning import End, plan, plan_near
from setwright.solver.search.limits import Limits
from setwright.solver.search.secondary.minimal_change import NearestWeek
from setwright.solver.search.solve_options import SolveOptions

WALL_CLOCK_LIMIT = 3600.0
"""Seconds after which a variant counts as not finished: so generous that only a stuck machine meets it."""


@dataclass(frozen=True)
class LinesKept:
    """What a longer variant keeps of the shorter one: lines are an exercise on a day."""

    kept: tuple[str, ...]
    dropped: tuple[str, ...]
    added: tuple[str, ...]
    """Each as `weekday exercise`."""
    change: int
    """Sets that differ, over exercises and days."""
    given_up: float
    """Index points of score below the best week found without looking back."""


@dataclass(frozen=True)
class VariantEnd:
    """The end of one variant; `late` when the wall-clock limit may have had a part in it."""

    end: End
    kept: LinesKept | None
    late: bool


def limits_in(stamp: Mapping[str, Any]) -> Limits:
    """The amounts of work that a stamp states."""
    return Limits(**stamp["limits"])


def solve_variant(
    parsed: ParsedBrief, catalogue: Catalogue, limits: Limits, previous: Week | None, share: float | None
) -> VariantEnd:
    """One variant's end, audited; one process, no wall clock in the result.

    One worker gives the same bytes as two. A variant is late when it took longer than the wall-clock limit, which then
    may have ended the search. `share` is what keeping the previous week may cost, as a share of the week index.
    """
    options = SolveOptions(limits, workers=1, wall_clock_limit=WALL_CLOCK_LIMIT, pairs_note=False)
    begun = time.monotonic()
    near: NearestWeek | None = None
    if previous is None or share is None:
        end = plan(parsed, catalogue, options)
    else:
        end, near = plan_near(parsed, catalogue, previous, share, options)
    taken = time.monotonic() - begun
    late = taken >= WALL_CLOCK_LIMIT
    return VariantEnd(end, None if near is None or previous is None else _kept_of(end, near, previous), late)


def _kept_of(end: End, near: NearestWeek, previous: Week) -> LinesKept:
    """What the near week keeps, drops and adds."""
    days = end.parsed.brief.days
    names = [day.weekday or f"session-{place + 1}" for place, day in enumerate(days)]
    before, now = _lines_of(previous.days, names), _lines_of(near.audit.evaluated.week.days, names)
    return LinesKept(
        kept=tuple(line for line in now if line in before),
        dropped=tuple(line for line in before if line not in now),
        added=tuple(line for line in now if line not in before),
        change=near.change,
        given_up=(near.best_units - near.audit.score_units) / UNITS,
    )


def _lines_of(days: tuple[tuple[Entry, ...], ...], names: list[str]) -> tuple[str, ...]:
    """Every exercise on its day, in order, each once."""
    return tuple(
        dict.fromkeys(f"{name} {entry.exercise}" for name, day in zip(names, days, strict=True) for entry in day)
    )
