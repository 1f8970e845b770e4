"""Variants as rows: what each came to, and what a step along one axis changes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from sys import intern
from typing import Any

from setwright.solver.sheets.common.words import counted, listed, whole_minutes
from setwright.solver.uses.variants.matrix import Variant, VariantMatrix
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.results import read_result
from setwright.solver.uses.variants.task import CLASH, SOLVED


@dataclass(frozen=True)
class VariantRow:
    """One variant as the matrix shows it; numbers are None where there is no week."""

    variant: Variant
    end: str
    said: str
    index: float | None = None
    score: float | None = None
    gap_share: float | None = None
    interval: tuple[int, int] | None = None
    minutes: int | None = None
    """Minutes a week that are used, and those that are given."""
    given: int | None = None
    exercises: tuple[str, ...] = ()
    extends: str = ""
    kept: int = 0
    dropped: tuple[str, ...] = ()
    given_up: float = 0.0

    @property
    def before(self) -> int:
        """Lines of the shorter variant."""
        return self.kept + len(self.dropped)


@dataclass(frozen=True)
class AxisStep:
    """What a step along one axis changes."""

    before: VariantRow
    after: VariantRow
    axis: str

    @property
    def common(self) -> int:
        """How many exercises both weeks have."""
        return len(set(self.before.exercises) & set(self.after.exercises))


def read_variant_rows(matrix: VariantMatrix, store: ResultStore) -> tuple[VariantRow, ...]:
    """Every variant as it stands in the folder; one without a result is `to do`."""
    return tuple(_row_of(variant, store.read(variant.key)) for variant in matrix.variants)


def _row_of(variant: Variant, data: bytes | None) -> VariantRow:
    found = read_result(data, variant.key) if data else None
    if found is None:
        return VariantRow(variant, "to do", "")
    week: dict[str, Any] | None = found["week"]
    if week is None:
        return VariantRow(variant, found["end"], found["said"])
    kept = found["extends"] or {"name": "", "kept": (), "dropped": (), "given_up": 0.0}
    return VariantRow(
        variant=variant,
        end=found["end"],
        said="",
        index=week["stimulus"],
        score=week["score"],
        gap_share=week["gap_share"],
        minutes=sum(whole_minutes(day["seconds"]) for day in week["days"] if day["entries"]),
        interval=(week["interval"][0], week["interval"][1]),
        given=sum(day["minutes"] for day in week["brief"]["days"]),
        exercises=tuple(sorted({intern(e["exercise"]) for day in week["days"] for e in day["entries"]})),
        extends=kept["name"],
        kept=len(kept["kept"]),
        dropped=tuple(kept["dropped"]),
        given_up=kept["given_up"],
    )


def axis_steps(matrix: VariantMatrix, rows: tuple[VariantRow, ...]) -> Iterator[AxisStep]:
    """Each pair of solved variants that are one step apart on one axis, the axes in order."""
    at = {tuple(row.variant.values.items()): row for row in rows}
    for row in rows:
        for axis, labels in matrix.axes:
            for label in reversed(labels[: labels.index(row.variant.values[axis])]):
                other = at.get(tuple({**row.variant.values, axis: label}.items()))
                if other is not None:
                    if row.end == other.end == SOLVED:
                        yield AxisStep(other, row, axis)
                    break


def summary(matrix: VariantMatrix, rows: tuple[VariantRow, ...]) -> str:
    """The title, and how many of which end."""
    title = f"{matrix.title}: " if matrix.title else ""
    return f"{title}{counted_ends(rows)}"


def counted_ends(rows: tuple[VariantRow, ...]) -> str:
    """How many of which end."""
    ends = [row.end for row in rows]
    words = {CLASH: "impossible"}
    by_end = [
        f"{ends.count(end)} {words.get(end, end)}" for end in dict.fromkeys(sorted(ends, key=lambda e: e != SOLVED))
    ]
    return f"{counted(len(rows), 'variant')}, {listed(by_end)}."


def ended(row: VariantRow) -> str:
    """How a variant ended, in a coach's word."""
    return "impossible" if row.end == CLASH else row.end


def signed(before: float | None, after: float | None) -> str:
    """A difference with its sign and one decimal; None counts as 0."""
    return f"{(after or 0.0) - (before or 0.0):+.1f}"


def line_words(line: str) -> str:
    """A line as words: mon hanging-knee-raise -> Mon hanging knee raise."""
    return line.replace("-", " ").capitalize()
