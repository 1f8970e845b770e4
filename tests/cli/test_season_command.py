"""`setwright season`: what it prints and writes, and what it refuses, all of it at once and nothing half-written."""

from __future__ import annotations

import json
import os
import signal
import threading
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from click.testing import Result

pytestmark = pytest.mark.usefixtures("little")
Run = Callable[..., Result]
BRIEF = "1 day x 20 min, at home with bands"
HERE = ("season", BRIEF, "--from", "2026-01-05", "--weeks", "12", "--emphasis", "quads")
CALENDAR = "from,to,days,minutes,kit\n"


def refused(result: Result) -> list[str]:
    assert result.exit_code == 2, result.output
    assert result.stdout == "" and "Traceback" not in result.stderr
    return result.stderr.splitlines()


def calendar(tmp_path: Path, *rows: str, heading: str = CALENDAR) -> str:
    file = tmp_path / "calendar.csv"
    file.write_text(heading + "".join(f"{row}\n" for row in rows), encoding="utf-8")
    return str(file)


# ---- what it gives


def test_text_plot_and_briefs(run: Run, tmp_path: Path) -> None:
    plot, folder = tmp_path / "season.svg", tmp_path / "blocks"
    result = run(*HERE, "--plot", str(plot), "--briefs", str(folder))
    assert result.exit_code == 0, result.output
    assert "Specialised" in result.stdout and "quads" in result.stdout
    assert "promises no growth" in result.stdout and "habit by survey" in result.stdout
    assert plot.read_text(encoding="utf-8").startswith("<svg ")
    briefs = sorted(folder.iterdir())
    assert [file.name for file in briefs] == [f"block-{n:02d}.toml" for n in range(1, len(briefs) + 1)]
    assert tomllib.loads(briefs[0].read_text(encoding="utf-8"))["days"] == [{"weekday": "mon", "minutes": 20}]


def test_the_document_is_of_its_schema_and_the_same_twice(run: Run) -> None:
    first, second = (run(*HERE, "--json") for _ in "12")
    assert first.exit_code == 0 and first.stdout == second.stdout
    document, schema = json.loads(first.stdout), json.loads(run("schema", "season").stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(document, schema)
    assert document["schema"] == "setwright.season/1"
    assert set(document) == set(schema["required"]) == set(schema["properties"])
    assert document["worth"] <= document["bound"]
    assert sum(block["weeks"] for block in document["blocks"]) + len(document["between"]) == 12


def test_health_notes_reach_no_document_and_no_text(run: Run) -> None:
    brief = "1 day x 20 min, at home with bands, bad shoulder"
    for more in ((), ("--json",)):
        result = run("season", brief, *HERE[2:8], *more)
        assert result.exit_code == 0
        assert "shoulder" not in result.stdout.lower()


# ---- what it refuses


@pytest.mark.parametrize("weeks", ["3", "500", "0", "-1", "x"])
def test_a_season_is_neither_short_nor_endless(run: Run, weeks: str) -> None:
    assert any("--weeks" in line for line in refused(run("season", BRIEF, "--from", "2026-01-05", f"--weeks={weeks}")))


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        (("2026-02-01,2026-01-20,2,30,",), "ends on 2026-01-20, before it begins on 2026-02-01"),
        (("2026-02-01,2026-02-20,2,30,", "2026-02-20,2026-02-22,0,0,"), "has 2026-02-20 in common with line 2"),
        (("2026-02-30,2026-03-20,2,30,",), "expected a date such as 2026-01-05"),
        (("2026-02-01,2026-02-20,8,30,",), "expected a whole number from 0 to 7"),
        (("2026-02-01,2026-02-20,2,5,",), "expected a whole number from 10 to 240"),
        (("2026-02-01,2026-02-20,2,30,home dumbels",), "did you mean 'home dumbbells'?"),
        (("2020-01-01,2030-01-01,0,0,",), "leaves no training day in the season"),
        (
            ("2026-01-19,2026-01-25,0,,", "2026-02-09,2026-02-15,0,,", "2026-03-09,2026-03-22,0,,"),
            "no 4 weeks in a row",
        ),
    ],
)
def test_a_calendar_that_makes_no_season(run: Run, tmp_path: Path, rows: tuple[str, ...], said: str) -> None:
    file = calendar(tmp_path, *rows)
    assert any(said in line for line in refused(run(*HERE, "--calendar", file)))


