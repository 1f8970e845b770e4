"""A reference week: what a set of each exercise takes and gives in one solved week of the brief."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import DayAsk
from setwright.solver.engines.season.problem import Activity
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.prescriptions import set_span
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.planning import search_only
from setwright.solver.search.limits import SEARCHES, Limits
from setwright.solver.search.solve_options import SolveOptions

FIRST_WEEK: Limits = replace(SEARCHES["quick"], rounds=0)
"""The quick search without the neighbourhoods after its first week: what a set takes is the same by both."""


@dataclass(frozen=True)
class ReferenceWeek:
    """One solved week of the brief, with no muscle specialised."""

    days: tuple[DayAsk, ...]
    evaluated: EvaluatedWeek

    @property
    def exercise_seconds(self) -> float:
        """Seconds that its exercises take, without warm-ups and ramp-ups."""
        return sum(line.prescription.half_seconds for line in self.evaluated.lines) / 2

    @property
    def overhead(self) -> float:
        """Seconds of a session that no exercise takes: warm-up, ramp-ups, and what is left over."""
        given = sum(60 * day.minutes for day in self.days)
        return (given - self.exercise_seconds) / len(self.days)

    @property
    def quality(self) -> float:
        """Effective sets for each credited one: what rests and effort leave of a set."""
        lines = self.evaluated.lines
        return sum(x.prescription.effective for x in lines) / (10 * sum(x.prescription.credited for x in lines))

    def seconds_for(self, minutes: int, days: int) -> int:
        """Seconds that exercises may take in a week of so many minutes on so many days."""
        return max(0, round(60 * minutes - self.overhead * days))


def reference_of(days: tuple[DayAsk, ...], resolved: ResolvedBrief, options: SolveOptions) -> ReferenceWeek | None:
    """The reference week of a brief on these days; None where no week with a set was found."""
    found = search_only(resolved, replace(options, limits=FIRST_WEEK, pairs_note=False)).best
    if found is None or not found.evaluated.lines:
        return None
    return ReferenceWeek(days, found.evaluated)


def activities_of(reference: ReferenceWeek, setup: int, places: Mapping[str, int]) -> list[Activity]:
    """The week's exercises, and one of its own for each muscle that none of them trains by itself.

    `places` are the muscles' places in the problem.
    """
    resolved = reference.evaluated.resolved
    season = resolved.catalogue.defaults.season
    by_exercise: dict[str, list[tuple[int, float, int]]] = {}
    for line in reference.evaluated.lines:
        said = line.prescription
        by_exercise.setdefault(line.exercise.id, []).append((line.sets, said.half_seconds / 2, said.credited))
    found = []
    for name, lines in by_exercise.items():
        sets, seconds, credited = (sum(column) for column in zip(*lines, strict=True))
        exercise = resolved.catalogue.exercises[name]
        parts = _parts(exercise, places, credited / (100 * sets))
        usual = int(season.usual_kept * sets)
        found.append(
            Activity(name, setup, round(seconds / sets), parts, usual, max(int(sets), _most_sets(resolved, exercise)))
        )
    return [*found, *_added(reference, setup, places, by_exercise)]


def _added(
    reference: ReferenceWeek,
    setup: int,
    places: Mapping[str, int],
    there: Mapping[str, object],
) -> list[Activity]:
    """An exercise for each muscle without a single-joint one in the week, timed as the week's single-joint lines."""
    resolved = reference.evaluated.resolved
    exercises = resolved.catalogue.exercises
    alone = {m for name in there if not exercises[name].multi_joint for m in exercises[name].direct}
    lines = [x for x in reference.evaluated.lines if not x.exercise.multi_joint] or reference.evaluated.lines
    seconds = round(sum(x.prescription.half_seconds for x in lines) / (2 * sum(x.sets for x in lines)))
    found = []
    for muscle in places:
        exercise = _own_exercise(resolved, muscle)
        if muscle not in alone and exercise is not None and exercise.id not in there:
            most = _most_sets(resolved, exercise)
            found.append(Activity(exercise.id, setup, seconds, _parts(exercise, places, 1.0), 0, most))
    return found


def _own_exercise(resolved: ResolvedBrief, muscle: str) -> Exercise | None:
    """The open exercise that trains a muscle most by itself: single-joint first, by rank, with few others."""
    able = [e for day in resolved.open_on for e in day if muscle in e.direct]
    return min(able, key=lambda e: (e.multi_joint, e.rank, len(e.muscles), e.id)) if able else None


def _parts(exercise: Exercise, places: Mapping[str, int], share: float) -> tuple[tuple[int, int], ...]:
    """What one printed set is credited for each muscle of the problem, in hundredths."""
    return tuple((places[m], round(part * share)) for m, part in exercise.contributions if m in places)


def _most_sets(resolved: ResolvedBrief, exercise: Exercise) -> int:
    """The sets of an exercise that a week may have: the most of a day on as many days as it may be done."""
    days = 1 if exercise.once_a_week else min(len(resolved.days), round(resolved.limit("third-day", "most")))
    return days * set_span(resolved, exercise)[1]
