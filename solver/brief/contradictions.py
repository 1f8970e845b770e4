"""Where a brief that is well formed field by field still disagrees with itself."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from setwright.catalogue.faults import Fault
from setwright.solver.brief.schema import Brief, MuscleAsk, weekdays_of


def contradictions(brief: Brief) -> tuple[Fault, ...]:
    """Every disagreement of the brief with itself, in the order of its fields; it may lack its weekdays still."""
    return (
        *_of_days(brief),
        *_of_muscles_of_days(brief),
        *_of_order(brief),
        *_of_muscles(brief),
        *_of_rests(brief),
        *_of_choices(brief),
        *_of_pins(brief),
    )


def _of_days(brief: Brief) -> Iterator[Fault]:
    named = [day.weekday for day in brief.days if day.weekday is not None]
    for weekday, times in sorted(Counter(named).items()):
        if times > 1:
            yield Fault("days", f"{weekday} is named {times} times", "name each weekday once")
    if named and len(named) < len(brief.days):
        yield Fault(
            "days",
            f"got a weekday on {len(named)} of {len(brief.days)} days, expected one on each or on none",
            "name every weekday, or none and they are spread over the week",
        )
    if all(day.missed for day in brief.days):
        yield Fault("days", "every session is missed: nothing is left to train", "hold one session at least")


def _of_muscles_of_days(brief: Brief) -> Iterator[Fault]:
    for place, day in enumerate(brief.days):
        for name in day.trained or ():
            where = f"days[{place}].trained"
            if day.missed:
                yield Fault(where, f"'{name}' is named for a day that is missed", "drop one of the two")


def _of_order(brief: Brief) -> Iterator[Fault]:
    if not brief.any_order:
        if brief.rest_days_between != 1:
            yield Fault("rest_days_between", "is said, but the days have weekdays", "add any_order = true")
        return
    if any(day.weekday for day in brief.days):
        yield Fault("any_order", "is true, but weekdays are named", "drop the weekdays or any_order")
    count = len(brief.days)
    span = count + (count - 1) * brief.rest_days_between
    if span > 7:
        yield Fault(
            "rest_days_between",
            f"{count} days with {brief.rest_days_between} rest days between each take {span} days of 7",
            "ask for fewer days or fewer rest days between (0 is allowed)",
        )


def _of_muscles(brief: Brief) -> Iterator[Fault]:
    for name, ask in brief.muscles.items():
        where = f"muscles.{name}"
        yield from _of_muscle(where, ask)
        if ask.days_at_least is not None and ask.days_at_least > len(brief.days):
            yield Fault(
                f"{where}.days_at_least",
                f"got {ask.days_at_least}, but the week has {len(brief.days)} days",
                "ask for fewer days or plan more",
            )
        if brief.dose == "minimum" and ask.emphasis == "priority":
            yield Fault(where, "is at priority, but the minimum dose holds every muscle", "drop one of the two")


def _of_muscle(where: str, ask: MuscleAsk) -> Iterator[Fault]:
    if ask.at_least is not None and ask.at_most is not None and ask.at_least > ask.at_most:
        yield Fault(
            where,
            f"at least {ask.at_least:g} sets is more than at most {ask.at_most:g}",
            "swap the two or drop one",
        )
    if ask.emphasis == "none" and (ask.at_least or ask.days_at_least):
        yield Fault(where, "is at none, yet sets or days are asked for", "drop one of the two")
    if ask.emphasis == "priority" and ask.at_most == 0:
        yield Fault(where, "is at priority, yet at most 0 sets", "drop one of the two")


def _of_rests(brief: Brief) -> Iterator[Fault]:
    least, most = brief.rest_at_least, brief.rest_at_most
    if least is not None and most is not None and least > most:
        yield Fault("rest_at_least", f"at least {least} s is more than at most {most} s", "swap the two or drop one")


def _of_choices(brief: Brief) -> Iterator[Fault]:
    pairs = (("avoid", "like"), ("dislike", "like"), ("without", "like"))
    for one, other in pairs:
        for name in getattr(brief, one):
            if name in getattr(brief, other):
                yield Fault(one, f"'{name}' stands under {other} too", "keep it in one of the two")


def _of_pins(brief: Brief) -> Iterator[Fault]:
    weekdays = weekdays_of(brief)
    for place, pin in enumerate(brief.pins):
        where = f"pins[{place}]"
        if pin.exercise in brief.avoid:
            yield Fault(where, f"'{pin.exercise}' is pinned and avoided", "drop one of the two")
        if pin.pair_with in brief.avoid:
            yield Fault(f"{where}.pair_with", f"'{pin.pair_with}' is avoided", "drop one of the two")
        if pin.pair_with == pin.exercise:
            yield Fault(f"{where}.pair_with", "is the exercise itself", "name another exercise")
        if pin.pair_with is not None and brief.pairs is False:
            yield Fault(f"{where}.pair_with", "asks for a pair, but pairs is false", "drop one of the two")
        if pin.day is not None and brief.any_order:
            yield Fault(f"{where}.day", f"is {pin.day}, but the days have no weekdays", "drop the day or any_order")
        elif pin.day is not None and pin.day not in weekdays:
            yield Fault(f"{where}.day", f"{pin.day} is not a training day", f"choose one of {', '.join(weekdays)}")
