"""What plain arithmetic says of a brief: more sets than the minutes or the days can hold, in one line each."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.entries import Exercise
from setwright.solver.brief.schema import Pin
from setwright.solver.evaluation.prescriptions import Option, options_of
from setwright.solver.evaluation.finding import some_sets
from setwright.solver.evaluation.resolved_brief import DayTerms, Terms
from setwright.solver.uses.relax.more_time import name_of


def arithmetic(terms: Terms) -> tuple[str, ...]:
    """The sums that cannot come out; empty where a brief is impossible for other reasons, or possible."""
    return (*caps(terms), *times(terms), *pin_times(terms))


def minutes_left(day: DayTerms) -> float:
    """A day's minutes after the shortest warm-up."""
    return max(0, day.limit - day.warm_up + day.warm_up_give) / 60


def caps(terms: Terms) -> Iterator[str]:
    """Lower ends above what the cap of sets a day lets the week hold."""
    if terms.off("muscle-day-cap"):
        return
    days = len(terms.days)
    for muscle in terms.muscles.values():
        if muscle.exact_low and muscle.low > terms.day_cap * days:
            name = terms.catalogue.muscles[muscle.id].name
            held = f"{days} x {terms.day_cap:g} = {terms.day_cap * days:g}"
            yield f"{name}: at least {muscle.low:g} sets asked; a day holds {terms.day_cap:g}, the week {held}."


def times(terms: Terms) -> Iterator[str]:
    """Lower ends that take more minutes than there are, even at the quickest exercise's pace throughout."""
    asked = {m.id: m.low for m in terms.muscles.values() if m.exact_low and m.low > 0}
    rates = [(sets_a_minute(option, exercise, asked), exercise.name, option) for exercise, option in ways(terms)]
    if not asked or not rates:
        return
    pace, name, option = max(rates, key=lambda rate: (rate[0], rate[1]))
    whole, have = sum(asked.values()), sum(minutes_left(day) for day in terms.days)
    if pace and whole / pace > have:
        each = {f"{low:g}" for low in asked.values()}
        said = f"{len(asked)} x {each.pop()} = {whole:g}" if len(each) == 1 and len(asked) > 1 else f"{whole:g}"
        worth = option.credited / 100 * sets_each(exercise_named(terms, name), asked)
        counted = "" if worth == option.sets else f", which count as {worth:g} of those asked"
        took = f"{some_sets(option.sets)} in {option.half_seconds / 120:.1f} min{counted}"
        yield (
            f"{said} sets asked; the quickest way ({name.lower()}, {took}) "
            f"takes {whole / pace:.0f} min for them; after the warm-ups the week has {have:.0f}."
        )


def ways(terms: Terms) -> Iterator[tuple[Exercise, Option]]:
    """Every exercise open on some day with each way it may be done there."""
    for day, exercises in zip(terms.days, terms.open_on, strict=True):
        for exercise in exercises:
            for option in options_of(terms, exercise, day):
                yield exercise, option


def exercise_named(terms: Terms, name: str) -> Exercise:
    return next(e for e in terms.catalogue.exercises.values() if e.name == name)


def sets_each(exercise: Exercise, asked: dict[str, float]) -> float:
    """The fractional sets of the asked muscles that one credited set gives."""
    return sum(part for muscle, part in exercise.contributions if muscle in asked) / 100


def sets_a_minute(option: Option, exercise: Exercise, asked: dict[str, float]) -> float:
    return option.credited / 100 * sets_each(exercise, asked) / (option.half_seconds / 120)


def pin_times(terms: Terms) -> Iterator[str]:
    """Pins of one day that take longer than the day, at the shortest rests."""
    exercises = terms.catalogue.exercises
    for day in terms.days:
        pins = [pin for pin in terms.brief.pins if pin.day and pin.day == day.weekday]
        seconds = 0.0
        for pin in pins:
            options = options_of(terms, exercises[pin.exercise], day)
            fitting = [o.half_seconds / 2 for o in options if pin.sets in (None, o.sets)]
            seconds += min(fitting, default=0.0)
        if pins and seconds / 60 > minutes_left(day):
            words = ", ".join(exercises[pin.exercise].name.lower() + said_sets(pin) for pin in pins)
            yield (
                f"{name_of(day.weekday)}: {words} take {seconds / 60:.0f} min at the shortest rests, ramp-up left "
                f"aside; after the warm-up the day has {minutes_left(day):.0f}."
            )


def said_sets(pin: Pin) -> str:
    return f" for {some_sets(pin.sets)}" if pin.sets else ""
