"""Which week of a block is of which kind: what the calendar takes, and when a lighter week is due."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from setwright.catalogue.defaults import BlockDefaults
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.schema import Brief
from setwright.solver.uses.blocks.ask import MOST_WEEKS, WEEK, BlockAsk, Short, Span, Travel

Kind = Literal["build", "lighter", "return", "minimum", "travel", "short", "off"]
AS_USUAL = ("build", "lighter", "return")
"""Kinds of weeks at the usual place on the usual days, which a shifted block counts."""


@dataclass(frozen=True)
class CalendarWeek:
    """One week of a block: its kind, the spans that reach into it, and the weeks off just before it."""

    number: int
    starts: date | None
    kind: Kind
    spans: tuple[Span, ...] = ()
    weeks_off: int = 0
    """In a week of return, how many weeks without training came before."""
    resumes: bool = False
    """Whether the build weeks from here on climb anew, after a long break."""

    def holds(self, day: date) -> bool:
        """Whether a day stands in it; never where weeks are only numbered."""
        return self.starts is not None and self.starts <= day < self.starts + WEEK

    @property
    def ends(self) -> date | None:
        """Its Sunday."""
        return None if self.starts is None else self.starts + timedelta(days=6)


def calendar_of(ask: BlockAsk, brief: Brief, numbers: BlockDefaults) -> tuple[CalendarWeek, ...]:
    """The weeks of a block in order; `ask` has no faults."""
    every = numbers.lighter_every if ask.lighter_every is None else ask.lighter_every
    found: list[CalendarWeek] = []
    off, returns, since, counted = ask.break_weeks_before, 0, 0, 0
    weeks_off, resumes = 0, False
    while counted < ask.weeks and len(found) < 2 * MOST_WEEKS:
        starts = None if ask.starts is None else ask.starts + len(found) * WEEK
        spans = () if starts is None else spans_in(ask, starts)
        kind = _taken(ask, brief, starts, spans)
        if kind == "off":
            off, since = off + 1, 0
        else:
            if off >= numbers.return_after:
                returns, weeks_off, resumes = 1 + (off >= numbers.return_twice_after), off, True
            off = 0
            kind = kind or _usual(returns, since, every)
            returns -= kind == "return"
            since = 0 if kind in ("lighter", "return", "minimum") else since + 1
        climbs = resumes and kind == "build"
        found.append(CalendarWeek(len(found) + 1, starts, kind, spans, weeks_off if kind == "return" else 0, climbs))
        resumes = resumes and not climbs
        counted += 1 if not ask.shifted or kind in AS_USUAL else 0
    return tuple(found)


def _usual(returns: int, since: int, every: int) -> Kind:
    """The kind of a week that the calendar leaves alone."""
    if returns:
        return "return"
    return "lighter" if every and since >= every - 1 else "build"


def _taken(ask: BlockAsk, brief: Brief, starts: date | None, spans: tuple[Span, ...]) -> Kind | None:
    """What the spans make of a week; None where they leave its sessions alone."""
    if starts is None or not spans:
        return None
    if any(span in ask.minimum for span in spans):
        return "minimum"
    if any(isinstance(span, Short) for span in spans):
        return "short"
    away = [span for span in spans if isinstance(span, Travel)]
    dates = session_dates(brief, starts)
    off = [day for day in dates if any(span.holds(day) for span in spans if span not in away)]
    if len(off) == len(dates) and not any(span.sessions for span in away):
        return "off"
    if any(span.sessions or any(span.holds(day) for day in dates) for span in away):
        return "travel"
    return "short" if off else None


def spans_in(ask: BlockAsk, starts: date) -> tuple[Span, ...]:
    """The spans that have a day in the week that begins then."""
    sunday = starts + timedelta(days=6)
    return tuple(span for _, span in ask.spans() if span.first <= sunday and starts <= span.last)


def session_dates(brief: Brief, starts: date) -> tuple[date, ...]:
    """The day of each session in the week that begins then; days in any order follow each other by their rest days."""
    spacing = brief.rest_days_between + 1
    return tuple(
        starts + timedelta(days=WEEKDAYS.index(day.weekday) if day.weekday else min(6, spacing * place))
        for place, day in enumerate(brief.days)
    )
