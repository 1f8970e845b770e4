"""`compare` and `curve` from the command line: ranges, goals, files, and what wrong input is told."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.catalogue.faults import UsageFault
from setwright.solver.cli.compare import goals_of
from setwright.solver.cli.curve import asked
from setwright.solver.cli.ranges import span_of

Run = Callable[..., Result]
TINY = "1 day x 20 min, bands"


def test_ranges_hold_both_ends() -> None:
    assert span_of("--minutes", "20:60:10", 10, 240, 10) == (20, 30, 40, 50, 60)
    assert span_of("--minutes", "20:45:10", 10, 240, 10) == (20, 30, 40, 45)
    assert span_of("--days", "2:6", 1, 7, 1) == (2, 3, 4, 5, 6)
    assert span_of("--minutes", "30:30", 10, 240, 10) == (30,)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("20-60", "is not a range"),
        ("20", "is not a range"),
        ("a:b", "is not a range"),
        ("5:60:10", "goes beyond 10 to 240"),
        ("20:300:10", "goes beyond 10 to 240"),
        ("60:20:10", "does not rise"),
        ("20:60:0", "does not rise"),
        ("10:240:1", "asks for 231 weeks, at most 40"),
    ],
)
def test_a_wrong_range_is_told_what_is_wrong_and_how_to_write_it(text: str, said: str) -> None:
    with pytest.raises(UsageFault, match=said) as caught:
        span_of("--minutes", text, 10, 240, 10)
    assert caught.value.faults[0].remedy


def test_minutes_a_session_are_asked_where_nothing_is_said() -> None:
    assert asked(None, None, None) == ("minutes", tuple(range(20, 121, 10)))
    assert asked(None, "60:120:30", None) == ("weekly", (60, 90, 120))
    with pytest.raises(UsageFault, match="--minutes and --days were given together"):
        asked("20:40", None, "2:3")


def test_goals_are_read_once_each_and_near_misses_named() -> None:
    assert goals_of("growth, efficiency,growth", 1) == ("growth", "efficiency")
    assert goals_of(None, 1) == ("growth", "efficiency", "balanced")
    assert goals_of(None, 2) == ()
    with pytest.raises(UsageFault, match="did you mean 'growth'") as caught:
        goals_of("grwth,speed", 1)
    assert len(caught.value.faults) == 2


@pytest.mark.parametrize(
    "arguments",
    [
        ("curve", TINY, "--minutes", "nonsense"),
        ("curve", TINY, "--days", "0:9"),
        ("curve", "mon 30 min, thu 60 min", "--days", "1:3"),
        ("compare", TINY, "--goals", "growth"),
        ("compare", TINY, "--goals", ""),
        ("compare", "3x40 grow dlets", "2 x thirty"),
    ],
)
def test_usage_errors_exit_with_two(arguments: tuple[str, ...], run: Run) -> None:
    result = run(*arguments)
    assert result.exit_code == 2 and result.stdout == "" and result.stderr


def test_the_faults_of_every_brief_are_told_at_once(run: Run) -> None:
    said = run("compare", "3x40 grow dlets", "2x40 grow latz").stderr
    assert "brief 1" in said and "brief 2" in said


def test_a_curve_is_drawn_and_told(run: Run, tmp_path: Path) -> None:
    """Two rows, searched, with the table on stdout and the drawing in the file."""
    file = tmp_path / "curve.svg"
    result = run("curve", TINY, "--minutes", "15:25:10", "-o", str(file))
    assert result.exit_code == 0
    assert "15 to 25 min a session" in result.stdout and max(map(len, result.stdout.splitlines())) <= 100
    assert file.read_text().startswith("<svg")


def test_a_comparison_goes_on_where_one_brief_clashes(run: Run) -> None:
    """A vertical pull with dumbbells alone is impossible; the other week is still shown, and the exit code is 3."""
    impossible = "1 day x 30 min, home dumbbells, must vertical pull"
    result = run("compare", impossible, TINY, "--search", "quick", "--json")
    assert result.exit_code == 3
    document = json.loads(result.stdout)
    first, second = document["cases"]
    assert first["week"] is None and "vertical-pull" in first["no_week"]
    assert second["week"]["schema"] == "setwright.week/1"


@pytest.mark.slow
@pytest.mark.parametrize(
    "asked_for", [("compare", "--goals", "growth,balanced", "--search", "quick"), ("curve", "--minutes", "15:20:5")]
)
def test_the_same_brief_gives_the_same_bytes_under_any_hash_seed(
    asked_for: tuple[str, ...], program: Callable[..., subprocess.CompletedProcess[str]]
) -> None:
    name, *more = asked_for
    done = [program("-m", "setwright", name, TINY, *more, "--json", PYTHONHASHSEED=seed) for seed in "12"]
    assert [d.returncode for d in done] == [0, 0]
    assert done[0].stdout == done[1].stdout and "schema" in done[0].stdout
