"""A brief given another amount of time: so many minutes a session, so many a week, or so many days."""

from __future__ import annotations

from dataclasses import replace

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.contradictions import contradictions
from setwright.solver.brief.defaults import LIMITS
from setwright.solver.brief.parsed_brief import ParsedBrief, with_defaults
from setwright.solver.brief.schema import Brief


def with_minutes(parsed: ParsedBrief, minutes: tuple[int, ...]) -> ParsedBrief:
    """The brief with each day's minutes replaced; raises UsageFault outside the minutes that a day may have."""
    low, high = LIMITS["minutes"]
    wrong = sorted({m for m in minutes if not low <= m <= high})
    if wrong:
        got = " and ".join(str(m) for m in wrong)
        raise UsageFault(
            Fault("minutes", f"{got} minutes a session, expected {low:g} to {high:g}", "ask for another range")
        )
    days = [day.model_copy(update={"minutes": m}) for day, m in zip(parsed.brief.days, minutes, strict=True)]
    return replace(parsed, brief=parsed.brief.model_copy(update={"days": tuple(days)}))


def each_session(parsed: ParsedBrief, minutes: int) -> ParsedBrief:
    """The brief with every session at the same minutes."""
    return with_minutes(parsed, (minutes,) * len(parsed.brief.days))


def each_week(parsed: ParsedBrief, minutes: int) -> ParsedBrief:
    """The brief with so many minutes a week, shared among its days as it shares its own."""
    return with_minutes(parsed, shared(minutes, tuple(day.minutes for day in parsed.brief.days)))


def shared(minutes: int, parts: tuple[int, ...]) -> tuple[int, ...]:
    """Whole minutes in proportion to some parts, by highest averages: no part falls when the sum rises.

    The divisor method of Jefferson and D'Hondt (published for seats; from memory): each minute goes where
    part/(minutes held + 1) is greatest, the first of equals.
    """
    held = [0] * len(parts)
    for _ in range(minutes):
        place = max(range(len(parts)), key=lambda i: (parts[i] / (held[i] + 1), -i))
        held[place] += 1
    return tuple(held)


def so_many_days(parsed: ParsedBrief, days: int) -> ParsedBrief:
    """The brief on so many days, its own where the number is its own, else spread over the week anew.

    Raises UsageFault where its days differ in more than the weekday, and where it names a day that is gone.
    """
    brief = parsed.brief
    if days == len(brief.days):
        return parsed
    like, *others = (day.model_copy(update={"weekday": None, "missed": None}) for day in brief.days)
    if any(other != like for other in others):
        raise UsageFault(
            Fault(
                "days",
                "the days differ in more than the weekday, so it is not clear what a further day would be",
                "give a brief whose days are alike, such as '3 days x 40 min'",
            )
        )
    return replace(parsed, brief=_agreed(with_defaults(brief.model_copy(update={"days": (like,) * days})), days))


def _agreed(brief: Brief, days: int) -> Brief:
    """The brief, unless it contradicts itself on so many days."""
    found = list(contradictions(brief))
    if found:
        raise UsageFault([fault.at(f"on {days} days: {fault.where}") for fault in found])
    return brief
