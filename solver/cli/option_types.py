"""Kinds of values that options take beyond click's own: ranges, parts of a whole, lists of words, dates."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.faults import Fault
from setwright.catalogue.near import did_you_mean
from setwright.solver.uses.time_budget.ranges import MOST_AMOUNTS, amounts_from

if TYPE_CHECKING:
    OptionType = click.ParamType[Any]
else:
    # Generic in later versions of click only.
    OptionType = click.ParamType


class AmountsType(OptionType):
    """FROM:TO or FROM:TO:STEP as the amounts of a range, both ends included, each within `low` to `high`."""

    name = "range"

    def __init__(self, low: int, high: int, step: int) -> None:
        """`step` is the step where none is written."""
        self.low, self.high, self.step = low, high, step

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[int, ...]:
        """The amounts; raises click.BadParameter with what is wrong and how to write it."""
        if isinstance(value, tuple):
            return value
        form = f"write FROM:TO or FROM:TO:STEP in whole numbers from {self.low} to {self.high}"
        found = re.fullmatch(r"([0-9]{1,4}):([0-9]{1,4})(?::([0-9]{1,4}))?", value.strip())
        if found is None:
            self.fail(f"{value!r} is not a range; {form}", param, ctx)
        first, last, step = int(found[1]), int(found[2]), int(found[3]) if found[3] else self.step
        if first < self.low or last > self.high:
            self.fail(f"{value!r} goes beyond {self.low} to {self.high}; {form}", param, ctx)
        if last < first or step < 1:
            self.fail(f"{value!r} does not rise; {form}", param, ctx)
        amounts = amounts_from(first, last, step)
        if len(amounts) > MOST_AMOUNTS:
            said = f"{value!r} asks for {len(amounts)} weeks, at most {MOST_AMOUNTS}"
            self.fail(f"{said}; take a longer step", param, ctx)
        return amounts


class SpanType(OptionType):
    """FROM-TO as two whole numbers, or one number for both, each within `low` to `high`."""

    name = "span"

    def __init__(self, low: int, high: int) -> None:
        self.low, self.high = low, high

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[int, int]:
        """(least, most); raises click.BadParameter."""
        if isinstance(value, tuple):
            return value
        form = (
            f"expected FROM-TO in whole numbers from {self.low} to {self.high}, such as {self.low + 2}-{self.low + 4}"
        )
        found = re.fullmatch(r"([0-9]{1,4})(?:-([0-9]{1,4}))?", value.strip())
        if found is None:
            self.fail(f"got {value!r}, {form}", param, ctx)
        least, most = int(found[1]), int(found[2] or found[1])
        if not self.low <= least <= most <= self.high:
            self.fail(f"got {value!r}, {form}", param, ctx)
        return least, most


class ShardType(OptionType):
    """K/N as two numbers, 1 <= K <= N: the Kth of N parts."""

    name = "K/N"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[int, int]:
        """(K, N); raises click.BadParameter."""
        if isinstance(value, tuple):
            return value
        found = re.fullmatch(r"([0-9]{1,6})/([0-9]{1,6})", value)
        if not found or not 1 <= int(found[1]) <= int(found[2]):
            self.fail(f"got {value!r}, expected K/N with 1 <= K <= N; write for example 3/50", param, ctx)
        return int(found[1]), int(found[2])


class WordsType(OptionType):
    """Words between commas, each one of those known, each taken once, in any case."""

    name = "words"

    def __init__(self, known: Mapping[str, Any] | tuple[str, ...], noun: str) -> None:
        """`noun` is what one word is called in a fault."""
        self.known, self.noun = tuple(known), noun

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[str, ...]:
        """The words, in the order written; raises click.BadParameter that names every unknown one."""
        if isinstance(value, tuple):
            return value
        words = tuple(dict.fromkeys(part.strip().lower() for part in value.split(",") if part.strip()))
        listed = f"the {self.noun}s are {', '.join(self.known)}"
        if not words:
            self.fail(f"names no {self.noun}; {listed}", param, ctx)
        wrong = [
            f"{word!r} is no {self.noun}; {did_you_mean(word, self.known) or listed}"
            for word in words
            if word not in self.known
        ]
        if wrong:
            self.fail("\n".join(wrong), param, ctx)
        return words


class WholeNumberType(click.IntRange):
    """A whole number within limits, called so in click's words."""

    name = "whole number"


class DayMinutesType(OptionType):
    """DAY=MINUTES or MINUTES alone, within `low` to `high`, as (day word or None, minutes)."""

    name = "minutes"

    def __init__(self, low: int, high: int) -> None:
        self.low, self.high = low, high

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[str | None, int]:
        """(day as written or None, minutes); raises click.BadParameter."""
        if isinstance(value, tuple):
            return value
        found = re.fullmatch(r"(?:([^=]+)=)?([0-9]{1,4})", value.strip())
        form = f"write DAY=MINUTES such as thu=25, or MINUTES alone, {self.low} to {self.high}"
        if found is None:
            self.fail(f"got {value!r}; {form}", param, ctx)
        minutes = int(found[2])
        if not self.low <= minutes <= self.high:
            self.fail(f"got {minutes} minutes; {form}", param, ctx)
        return (found[1].strip() if found[1] else None), minutes


class DayType(OptionType):
    """A date as YYYY-MM-DD (ISO 8601)."""

    name = "date"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> date:
        """The date; raises click.BadParameter."""
        if isinstance(value, date):
            return value
        try:
            return click.DateTime(["%Y-%m-%d"]).convert(value, param, ctx).date()
        except click.BadParameter:
            self.fail(f"got {value!r}, expected a date such as 2026-01-05", param, ctx)


class GatheredType(OptionType):
    """Another type whose faults do not end the command at once: it takes them with `gathered_faults`."""

    def __init__(self, inner: OptionType, instead: Any = None) -> None:
        """`instead` is the value that stands for a faulty one until the faults are told."""
        self.inner, self.instead, self.name = inner, instead, inner.name

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """The inner type's value, or `instead` with the fault kept in the context."""
        try:
            return self.inner.convert(value, param, ctx)
        except click.BadParameter as error:
            if param is None or ctx is None:
                raise
            faults = ctx.meta.setdefault(__name__, [])
            faults += [Fault(max(param.opts, key=len), line.rstrip(".")) for line in error.message.splitlines()]
            return self.instead


def gathered_faults(ctx: click.Context) -> list[Fault]:
    """The faults of every option of a `GatheredType`, in the order of the command line."""
    found: list[Fault] = ctx.meta.get(__name__, [])
    return found
