"""What plain arithmetic says of a brief: more sets than the minutes or the days can hold, in one line each."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.finding import some_sets
from setwright.solver.evaluation.prescriptions import Prescription, prescriptions_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief, ResolvedDay
from setwright.solver.uses.relax.more_time import name_of


def arithmetic(resolved: ResolvedBrief) -> tuple[str, ...]:
    """The sums that cannot come out; empty where a brief is impossible for other reasons, or possible."""
    return (*caps(resolved), *times(resolved), *pin_times(resolved))


def minutes_left(day: ResolvedDay) -> float:
    """A day's minutes after the shortest warm-up."""
    return max(0, day.limit - day.warm_up + day.warm_up_give) / 60


def caps(resolved: ResolvedBrief) -> Iterator[str]:
    """Lower ends above what the cap of sets a day lets the week hold."""
    if resolved.off("muscle-day-cap"):
        return
    days = len(resolved.days)
    for muscle in resolved.muscles.values():
        if muscle.exact_low and muscle.low > resolved.day_cap * days:
            name = resolved.catalogue.muscles[muscle.id].name
            held = f"{days} x {resolved.day_cap:g} = {resolved.day_cap * days:g}"
            yield f"{name}: at least {muscle.low:g} sets asked; a day holds {resolved.day_cap:g}, the week {held}."


def times(resolved: ResolvedBrief) -> Iterator[str]:
    """Lower ends that take more minutes than there are, even at the quickest exercise's pace throughout."""
    asked = {m.id: m.low for m in resolved.muscles.values() if m.exact_low and m.low > 0}
    rates = [
        (sets_a_minute(prescription, exercise, asked), exercise.name, prescription)
        for exercise, prescription in ways(resolved)
    ]
    if not asked or not rates:
        return
    pace, name, prescription = max(rates, key=lambda rate: (rate[0], rate[1]))
    whole, have = sum(asked.values()), sum(minutes_left(day) for day in resolved.days)
    if pace and whole / pace > have:
        each = {f"{low:g}" for low in asked.values()}
        said = f"{len(asked)} x {each.pop()} = {whole:g}" if len(each) == 1 and len(asked) > 1 else f"{whole:g}"
        worth = prescription.credited / 100 * sets_each(exercise_named(resolved, name), asked)
        counted = "" if worth == prescription.sets else f", which count as {worth:g} of those asked"
        took = f"{some_sets(prescription.sets)} in {prescription.half_seconds / 120:.1f} min{counted}"
        yield (
            f"{said} sets asked; the quickest way ({name.lower()}, {took}) "
            f"takes {whole / pace:.0f} min for them; after the warm-ups the week has {have:.0f}."
        )


def ways(resolved: ResolvedBrief) -> Iterator[tuple[Exercise, Prescription]]:
    """Every exercise open on some day with each way it may be done there."""
    for day, exercises in zip(resolved.days, resolved.open_on, strict=True):
        for exercise in exercises:
            for prescription in prescriptions_of(resolved, exercise, day):
                yield exercise, prescription


def exercise_named(resolved: ResolvedBrief, name: str) -> Exercise:
    return next(e for e in resolved.catalogue.exercises.values() if e.name == name)


def sets_each(exercise: Exercise, asked: dict[str, float]) -> float:
    """The fractional sets of the asked muscles that one credited set gives."""
    return sum(part for muscle, part in exercise.contributions if muscle in asked) / 100


def sets_a_minute(prescription: Prescription, exercise: Exercise, asked: dict[str, float]) -> float:
    return prescription.credited / 100 * sets_each(exercise, asked) / (prescription.half_seconds / 120)


def pin_times(resolved: ResolvedBrief) -> Iterator[str]:
    """Pins of one day that take longer than the day, at the shortest rests."""
    exercises = resolved.catalogue.exercises
    for day in resolved.days:
        pins = [pin for pin in resolved.brief.pins if pin.day and pin.day == day.weekday]
        seconds = 0.0
        for pin in pins:
            prescriptions = prescriptions_of(resolved, exercises[pin.exercise], day)
            fitting = [o.half_seconds / 2 for o in prescriptions if pin.sets in (None, o.sets)]
            seconds += min(fitting, default=0.0)
        if pins and seconds / 60 > minutes_left(day):
            words = ", ".join(exercises[pin.exercise].name.lower() + said_sets(pin) for pin in pins)
            yield (
                f"{name_of(day.weekday)}: {words} take {seconds / 60:.0f} min at the shortest rests, ramp-up left "
                f"aside; after the warm-up the day has {minutes_left(day):.0f}."
            )


def said_sets(pin: Pin) -> str:
    return f" for {some_sets(pin.sets)}" if pin.sets else ""
