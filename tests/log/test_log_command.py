"""`setwright log read` from the command line: words, JSON, what is said on standard error, exit codes."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from read_logs import filled

from setwright.solver.cli.group import setwright

GARAGE = Path(__file__).parent / "files" / "garage.csv"
COLUMNS = "date=Datum,load=Weight"


def run(*words: str, given: str | bytes | None = None) -> Result:
    return CliRunner().invoke(setwright, ["log", "read", *words], input=given, prog_name="setwright")


def test_sessions_are_printed_as_tables_and_the_rest_is_named() -> None:
    result = run(str(GARAGE), "--columns", COLUMNS)
    assert result.exit_code == 0
    assert "Monday 2026-01-05: 4 lifts, 8 sets, 18:02 to 18:47, 45 min" in result.stdout
    assert "Barbell back squat    100 x 8, 8, 7 @ 2 RIR" in result.stdout
    assert "Barbell bench press  82.5 x 8, 7, 7 @ 1 RIR" in result.stdout
    assert result.stderr.splitlines() == [
        "RPE 8 was read as 2 RIR",
        "not read: line 3, stands in columns that are not read",
    ]
    assert max(map(len, result.stdout.splitlines())) <= 100


def test_json_is_read_again_and_holds_what_was_not_read(tmp_path: Path) -> None:
    target = tmp_path / "log.json"
    assert run(str(GARAGE), "--columns", COLUMNS, "-o", str(target)).exit_code == 0
    document = json.loads(target.read_text(encoding="utf-8"))
    assert document["schema"] == "setwright.log/1" and len(document["sessions"]) == 3
    assert document["unread"] == [
        {"place": "line 3", "text": "Felt: easy", "why": "stands in columns that are not read"}
    ]
    again = run(str(target), "--json")
    assert again.exit_code == 0 and again.stdout == target.read_text(encoding="utf-8")


def test_many_sessions_are_a_list() -> None:
    rows = "".join(f"2026-01-{day:02d},pull-up,8\n" for day in range(1, 21))
    lines = run("-", given=f"date,exercise,reps\n{rows}").stdout.splitlines()
    assert lines[0].split() == ["Date", "Week", "Session", "Lifts", "Sets", "Minutes"] and lines[-1] == "20 sessions"


def test_a_filled_in_workbook_is_read(tmp_path: Path) -> None:
    file = tmp_path / "week.xlsx"
    file.write_bytes(filled())
    result = run(str(file))
    assert result.exit_code == 0 and result.stdout.count("Hack squat") >= 2
    assert "never mixed" in run(str(file), "--unit", "lb").stderr


def test_faults_are_told_one_a_line_and_nothing_is_written(tmp_path: Path) -> None:
    target = tmp_path / "log.json"
    text = "date,exercise,load,reps\n2026-01-05,bench pres,80,8\n2026-01-05,squat,-80,8\n"
    result = run("-", "-o", str(target), given=text)
    assert result.exit_code == 2 and result.stdout == "" and not target.exists()
    assert [line.split(": ")[1] for line in result.stderr.splitlines()] == ["line 2, exercise", "line 3, load"]
    assert run("-", "--accept-near", given=text.replace("-80", "80")).exit_code == 0


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--columns", "date"), "got 'date', expected FIELD=HEADING such as date=Datum"),
        (("--columns", "date=a,date=b"), "'date=b' names 'date' a second time"),
        (("--columns", ""), "names no column"),
        (("--columns", "dat=Datum"), "'dat' is no field of a log; did you mean 'date'?"),
        (("--unit", "st"), "'kg', 'lb'"),
    ],
)
def test_wrong_options_are_usage_errors(words: tuple[str, ...], said: str) -> None:
    result = run(str(GARAGE), *words)
    assert result.exit_code == 2 and said in result.stderr


def test_a_heading_with_a_comma_stands_in_quotes() -> None:
    text = 'date,exercise,"weight, bar",reps\n2026-01-05,squat,80,8\n'
    assert "80 x 8" in run("-", "--columns", '"load=weight, bar"', given=text).stdout


def test_a_file_that_is_not_there_is_a_usage_error() -> None:
    result = run("nowhere.csv")
    assert result.exit_code == 2 and "nowhere.csv: cannot be read" in result.stderr
