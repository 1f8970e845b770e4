"""The commands on good input."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import parse_phrase
from setwright.solver.cli.commands import week as week_command
from setwright.solver.evaluation.finding import ClashMember, Wish
from setwright.solver.planning import Clash, End, OutOfTime
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import SEARCHES

pytestmark = pytest.mark.usefixtures("little")
Run = Callable[..., Result]


def test_a_week_is_planned_written_and_audited(run: Run, tmp_path: Path) -> None:
    """The one test here that solves."""
    file = tmp_path / "week.json"
    planned = run("week", "1 day x 30 min", "--search", "quick", "-o", str(file))
    assert planned.exit_code == 0
    assert planned.stdout == ""
    assert json.loads(file.read_text())["schema"] == "setwright.week/1"

    audited = run("audit", str(file), "--strict")
    assert audited.exit_code == 0
    assert "Nothing is broken" in audited.stdout

    week = json.loads(file.read_text())
    week["days"][0]["entries"][0]["sets"] = 12
    file.write_text(json.dumps(week))
    broken = run("audit", str(file))
    assert broken.exit_code == 0
    assert "Differs from how setwright plans" in broken.stdout
    assert run("audit", str(file), "--strict").exit_code == 1, "twelve sets run over the half hour"
    assert run("audit", "-", given=file.read_bytes()).stdout == broken.stdout
    document = json.loads(run("audit", str(file), "--json").stdout)
    assert document["schema"] == "setwright.audit/1"
    assert document["broken"]

    week["days"][0]["entries"][0]["exercise"] = "barbell-bak-squat"
    file.write_text(json.dumps(week))
    unknown = run("audit", str(file))
    assert unknown.exit_code == 2
    assert "did you mean 'barbell-back-squat'?" in unknown.stderr


def test_a_clash_exits_with_three_and_running_out_with_four(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    catalogue = load_catalogue()
    parsed = parse_phrase("1x30", catalogue)
    resolved = resolve(parsed.brief, catalogue)
    ends: list[End] = [
        Clash(parsed, resolved, (ClashMember("must", Wish("must", "row")),)),
        OutOfTime(parsed, resolved, "time limit", SEARCHES["quick"]),
    ]
    monkeypatch.setattr(week_command, "_in_time", lambda *_: (ends.pop(0), (), False))
    clash = run("week", "1x30")
    assert clash.exit_code == 3
    assert "the movement row" in clash.stdout
    out = run("week", "1x30")
    assert out.exit_code == 4
    assert out.stdout == ""
    assert "no week was found (time limit)" in out.stderr


def test_exercises_are_filtered_by_kit_muscle_and_movement(run: Run) -> None:
    rows = json.loads(run("exercises", "--kit", "bands", "--muscle", "back", "--movement", "row", "--json").stdout)
    assert rows["exercises"]
    for row in rows["exercises"]:
        assert set(row["needs"]) <= {"band", "anchor"}
        assert row["movement"] == "row"
    assert run("exercises", "Back squat").stdout.startswith("Barbell back squat\n")


def test_a_filter_that_nothing_passes_says_so(run: Run) -> None:
    result = run("exercises", "--kit", "bands", "--movement", "carry")
    assert (result.exit_code, result.stdout) == (0, "No exercise passes all of these filters.\n")


@pytest.mark.parametrize("name", ["brief", "week"])
def test_schemas_are_json_schemas(name: str, run: Run) -> None:
    schema = json.loads(run("schema", name).stdout)
    assert schema["$schema"].startswith("https://json-schema.org/")
    assert schema["type"] == "object"
