"""A printed week evaluated against its resolved brief: the facts that rules, score and sheets ask of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.answered_once import answered_once
from setwright.solver.evaluation.curves import SetConditions
from setwright.solver.evaluation.pairing.pairs import effect_of_partner
from setwright.solver.evaluation.pairing.partner_effect import NO_EFFECT, PartnerEffect
from setwright.solver.evaluation.prescriptions import Prescription, conditions, make
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import MuscleTarget, ResolvedDay
from setwright.solver.evaluation.week import Entry, Week

WHOLE = 10_000
"""Weekly sets are whole numbers of 1/10,000 set: hundredths of a contribution times hundredths of a set."""


@dataclass(frozen=True)
class Line:
    """One entry with its exercise and what the clock and the curves make of it."""

    entry: Entry
    exercise: Exercise
    day: ResolvedDay
    place: int
    prescription: Prescription
    done: SetConditions
    """What its sets are credited by."""
    partner: PartnerEffect
    """What the other exercise of its pair takes from it; nothing where it stands alone."""

    @property
    def sets(self) -> int:
        """The sets printed on the line."""
        return self.entry.sets


@dataclass(frozen=True)
class EvaluatedWeek:
    """A week with its resolved brief, and what follows from the two; nothing here is chosen."""

    resolved: ResolvedBrief
    week: Week

    @cached_property
    def on(self) -> tuple[tuple[Line, ...], ...]:
        """Each day's lines in order."""
        return tuple(
            tuple(self._line(entry, day, place) for place, entry in enumerate(entries))
            for day, entries in zip(self.resolved.days, self.week.days, strict=True)
        )

    def _line(self, entry: Entry, day: ResolvedDay, place: int) -> Line:
        exercise = self.resolved.catalogue.exercises[entry.exercise]
        return Line(entry, exercise, day, place, *_done_as_printed(self.resolved, entry, day.index))

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        """The lines of all days in order."""
        return tuple(line for day in self.on for line in day)

    # ---- sets

    @cached_property
    def _credited(self) -> dict[tuple[str, int], tuple[int, int]]:
        """(muscle, day) -> (all credited sets, direct ones), in 1/10,000 set."""
        found: dict[tuple[str, int], tuple[int, int]] = {}
        for line in self.lines:
            for muscle, part in line.exercise.contributions:
                every, direct = found.get((muscle, line.day.index), (0, 0))
                sets = part * line.prescription.credited
                found[muscle, line.day.index] = (every + sets, direct + (sets if part == 100 else 0))
        return found

    def day_sets(self, muscle: str, day: int) -> int:
        """A muscle's fractional credited sets on a day, in 1/10,000 set."""
        return self._credited.get((muscle, day), (0, 0))[0]

    def direct_day_sets(self, muscle: str, day: int) -> int:
        """A muscle's credited sets of direct work on a day, in 1/10,000 set."""
        return self._credited.get((muscle, day), (0, 0))[1]

    def weekly_sets(self, muscle: str) -> int:
        """A muscle's weekly fractional sets, in 1/10,000 set."""
        return self._weekly.get(muscle, 0)

    @cached_property
    def _weekly(self) -> dict[str, int]:
        """Each muscle's weekly fractional sets, in 1/10,000 set."""
        found: dict[str, int] = {}
        for (muscle, _), (every, _) in self._credited.items():
            found[muscle] = found.get(muscle, 0) + every
        return found

    def direct_sets(self, muscle: str) -> int:
        """A muscle's weekly sets of direct work, in 1/10,000 set."""
        return sum(self.direct_day_sets(muscle, day.index) for day in self.resolved.days)

    def direct_days(self, muscle: str) -> int:
        """The number of days with direct work for a muscle."""
        return sum(1 for day in self.resolved.days if self.direct_day_sets(muscle, day.index))

    @property
    def below_band(self) -> tuple[MuscleTarget, ...]:
        """The sought muscles that get fewer sets than their band begins with, in the catalogue's order."""
        muscles = self.resolved.muscles.values()
        return tuple(m for m in muscles if m.weight and self.weekly_sets(m.id) < round(m.low * WHOLE))

    # ---- time

    @cached_property
    def ramp_up(self) -> dict[tuple[int, str], int]:
        """(day, region) -> seconds of ramp-up sets."""
        found: dict[tuple[int, str], int] = {}
        for day, lines in enumerate(self.on):
            for region in ("lower", "push", "pull"):
                here = [x.exercise for x in lines if x.exercise.multi_joint and x.exercise.region == region]
                if here:
                    found[day, region] = ramp_seconds(self.resolved, region, here, self.resolved.days[day])
        return found

    def work_seconds(self, day: int) -> int:
        """A day's seconds without its general warm-up: exercises and ramp-up sets, less the rest after the last set."""
        halves = sum(line.prescription.half_seconds for line in self.on[day])
        ramps = sum(seconds for (d, _), seconds in self.ramp_up.items() if d == day)
        # A week made elsewhere may rest less than any planned one; no more is taken off than its shortest rest.
        last_rest = min([self.resolved.days[day].last_rest, *(line.entry.rest for line in self.on[day])])
        return (halves + 1) // 2 + ramps - last_rest

    def warm_up(self, day: int) -> int:
        """The general warm-up as done: what is planned, less what a full day makes it give up."""
        resolved = self.resolved.days[day]
        over = self.work_seconds(day) + resolved.warm_up - resolved.limit
        return resolved.warm_up - min(max(over, 0), resolved.warm_up_give)

    def seconds(self, day: int) -> int:
        """A day's seconds, its general warm-up included; for a day without lines those beside its exercises."""
        return self.work_seconds(day) + self.warm_up(day)

    @property
    def week_seconds(self) -> int:
        """The seconds of the week's sessions, warm-ups included; a day without lines has no session and takes none."""
        return sum(self.seconds(day.index) for day in self.resolved.days if self.on[day.index])

    # ---- counts

    def count(self, wanted: Callable[[Line], bool], day: int | None = None) -> int:
        """The number of lines of a kind, on one day or in the week."""
        lines = self.lines if day is None else self.on[day]
        return sum(1 for line in lines if wanted(line))

    def days_with(self, wanted: Callable[[Line], bool]) -> tuple[int, ...]:
        """The days that have a line of a kind."""
        return tuple(day for day, lines in enumerate(self.on) if any(wanted(line) for line in lines))

    def region_days(self, region: str) -> tuple[int, ...]:
        """Days with a multi-joint lift of the region."""
        return self.days_with(lambda x: x.exercise.multi_joint and x.exercise.region == region)

    @cached_property
    def days_of(self) -> dict[str, tuple[int, ...]]:
        """Each exercise's days, by id."""
        found: dict[str, list[int]] = {}
        for line in self.lines:
            found.setdefault(line.exercise.id, []).append(line.day.index)
        return {key: tuple(days) for key, days in found.items()}

    # ---- stimulus

    @cached_property
    def stimuli(self) -> dict[str, float]:
        """Each muscle's weekly good sets U: the sum over days of h."""
        raw: dict[tuple[str, int], int] = {}
        for line in self.lines:
            for muscle, part in line.exercise.contributions:
                key = (muscle, line.day.index)
                raw[key] = raw.get(key, 0) + part * line.prescription.effective
        found: dict[str, float] = {}
        for muscle in self.resolved.muscles:
            days = (raw.get((muscle, day.index), 0) for day in self.resolved.days)
            found[muscle] = sum(self.resolved.curves.session(s / 100_000) for s in days)
        return found

    def index(self, muscle: str) -> float:
        """A muscle's index: 100 is the stimulus of ten good weekly sets."""
        return self.resolved.curves.index(self.stimuli[muscle])

    @cached_property
    def stimulus(self) -> float:
        """The week index: the weighted mean of the muscles' indices."""
        muscles = self.resolved.muscles.values()
        return sum(m.weight * self.index(m.id) for m in muscles if m.weight) / self.resolved.weight_sum


