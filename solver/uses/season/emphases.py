"""What each emphasis of a season's block asks of a muscle, and the brief that a block's week is planned by."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.groups import expand_muscles
from setwright.solver.brief.schema import Brief, DayAsk, Emphasis, MuscleAsk
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import MuscleTarget
from setwright.solver.evaluation.resolving import muscle_targets

OPEN: tuple[Emphasis, ...] = ("priority", "normal", "hold")


def neutral(brief: Brief, turns: Mapping[str, int], catalogue: Catalogue) -> Brief:
    """The brief with every priority, and every muscle with a turn, at normal."""
    asked = expand_muscles(brief, catalogue)
    changes: dict[str, Emphasis] = {m: "normal" for m, ask in asked.items() if ask.emphasis == "priority"}
    return with_emphases(brief, {**changes, **dict.fromkeys(turns, "normal")}, catalogue)


def with_emphases(brief: Brief, emphases: Mapping[str, Emphasis], catalogue: Catalogue) -> Brief:
    """The brief with these muscles at these emphases, its groups taken apart and all else of a muscle as it was."""
    asked = expand_muscles(brief, catalogue)
    found: dict[str, MuscleAsk] = {}
    for muscle in catalogue.muscles:
        ask, emphasis = asked.get(muscle), emphases.get(muscle)
        if emphasis is not None and (ask or emphasis != "normal" or catalogue.muscles[muscle].size == "minor"):
            ask = (ask or MuscleAsk()).model_copy(update={"emphasis": emphasis})
        if ask is not None:
            found[muscle] = ask
    return brief.model_copy(update={"muscles": found})


def with_days(brief: Brief, days: tuple[DayAsk, ...]) -> Brief:
    """The brief on these days, which have weekdays."""
    return brief.model_copy(update={"days": days, "any_order": False, "rest_days_between": 1})


def targets_by_emphasis(resolved: ResolvedBrief, turns: Mapping[str, int]) -> dict[str, dict[str, MuscleTarget]]:
    """Muscle -> emphasis -> what is wanted of it: all three for one with a turn, normal and hold for another.

    A muscle that the brief itself holds is held; one without weight is left out, unless it has a turn.
    """
    brief, catalogue = resolved.brief, resolved.catalogue
    tables = {
        emphasis: muscle_targets(
            with_emphases(brief, dict.fromkeys(_settable(resolved, turns), emphasis), catalogue),
            catalogue,
            resolved.goal,
            resolved.age_group,
        )
        for emphasis in OPEN
    }
    found: dict[str, dict[str, MuscleTarget]] = {}
    for muscle, target in resolved.muscles.items():
        if muscle in _settable(resolved, turns):
            open_to = OPEN if muscle in turns else OPEN[1:]
            found[muscle] = {emphasis: tables[emphasis][muscle] for emphasis in open_to}
        elif target.weight:
            found[muscle] = {target.emphasis: target}
    return found


def _settable(resolved: ResolvedBrief, turns: Mapping[str, int]) -> list[str]:
    """The muscles whose emphasis a season decides."""
    return [m for m, t in resolved.muscles.items() if m in turns or (t.weight and t.emphasis != "hold")]
