"""The kinds of values that options take: ranges, parts, lists of words, dates; what is refused and how."""

from __future__ import annotations

from datetime import date
from typing import Any, get_args

import click
import pytest

from setwright.solver.cli.commands.sheet import command as sheet
from setwright.solver.cli.option_types import AmountsType, DayType, ShardType, WordsType
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.coach_fields import Paper

MINUTES = AmountsType(10, 240, 10)
GOALS = WordsType(("growth", "efficiency", "balanced"), "goal")


def refused(kind: Any, text: str) -> str:
    with pytest.raises(click.BadParameter) as caught:
        kind.convert(text, None, None)
    return caught.value.message


def test_ranges_hold_both_ends() -> None:
    assert MINUTES.convert("20:60:10", None, None) == (20, 30, 40, 50, 60)
    assert MINUTES.convert(" 20:45 ", None, None) == (20, 30, 40, 45)
    assert AmountsType(1, 7, 1).convert("2:6", None, None) == (2, 3, 4, 5, 6)
    assert MINUTES.convert("30:30", None, None) == (30,)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("20-60", "is not a range; write FROM:TO"),
        ("20", "is not a range; write FROM:TO"),
        ("a:b", "is not a range"),
        ("\u0662\u0660:60", "is not a range"),
        ("5:60:10", "goes beyond 10 to 240; write FROM:TO"),
        ("20:300:10", "goes beyond 10 to 240"),
        ("60:20:10", "does not rise; write FROM:TO"),
        ("20:60:0", "does not rise"),
        ("10:240:1", "asks for 231 weeks, at most 40; take a longer step"),
    ],
)
def test_a_wrong_range_is_told_what_is_wrong_and_how_to_write_it(text: str, said: str) -> None:
    assert said in refused(MINUTES, text)


def test_a_shard_is_one_of_its_parts() -> None:
    assert ShardType().convert("3/50", None, None) == (3, 50)
    for text in ("3/2", "0/4", "x", "1/0"):
        assert "expected K/N with 1 <= K <= N; write for example 3/50" in refused(ShardType(), text)


def test_words_are_taken_once_each_and_every_unknown_one_is_named_with_the_nearest() -> None:
    assert GOALS.convert(" growth,Efficiency,growth", None, None) == ("growth", "efficiency")
    assert refused(GOALS, "grwth,speed,growth").splitlines() == [
        "'grwth' is no goal; did you mean 'growth'?",
        "'speed' is no goal; the goals are growth, efficiency, balanced",
    ]
    assert "names no goal" in refused(GOALS, " , ")


def test_a_day_is_a_date() -> None:
    assert DayType().convert("2026-01-05", None, None) == date(2026, 1, 5)
    for text in ("soon", "2026-02-30", "05.01.2026", "2026-01-05T10:00"):
        assert refused(DayType(), text) == f"got {text!r}, expected a date such as 2026-01-05"


def test_the_limits_of_sheet_are_those_of_the_coachs_file() -> None:
    """Said twice, because the file's own models are too heavy for help."""
    inner = {parameter.name: parameter.type.inner for parameter in sheet.params if hasattr(parameter.type, "inner")}
    fields = Coach.model_json_schema()["properties"]
    for name in ("weeks", "revision"):
        assert (inner[name].min, inner[name].max) == (fields[name]["minimum"], fields[name]["maximum"])
    assert tuple(inner["paper"].choices) == get_args(Paper)