@answered_once
def _done_as_printed(
    resolved: ResolvedBrief, entry: Entry, day: int
) -> tuple[Prescription, SetConditions, PartnerEffect]:
    """What the clock and the curves make of an entry on a day of the brief, and what its partner takes from it."""
    exercise = resolved.catalogue.exercises[entry.exercise]
    other = None if entry.partner is None else resolved.catalogue.exercises.get(entry.partner)
    effect = NO_EFFECT if other is None else effect_of_partner(resolved, exercise, other)
    way = (entry.sets, entry.rest, entry.technique, entry.drops, entry.partner is not None)
    said = (*way, entry.reps, entry.rir, effect)
    here = resolved.days[day]
    return make(resolved, exercise, here, *said), conditions(resolved, exercise, here, *said), effect


def ramp_seconds(resolved: ResolvedBrief, region: str, lifts: list[Exercise], day: ResolvedDay) -> int:
    """The ramp-up of a region's multi-joint lifts on one day: what the heaviest of them asks for, and second bars."""
    base = max(seconds for wanted, seconds in ramp_levels(resolved, region, day) if any(wanted(e) for e in lifts))
    heavy = sum(1 for e in lifts if e.main_lift and e.barbell)
    return base + max(0, heavy - 1) * round(resolved.number("ramp-second-seconds"))


def ramp_levels(
    resolved: ResolvedBrief, region: str, day: ResolvedDay
) -> tuple[tuple[Callable[[Exercise], bool], int], ...]:
    """What lifts ask for in ramp-up seconds, the least first: one easier set, half of a bar's ramp-up, a bar's.

    In efficiency only a bar that loads the spine gets all of it. Each level's lifts are among those of the one before.
    """
    full = round(resolved.number(f"ramp-{region}-seconds"))
    light = min(round(resolved.number("ramp-light-seconds")), full)
    on_the_spine = 2 if resolved.goal == "efficiency" else 0
    return (
        (lambda e: True, light),
        (lambda e: not resolved.ramps_lightly(e, day), max(light, full // 2)),
        (lambda e: not resolved.ramps_lightly(e, day) and e.barbell and e.axial >= on_the_spine, full),
    )
