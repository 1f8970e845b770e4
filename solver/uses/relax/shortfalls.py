"""What plain arithmetic says of a brief: more sets than its minutes or its days can hold, whatever the week."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.prescriptions import Prescription, prescriptions_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay


@dataclass(frozen=True)
class CapShortfall:
    """A muscle asked for more weekly sets than `days` days of at most `a_day` sets hold."""

    muscle: str
    asked: float
    a_day: float
    days: int


@dataclass(frozen=True)
class TimeShortfall:
    """More weekly sets asked than the week's minutes hold at the pace of the quickest exercise."""

    asked: tuple[float, ...]
    """Weekly sets of each muscle that has a lower end."""
    exercise: str
    """The id of the quickest exercise."""
    sets: int
    set_minutes: float
    """What so many sets of it take."""
    counted: float
    """Sets of the asked ones that these count as."""
    needed: float
    """Minutes that all the sets asked take at this pace."""
    available: float
    """Minutes of the week after the shortest warm-ups."""


@dataclass(frozen=True)
class PinShortfall:
    """Exercises pinned on a weekday that take more minutes than the day has, at the shortest rests."""

    weekday: str
    pins: tuple[tuple[str, int | None], ...]
    """(exercise id, sets asked or None)."""
    needed: float
    """Minutes of the pinned exercises, ramp-up sets left aside."""
    available: float
    """The day's minutes after the shortest warm-up."""


Shortfall = CapShortfall | TimeShortfall | PinShortfall


def shortfalls_of(resolved: ResolvedBrief) -> tuple[Shortfall, ...]:
    """The sums that cannot come out; empty where a brief is possible, or impossible for other reasons."""
    return (*_caps(resolved), *_time(resolved), *_pins(resolved))


def _minutes_left(day: ResolvedDay) -> float:
    """A day's minutes after the shortest warm-up."""
    return max(0, day.limit - day.overhead + day.warm_up_give) / 60


def _caps(resolved: ResolvedBrief) -> Iterator[CapShortfall]:
    """Lower ends above what the cap of sets a day lets the week hold."""
    if resolved.off("muscle-day-cap"):
        return
    days = len(resolved.days)
    for muscle in resolved.muscles.values():
        if muscle.exact_low and muscle.low > resolved.day_cap * days:
            yield CapShortfall(muscle.id, muscle.low, resolved.day_cap, days)


def _time(resolved: ResolvedBrief) -> Iterator[TimeShortfall]:
    """Lower ends that take more minutes than there are, even at the quickest exercise's pace throughout."""
    asked = {m.id: m.low for m in resolved.muscles.values() if m.exact_low and m.low > 0}
    paces = [(_sets_a_minute(p, e, asked), e.name, e, p) for e, p in _ways(resolved)]
    if not asked or not paces:
        return
    pace, _, exercise, prescription = max(paces, key=lambda found: found[:2])
    whole, available = sum(asked.values()), sum(_minutes_left(day) for day in resolved.days)
    if pace and whole / pace > available:
        yield TimeShortfall(
            asked=tuple(asked.values()),
            exercise=exercise.id,
            sets=prescription.sets,
            set_minutes=prescription.half_seconds / 120,
            counted=prescription.credited / 100 * _counted(exercise, asked),
            needed=whole / pace,
            available=available,
        )


def _ways(resolved: ResolvedBrief) -> Iterator[tuple[Exercise, Prescription]]:
    """Every exercise open on some day with each way it may be done there."""
    for day, exercises in zip(resolved.days, resolved.open_on, strict=True):
        for exercise in exercises:
            for prescription in prescriptions_of(resolved, exercise, day):
                yield exercise, prescription


def _counted(exercise: Exercise, asked: dict[str, float]) -> float:
    """The fractional sets of the asked muscles that one credited set gives."""
    return sum(part for muscle, part in exercise.contributions if muscle in asked) / 100


def _sets_a_minute(prescription: Prescription, exercise: Exercise, asked: dict[str, float]) -> float:
    return prescription.credited / 100 * _counted(exercise, asked) / (prescription.half_seconds / 120)


def _pins(resolved: ResolvedBrief) -> Iterator[PinShortfall]:
    """Pins of one day that take longer than the day."""
    exercises = resolved.catalogue.exercises
    for day in resolved.days:
        pins = [pin for pin in resolved.brief.pins if pin.day and pin.day == day.weekday]
        seconds = 0.0
        for pin in pins:
            prescriptions = prescriptions_of(resolved, exercises[pin.exercise], day)
            fitting = [o.half_seconds / 2 for o in prescriptions if pin.sets in (None, o.sets)]
            seconds += min(fitting, default=0.0)
        if pins and day.weekday and seconds / 60 > _minutes_left(day):
            asked = tuple((pin.exercise, pin.sets) for pin in pins)
            yield PinShortfall(day.weekday, asked, seconds / 60, _minutes_left(day))