@pytest.mark.parametrize(
    ("heading", "said"),
    [("from,to,dyas,minutes\n", "did you mean 'days'?"), ("", "is empty"), ("from,to,days,days,minutes\n", "twice")],
)
def test_a_calendar_by_its_heading(run: Run, tmp_path: Path, heading: str, said: str) -> None:
    file = calendar(tmp_path, heading=heading)
    assert any(said in line for line in refused(run(*HERE, "--calendar", file)))


def test_all_faults_at_once(run: Run, tmp_path: Path) -> None:
    file = calendar(tmp_path, "2026-07-01,2026-07-10,9,30,", "2026-07-05,2026-07-20,2,30,")
    there = tmp_path / "there.svg"
    there.write_text("kept", encoding="utf-8")
    more = ("--block-weeks", "9-4", "--calendar", file, "--emphasis", "qauds,foo", "--plot", str(there))
    lines = refused(run("season", "2x30, grow dlets", "--from", "2026-13-05", "--weeks", "3", *more))
    for said in (
        "--from: got '2026-13-05'",
        "--weeks: 3",
        "--block-weeks: got '9-4'",
        "is there already",
        "did you mean 'delts'?",
        "line 2: days: got '9'",
        "has 2026-07-05 to 2026-07-10 in common with line 2",
        "did you mean 'quads'?",
        "'foo' is no muscle",
    ):
        assert any(said in line for line in lines), said
    assert len(lines) == 9
    assert there.read_text(encoding="utf-8") == "kept"


def test_nothing_is_written_over_or_half_written(run: Run, tmp_path: Path) -> None:
    folder, plot = tmp_path / "blocks", tmp_path / "season.svg"
    folder.mkdir()
    (folder / "block-02.toml").write_text("kept", encoding="utf-8")
    lines = refused(run(*HERE, "--briefs", str(folder), "--plot", str(plot)))
    assert any("block-02.toml: is there already" in line for line in lines)
    assert [file.name for file in folder.iterdir()] == ["block-02.toml"] and not plot.exists()


def test_one_file_for_text_and_plot_is_refused(run: Run, tmp_path: Path) -> None:
    file = str(tmp_path / "season.svg")
    assert any("is the file of -o too" in line for line in refused(run(*HERE, "-o", file, "--plot", file)))


def test_no_date_and_no_muscle(run: Run) -> None:
    assert any("--from" in line for line in refused(run("season", BRIEF)))
    assert any("names no muscle" in line for line in refused(run(*HERE[:4], "--emphasis", " , ")))


def test_a_brief_that_no_week_can_meet_ends_as_a_clash(run: Run) -> None:
    brief = "1 day x 10 min, bodyweight, at least 30 sets of chest"
    result = run("season", brief, "--from", "2026-01-05", "--weeks", "8")
    assert result.exit_code == 3
    assert "`setwright week` on the brief says why" in result.stderr


# ---- Ctrl-C


def test_ctrl_c_before_there_is_a_season_ends_with_130(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped_meanwhile(*_: object) -> None:
        os.kill(os.getpid(), signal.SIGINT)
        threading.Event().wait(0.2)

    monkeypatch.setattr("setwright.solver.uses.season.season_search.reference_of", stopped_meanwhile)
    result = run(*HERE)
    assert result.exit_code == 130 and result.stdout == ""
    assert "stopping: the best season so far follows, if there is one" in result.stderr
    assert result.stderr.splitlines()[-1].endswith("no season was found (stopped)")


def test_ctrl_c_during_the_search_prints_the_best_season_so_far(
    run: Run, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    from setwright.solver.engines.season import solve

    plain, rounds = solve.count_blocks, []

    def stopped_in_the_second_round(*given: Any) -> Any:
        rounds.append(given)
        if len(rounds) == 2:
            os.kill(os.getpid(), signal.SIGINT)
            threading.Event().wait(0.2)
        return plain(*given)

    monkeypatch.setattr(solve, "count_blocks", stopped_in_the_second_round)
    plot = tmp_path / "season.svg"
    result = run(*HERE, "--plot", str(plot))
    assert len(rounds) == 2 and result.exit_code == 130, result.output
    assert "Specialised" in result.stdout and plot.exists()
