"""`compare` and `curve` from the command line: ranges, goals, files, and what wrong input is told."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.catalogue.faults import UsageFault
from setwright.solver.cli.commands.compare import usual_goals
from setwright.solver.cli.commands.curve import what_varies

pytestmark = pytest.mark.usefixtures("little")
Run = Callable[..., Result]
TINY = "1 day x 15 min, bands"


def test_minutes_a_session_are_tried_where_nothing_is_said() -> None:
    assert what_varies(None, None, None) == ("minutes", tuple(range(20, 121, 10)))
    assert what_varies(None, (60, 90, 120), None) == ("weekly", (60, 90, 120))
    with pytest.raises(UsageFault, match="--minutes and --days were given together"):
        what_varies((20, 30, 40), None, (2, 3))


def test_one_brief_is_planned_under_every_goal_and_several_under_their_own() -> None:
    assert usual_goals(("one",)) == ("growth", "efficiency", "balanced")
    assert usual_goals(("one", "two")) == ()


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
    result = run("curve", TINY, "--minutes", "10:15:5", "--search", "quick", "-o", str(file))
    assert result.exit_code == 0
    assert "10 to 15 min a session" in result.stdout and max(map(len, result.stdout.splitlines())) <= 100
    assert file.read_text().startswith("<svg")


def test_a_comparison_goes_on_where_one_brief_clashes(run: Run) -> None:
    """A vertical pull with dumbbells alone is impossible; the other week is still shown, and the exit code is 3."""
    impossible = "1 day x 30 min, home dumbbells, must vertical pull"
    result = run("compare", impossible, TINY, "--search", "quick", "--json")
    assert result.exit_code == 3
    document = json.loads(result.stdout)
    first, second = document["cases"]
    assert first["week"] is None and "vertical pull" in first["no_week"]
    assert second["week"]["schema"] == "setwright.week/1"


@pytest.mark.slow
@pytest.mark.parametrize(
    "asked_for",
    [
        ("compare", "--goals", "growth,balanced", "--search", "quick"),
        ("curve", "--minutes", "10:15:5", "--search", "quick"),
    ],
)
def test_the_same_brief_gives_the_same_bytes_under_any_hash_seed(
    asked_for: tuple[str, ...], program: Callable[..., subprocess.CompletedProcess[str]]
) -> None:
    name, *more = asked_for
    words = ("-m", "setwright", name, "1 day x 10 min, bodyweight", *more, "--json")
    done = [program(*words, PYTHONHASHSEED=seed) for seed in "12"]
    assert [d.returncode for d in done] == [0, 0]
    assert done[0].stdout == done[1].stdout and "schema" in done[0].stdout
