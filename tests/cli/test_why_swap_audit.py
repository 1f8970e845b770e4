"""`why`, `swap` and `audit` of foreign weeks on the command line, on weeks built by hand."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.changed_week import changed_week_document

Run = Callable[..., Result]
TABLE = (
    "day,exercise,sets,reps,RIR,rest\n"
    "mon,Barbell back squat,3,6-8,2,120\n"
    "mon,Dumbbell bench press,3,8-12,2,120\n"
    "mon,Chest-supported dumbbell row,3,8-12,1,90\n"
    "thu,Barbell Romanian deadlift,3,6-10,2,120\n"
    "thu,Wide-grip pulldown,3,8-12,1,90\n"
    "thu,Dumbbell side raise,2,12-15,1,60\n"
)


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A week's file, made by hand."""
    catalogue = load_catalogue()
    read = read_any(TABLE.encode(), "t", catalogue)
    found = audit(resolve(read.parsed.brief, catalogue), read.week)
    path = tmp_path / "week.json"
    path.write_text(dumped(changed_week_document({}, read.parsed, found)))
    return path


def test_why_in_text_and_json(run: Run, week: Path) -> None:
    text = run("why", str(week))
    assert text.exit_code == 0, text.output
    assert "Serves most" in text.stdout and "below their band" in text.stdout
    one = json.loads(run("why", str(week), "mon:A", "--json").stdout)
    assert [row["entry"] for row in one["reasons"]] == ["mon:A"]
    assert one["below"] is None
    assert run("why", "-", given=week.read_bytes()).stdout == text.stdout


def test_why_asks_one_question_at_a_time(run: Run, week: Path) -> None:
    both = run("why", str(week), "--solve", "--add-minutes", "5")
    assert both.exit_code == 2
    assert "one question at a time" in both.stderr
    assert run("why", str(week), "mon:A", "--with", "leg press").exit_code == 2
    assert "did you mean" in run("why", str(week), "--with", "leg pres").stderr
    assert run("why", str(week), "mon:Q").exit_code == 2


def test_why_with_an_exercise_that_the_kit_closes_solves_nothing(run: Run, week: Path) -> None:
    brief = "mon thu 60 min, bands"
    closed = run("why", str(week), "--with", "barbell bench press", "--brief", brief)
    assert closed.exit_code == 0
    assert "rules exclude it on every day" in closed.stdout
    document = json.loads(run("why", str(week), "--with", "barbell bench press", "--brief", brief, "--json").stdout)
    assert document["solved"] is False
    assert "equipment" in [row["id"] for row in document["closed_by"]]


def test_swap_lists_and_writes(run: Run, week: Path, tmp_path: Path) -> None:
    listed = run("swap", str(week))
    assert listed.exit_code == 0, listed.output
    found = json.loads(run("swap", str(week), "mon:A", "--json").stdout)["entries"][0]
    first = found["swaps"][0]["exercise"]
    new = tmp_path / "new.json"
    written = run("swap", str(week), "mon:A", first, "-o", str(new))
    assert written.exit_code == 0, written.output
    document = json.loads(new.read_text())
    assert first in [e["exercise"] for e in document["days"][0]["entries"]]
    assert document["days"][0]["entries"][0]["seconds"] > 0
    assert run("audit", str(new), "--strict").exit_code == 0
    assert run("swap", str(week), "mon:A", first, "-o", str(new)).exit_code == 2


def test_swap_settles_or_says_what_breaks(run: Run, week: Path) -> None:
    refused = run("swap", str(week), "mon:A", "barbell", "deadlift")
    settled = run("swap", str(week), "mon:A", "barbell", "deadlift", "--settle")
    assert settled.exit_code == 0, settled.output
    assert "Barbell deadlift" in settled.stdout
    if refused.exit_code:
        assert "breaks" in refused.stderr and "--settle" in refused.stderr
    assert run("swap", str(week), "--settle").exit_code == 2
    closed = run("swap", str(week), "mon:A", "leg press", "--brief", "mon thu 60 min, avoid leg press")
    assert "not open that day" in closed.stderr


def test_a_week_without_its_cautions_wants_its_brief(run: Run, week: Path) -> None:
    document = json.loads(week.read_text())
    document["private_left_out"] = True
    week.write_text(json.dumps(document))
    for name in ("why", "swap"):
        refused = run(name, str(week))
        assert refused.exit_code == 2
        assert "--brief" in refused.stderr
    assert run("swap", str(week), "--brief", "mon thu 60 min").exit_code == 0


def test_audit_of_a_table(run: Run, tmp_path: Path) -> None:
    file = tmp_path / "client.csv"
    file.write_text(TABLE.replace("Dumbbell side raise", "dumbel side raise"))
    asked = run("audit", str(file))
    assert asked.exit_code == 2
    assert "did you mean 'Dumbbell side raise'" in asked.stderr
    taken = run("audit", str(file), "--accept-near", "--mend", "2")
    assert taken.exit_code == 0, taken.output
    assert "was read as Dumbbell side raise" in taken.stderr
    assert "1. " in taken.stdout and "gain most" in taken.stdout
    document = json.loads(run("audit", str(file), "--accept-near", "--mend", "1", "--json").stdout)
    assert document["changes"][0]["does"]["score"] > 0
    held = run("audit", str(file), "--accept-near", "--brief", "mon thu 20 min")
    assert "day-minutes" in held.stdout
    assert run("audit", str(file), "--accept-near", "--brief", "2 days x 40 mni").exit_code == 2


LOADED = """
import sys
sys.argv = ["setwright", *{arguments!r}]
from setwright.solver.cli import main
try:
    main()
except SystemExit:
    pass
print("LOADED", *[name for name in ("ortools", "highspy") if name in sys.modules])
"""


@pytest.mark.parametrize("more", [("why",), ("swap",), ("swap", "mon:A", "leg press"), ("audit", "--mend", "1")])
def test_what_is_reckoned_exactly_imports_no_solver(
    more: tuple[str, ...], week: Path, program: Callable[..., subprocess.CompletedProcess[str]]
) -> None:
    done = program("-c", LOADED.format(arguments=(more[0], str(week), *more[1:])))
    assert done.stdout.splitlines()[-1] == "LOADED"


def test_the_same_week_gives_the_same_bytes_under_any_hash_seed(
    week: Path, program: Callable[..., subprocess.CompletedProcess[str]]
) -> None:
    for name in ("why", "swap"):
        seen = {program("-m", "setwright", name, str(week), "--json", PYTHONHASHSEED=seed).stdout for seed in "12"}
        assert len(seen) == 1 and "schema" in seen.pop()
