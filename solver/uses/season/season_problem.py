"""A season's problem in numbers alone, from the brief, its reference weeks and the weeks by date."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from setwright.solver.engines.season.problem import (
    Activity,
    Candidate,
    EmphasisTerms,
    Room,
    SeasonMuscle,
    SeasonProblem,
)
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import MuscleTarget
from setwright.solver.uses.season.block_spans import BlockSpan
from setwright.solver.uses.season.emphases import targets_by_emphasis
from setwright.solver.uses.season.reference_week import ReferenceWeek, activities_of
from setwright.solver.uses.season.season_weeks import SeasonWeek

POINTS: Final = (0, 2, 4, 6, 8, 10, 12, 16, 20, 24, 28, 32, 40, 50, 60, 80)
"""Half sets a week between which a muscle's index is taken as a straight line."""
MOST_HALVES: Final = 80
"""Half sets a week above which no band ends here: twice what a brief may ask for."""


def problem_of(
    resolved: ResolvedBrief,
    turns: Mapping[str, int],
    references: Sequence[ReferenceWeek],
    rooms: Mapping[int, int],
    weeks: Sequence[SeasonWeek],
    spans: Sequence[BlockSpan],
) -> SeasonProblem:
    """The problem of spans whose leanest weeks have a reference: `rooms` gives each such week its reference's place."""
    catalogue = resolved.catalogue
    season, block = catalogue.defaults.season, catalogue.defaults.block
    targets = targets_by_emphasis(resolved, turns)
    places = {muscle: place for place, muscle in enumerate(targets)}
    able = [span for span in spans if span.leanest in rooms]
    room_of = {week: _room(resolved, references[place], place, weeks[week]) for week, place in rooms.items()}
    listed = sorted({room_of[span.leanest] for span in able}, key=lambda r: (r.setup, r.seconds, r.sets))
    muscles = tuple(_muscle(resolved, muscle, by, turns.get(muscle), references) for muscle, by in targets.items())
    return SeasonProblem(
        rooms=tuple(listed),
        candidates=tuple(Candidate(s.first, s.weeks, listed.index(room_of[s.leanest])) for s in able),
        activities=_activities(references, places),
        muscles=muscles,
        specialised_most=season.specialised_most,
        running_most=season.running_most,
        held_most=round(catalogue.number("spiering-2021-weeks")),
        rise_between=round(2 * block.first_above_now),
        rise_within=round(2 * block.rise_most),
        excess_cost=round(_cost(resolved, "band-high") / 2),
        usual_cost=round(_cost(resolved, "band-low")),
        missed_cost=_missed_cost(muscles, max((s.weeks for s in able), default=1)),
        habit_tenths=round(10 * catalogue.number("rogerson-2024-every")),
    )


def _activities(references: Sequence[ReferenceWeek], places: Mapping[str, int]) -> tuple[Activity, ...]:
    return tuple(a for setup, reference in enumerate(references) for a in activities_of(reference, setup, places))


def _room(resolved: ResolvedBrief, reference: ReferenceWeek, setup: int, week: SeasonWeek) -> Room:
    """What a week has room for: its minutes less what a session takes beside exercises, and no more sets than rules."""
    count = len(week.days)
    sets = min(
        resolved.limit("week-sets", resolved.experience), count * resolved.limit("day-sets", resolved.experience)
    )
    return Room(setup, reference.seconds_for(week.minutes, count), round(sets))


def _muscle(
    resolved: ResolvedBrief,
    muscle: str,
    targets: Mapping[str, MuscleTarget],
    turn: int | None,
    references: Sequence[ReferenceWeek],
) -> SeasonMuscle:
    """A muscle with its bands and weights, and its index by weekly sets spread evenly over the brief's days."""
    curves, days = resolved.curves, len(resolved.days)
    quality = sum(r.quality for r in references) / len(references)
    curve = tuple(
        (half, round(100 * curves.index(days * curves.session(quality * half / 2 / days)))) for half in POINTS
    )
    large = resolved.catalogue.muscles[muscle].size == "large" or turn is not None
    return SeasonMuscle(
        name=muscle,
        emphases={
            emphasis: EmphasisTerms(
                round(100 * target.weight),
                min(round(2 * target.low), MOST_HALVES),
                min(round(2 * target.high), MOST_HALVES),
            )
            for emphasis, target in targets.items()
        },
        curve=curve,
        short_cost=round(_cost(resolved, "band-low", "large-or-priority" if large else None) / 2),
        turn=turn,
    )


def _cost(resolved: ResolvedBrief, rule: str, key: str | None = None) -> float:
    """A rule's cost in weighted index points, as it weighs in a brief whose weights sum to the reference, in units."""
    if resolved.off(rule):
        return 0.0
    return resolved.cost(rule, key) / resolved.cost_scale * resolved.catalogue.defaults.cost_scale.reference


def _missed_cost(muscles: Sequence[SeasonMuscle], longest: int) -> int:
    """More than any muscle's longest specialised block is worth, so that a turn is given before all else."""
    most = max(terms.weight for muscle in muscles for terms in muscle.emphases.values())
    return longest * most * max(muscle.curve[-1][1] for muscle in muscles)
