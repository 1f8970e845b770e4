"""Kinds of values that `load` takes: a set as done, a range of repetitions, numbers between commas."""

from __future__ import annotations

import re
from typing import Any, Final

import click

from setwright.solver.brief.defaults import LIMITS, MOST_PAIRS
from setwright.solver.cli.option_types import OptionType

MOST_LOAD: Final = LIMITS["load"][1]
MOST_REPS: Final = round(LIMITS["reps"][1])
"""Numbers above which a set is a slip of the pen, as in a brief."""


class SetType(OptionType):
    """80x8 or 82.5 x 6 as a load and repetitions."""

    name = "set"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[float, int]:
        """(load, repetitions); raises click.BadParameter."""
        if isinstance(value, tuple):
            return value
        text = value.strip().lower().replace("\N{MULTIPLICATION SIGN}", "x").replace(",", ".")
        found = re.fullmatch(r"(\d+(?:\.\d+)?)\s*x\s*(\d+)", text)
        if found is None:
            self.fail(
                f"got {value!r}, expected a load and repetitions such as 80x8; the unit goes in --unit", param, ctx
            )
        load, reps = float(found[1]), int(found[2])
        if not 0 < load <= MOST_LOAD or not 1 <= reps <= MOST_REPS:
            said = f"got {value!r}, expected a load above 0 and up to {MOST_LOAD:g}, and 1 to {MOST_REPS} repetitions"
            self.fail(said, param, ctx)
        return load, reps


class RepRangeType(OptionType):
    """8-12 or 8 as the fewest and the most repetitions."""

    name = "repetitions"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[int, int]:
        """(fewest, most); raises click.BadParameter."""
        if isinstance(value, tuple):
            return value
        found = re.fullmatch(r"(\d{1,2})(?:\s*[-\u2013]\s*(\d{1,2}))?", value.strip())
        low, high = (int(found[1]), int(found[2] or found[1])) if found else (0, 0)
        if not 1 <= low <= high <= MOST_REPS:
            self.fail(
                f"got {value!r}, expected repetitions such as 8-12, 1 to {MOST_REPS}, the fewer first", param, ctx
            )
        return low, high


class NumbersType(OptionType):
    """20,10,5,2.5 as numbers above 0."""

    name = "numbers"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[float, ...]:
        """The numbers as written; raises click.BadParameter."""
        if isinstance(value, tuple):
            return value
        parts = [part.strip() for part in re.split(r"[,; ]+", value) if part.strip()]
        wrong = [part for part in parts if not re.fullmatch(r"\d+(?:\.\d+)?", part) or float(part) <= 0]
        if wrong or not parts:
            self.fail(f"got {value!r}, expected weights above 0 between commas, such as 20,10,5,2.5", param, ctx)
        if len(parts) > MOST_PAIRS:
            self.fail(f"got {len(parts)} weights, at most {MOST_PAIRS} are weighed against each other", param, ctx)
        return tuple(map(float, parts))
