"""What the options of a block are written as: days from one to another, travel, other sessions, sets done now."""

from __future__ import annotations

import re
from datetime import date
from typing import Any, Final

import click

from setwright.solver.cli.option_types import OptionType
from setwright.solver.records.sets_now import WRITE_SETS, sets_now_said
from setwright.solver.uses.blocks.ask import Sessions, Short, Span, Travel

DAYS: Final = "write FROM..TO, such as 2026-02-09..2026-02-15, or one day"
_SPAN: Final = re.compile(r"(\d{4}-\d{2}-\d{2})(?:\.\.(\d{4}-\d{2}-\d{2}))?(?:\s+(.*))?", re.DOTALL)
_SESSIONS: Final = re.compile(r"(\d{1,2})\s*x\s*(\d{1,3})")


class SpanType(OptionType):
    """FROM..TO, or one day."""

    name = "days"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Span:
        """The days; raises click.BadParameter."""
        if isinstance(value, Span):
            return value
        first, last, rest = self._days(value, param, ctx)
        if rest:
            self.fail(f"got {value!r}, {rest!r} is too much; {DAYS}", param, ctx)
        return Span(first, last)

    def _days(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> tuple[date, date, str]:
        """First day, last day and what follows them."""
        found = _SPAN.fullmatch(value.strip())
        if found is None:
            self.fail(f"got {value!r}; {DAYS}", param, ctx)
        try:
            first = date.fromisoformat(found[1])
            return first, date.fromisoformat(found[2] or found[1]), (found[3] or "").strip()
        except ValueError:
            self.fail(f"got {value!r}, a day that is in no calendar; {DAYS}", param, ctx)


class TravelType(SpanType):
    """FROM..TO KIT, with the sessions there if other than usual: 2026-03-02..2026-03-10 hotel-gym 2x25."""

    name = "travel"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Travel:
        """The travel, its kit in words; raises click.BadParameter."""
        if isinstance(value, Travel):
            return value
        first, last, rest = self._days(value, param, ctx)
        *words, tail = rest.split() or [""]
        sessions = _sessions(tail)
        kit = " ".join(words) if sessions else rest
        if not kit:
            self.fail(f"got {value!r}, it names no kit; write FROM..TO KIT, such as ... hotel-gym 2x25", param, ctx)
        return Travel(first, last, tuple(word.strip() for word in kit.split(",") if word.strip()), sessions)


class ShortType(SpanType):
    """FROM..TO and the sessions of those weeks: 2026-03-02..2026-03-08 2x30."""

    name = "short weeks"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Short:
        """The weeks; raises click.BadParameter."""
        if isinstance(value, Short):
            return value
        first, last, rest = self._days(value, param, ctx)
        sessions = _sessions(rest)
        if sessions is None:
            self.fail(f"got {value!r}; write FROM..TO and days x minutes, such as ... 2x30", param, ctx)
        return Short(first, last, sessions)


class SetsNowType(OptionType):
    """Muscles with their weekly sets at present: chest 6, back 8."""

    name = "sets"

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[tuple[str, float], ...]:
        """(muscle in words, sets) of each; raises click.BadParameter that names every part amiss."""
        if isinstance(value, tuple):
            return value
        found, wrong = sets_now_said(value)
        if wrong or not found:
            got = "\n".join(f"got {part!r}; {WRITE_SETS}" for part in wrong or [value])
            self.fail(got, param, ctx)
        return found


def _sessions(text: str) -> Sessions | None:
    """2x30 as sessions; None for anything else."""
    found = _SESSIONS.fullmatch(text.strip())
    return Sessions(int(found[1]), int(found[2])) if found else None
