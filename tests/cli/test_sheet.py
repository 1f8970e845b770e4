"""`setwright sheet`: files for a client, all or none, and no health note in any of them."""

from __future__ import annotations

import copy
import io
import json
import subprocess
import sys
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import Result

from setwright.solver.sheets.formats import FORMATS

Run = Callable[..., Result]
WEEKS = Path(__file__).parents[1] / "sheets" / "weeks"
THREE, PAIRS = WEEKS / "three-40.json", WEEKS / "pairs-private.json"
MINE = ("xlsx", "ics", "csv", "md", "json")
DATED = ("--start", "2026-01-05")


def document(path: Path = THREE) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return found


def saved(said: dict[str, Any], folder: Path) -> str:
    path = folder / "week.json"
    path.write_text(json.dumps(said), encoding="utf-8")
    return str(path)


def test_every_format_is_one_file_named_by_code_and_week(run: Run, tmp_path: Path) -> None:
    result = run("sheet", str(THREE), "--as", " CSV,md, json,xlsx,ics,csv", "-o", str(tmp_path / "out"), *DATED)
    assert result.exit_code == 0, result.stderr
    assert result.stdout == ""
    names = sorted(path.name for path in (tmp_path / "out").iterdir())
    assert names == sorted(f"R33-week-1.{name}" for name in MINE)
    assert result.stderr.count("written: ") == len(MINE)


def test_the_json_is_the_week_that_was_read(run: Run, tmp_path: Path) -> None:
    run("sheet", str(THREE), "--as", "json", "-o", str(tmp_path))
    assert (tmp_path / "R33-week-1.json").read_bytes() == THREE.read_bytes()
    again = run("sheet", str(tmp_path / "R33-week-1.json"), "--as", "json", "-o", str(tmp_path / "again"))
    assert again.exit_code == 0
    assert (tmp_path / "again" / "R33-week-1.json").read_bytes() == THREE.read_bytes()


def test_every_fault_is_named_at_once_and_nothing_is_written(run: Run, tmp_path: Path) -> None:
    said = document()
    said["days"][0]["entries"][0]["sets"] = 0
    coach = tmp_path / "coach.toml"
    coach.write_text('nmae = "x"\npaper = "a5"\n')
    options = ("--start", "soon", "--paper", "a3", "--weeks", "0", "--revision", "x", "--coach", str(coach))
    result = run("sheet", saved(said, tmp_path), "--as", "htm,xlsx", "-o", str(tmp_path / "no" / "out"), *options)
    assert result.exit_code == 2
    where = [line.removeprefix(f"{tmp_path}/").split(": ")[0:2] for line in result.stderr.splitlines()]
    assert [" ".join(words) for words in where] == [
        "--as 'htm' is no format; did you mean 'html'?",
        "--start got 'soon', expected a date such as 2026-01-05",
        "--paper 'a3' is not one of 'a4', 'letter'",
        "--weeks 0 is not in the range 1<=x<=52",
        "--revision 'x' is not a valid whole number",
        "coach.toml nmae",
        "coach.toml paper",
        "week.json days[0].entries[0].sets",
        f"no/out the folder {tmp_path}/no is not there; make it first",
    ]
    assert sorted(path.name for path in tmp_path.iterdir()) == ["coach.toml", "week.json"]


def test_files_that_are_there_are_kept_unless_forced(run: Run, tmp_path: Path) -> None:
    mine = tmp_path / "R33-week-1.csv"
    mine.write_text("mine")
    result = run("sheet", str(THREE), "--as", "md,csv", "-o", str(tmp_path))
    assert result.exit_code == 2
    assert "--force" in result.stderr
    assert [path.name for path in tmp_path.iterdir()] == [mine.name]
    assert mine.read_text() == "mine"
    assert run("sheet", str(THREE), "--as", "md,csv", "-o", str(tmp_path), "--force").exit_code == 0
    assert mine.read_text(encoding="utf-8-sig").startswith("day,exercise")
    assert sorted(path.suffix for path in tmp_path.iterdir()) == [".csv", ".md"]


def test_a_calendar_needs_a_start(run: Run, tmp_path: Path) -> None:
    result = run("sheet", str(THREE), "--as", "ics,md", "-o", str(tmp_path))
    assert (result.exit_code, result.stderr) == (
        2,
        "--start: is missing, ics cannot be dated; add --start YYYY-MM-DD\n",
    )
    assert list(tmp_path.iterdir()) == []


def test_options_outweigh_the_coachs_file(run: Run, tmp_path: Path) -> None:
    coach = tmp_path / "coach.toml"
    coach.write_text("weeks = 2\nstart = 2026-02-02\n")
    run("sheet", str(THREE), "--as", "ics", "-o", str(tmp_path), "--coach", str(coach))
    text = (tmp_path / "R33-week-1.ics").read_text()
    assert "COUNT=2" in text
    assert "DTSTART:20260202T180000" in text
    options = ("--coach", str(coach), "--force", "--weeks", "6", "--start", "2026-03-02", "--revision", "3")
    run("sheet", str(THREE), "--as", "ics", "-o", str(tmp_path), *options)
    text = (tmp_path / "R33-week-1.ics").read_text()
    assert "COUNT=6" in text
    assert "DTSTART:20260302T180000" in text
    assert "SEQUENCE:3" in text


def test_standard_input_is_read(run: Run, tmp_path: Path) -> None:
    result = run("sheet", "-", "--as", "md", "-o", str(tmp_path), given=THREE.read_bytes())
    assert result.exit_code == 0
    assert run("sheet", "-", "--as", "md", "-o", str(tmp_path / "x"), given=b"{}").stderr.startswith("standard input")


@pytest.mark.parametrize("given", ["null", "[]", "3", "{}", "", "{", '{"schema": "setwright.week/1"}'])
def test_what_is_no_week_is_a_fault(given: str, run: Run, tmp_path: Path) -> None:
    result = run("sheet", "-", "--as", "md", "-o", str(tmp_path / "out"), given=given)
    assert result.exit_code == 2
    assert result.stderr.startswith("standard input")
    assert result.exception is None or isinstance(result.exception, SystemExit)


def test_a_code_that_is_no_file_name_becomes_one(run: Run, tmp_path: Path) -> None:
    for code, name in (("../../etc/x", "etc-x"), ("", "client"), ("\u00fc\u0000/", "client"), ("a" * 300, "a" * 40)):
        said = document()
        said["brief"]["client"]["code"] = code
        folder = tmp_path / f"out {len(code)}"
        assert run("sheet", saved(said, tmp_path), "--as", "md", "-o", str(folder)).exit_code == 0
        assert [path.name for path in folder.iterdir()] == [f"{name}-week-1.md"]


# ---- health


SAYS = ("E47-SAYS-ULCER", "DR-BLOGGS", "2026-10-02", "NO-OVERHEAD", "wrist trouble", "cautions", '"tag"')


def noted() -> dict[str, Any]:
    """A week whose client has a caution and a clearance, with words that would stand out."""
    said = document(PAIRS)
    said["brief"]["client"]["cautions"] = [{"tag": "wrist", "said_by": SAYS[0], "on": SAYS[2]}]
    said["brief"]["client"]["clearance"] = {"by": SAYS[1], "on": SAYS[2], "limits": SAYS[3]}
    said["brief"]["title"] = "After wrist trouble"
    said["brief"]["rules"] = {"caution": "off"}
    said["brief"]["other"] = [{"weekday": "wed", "regions": ["pull"], "name": "physio for wrist trouble"}]
    said["later"] = {"history": [{"clearance": SAYS[1], "kept": 1}]}
    said["assumed"] += ["caution wrist: as the client says", "physio for wrist trouble on Wed: hard on the legs"]
    return said


def everything(path: Path) -> str:
    """All that a file says, packed or not."""
    data = path.read_bytes()
    if zipfile.is_zipfile(io.BytesIO(data)):
        with zipfile.ZipFile(path) as package:
            data = b"\n".join(name.encode() + package.read(name) for name in package.namelist())
    return data.decode().replace("\r\n ", "").lower()


def test_health_notes_stand_in_no_file(run: Run, tmp_path: Path) -> None:
    result = run("sheet", saved(noted(), tmp_path), "--as", ",".join(MINE), "-o", str(tmp_path / "out"), *DATED)
    assert result.exit_code == 0, result.stderr
    assert "title tells of health" in result.stderr
    files = sorted((tmp_path / "out").iterdir())
    assert len(files) == len(MINE)
    for file in files:
        text = everything(file)
        assert not [word for word in SAYS if word.lower() in text], file.name
        assert "physio" not in text
        assert "wrist" not in file.name


def test_only_the_json_of_private_carries_them(run: Run, tmp_path: Path) -> None:
    given = saved(noted(), tmp_path)
    result = run("sheet", given, "--as", ",".join(MINE), "-o", str(tmp_path / "out"), "--private", *DATED)
    assert result.exit_code == 0, result.stderr
    assert "health notes" in result.stderr
    for file in (tmp_path / "out").iterdir():
        told = [word for word in SAYS if word.lower() in everything(file)]
        assert told == (list(SAYS) if file.suffix == ".json" else []), file.name


def due() -> dict[str, Any]:
    said = copy.deepcopy(noted())
    said["brief"]["client"]["cautions"].append({"tag": "kidney-disease"})
    del said["brief"]["client"]["clearance"]
    said["clearance_needed"] = True
    return said


@pytest.mark.parametrize("name", [*FORMATS, "json,md"])
def test_a_week_that_needs_clearance_is_refused_in_every_format(name: str, run: Run, tmp_path: Path) -> None:
    private = ("--private",) if name == "json,md" else ()
    result = run("sheet", saved(due(), tmp_path), "--as", name, "-o", str(tmp_path / "out"), *DATED, *private)
    assert result.exit_code == 1
    assert "a clearance is missing" in result.stderr
    assert not (tmp_path / "out").exists()


def test_a_week_that_needs_clearance_may_stay_with_the_coach(run: Run, tmp_path: Path) -> None:
    result = run("sheet", saved(due(), tmp_path), "--as", "json", "--private", "-o", str(tmp_path / "out"))
    assert result.exit_code == 0
    assert document(next((tmp_path / "out").iterdir())) == due()


def test_private_without_json_is_a_fault(run: Run, tmp_path: Path) -> None:
    result = run("sheet", str(THREE), "--as", "md", "--private", "-o", str(tmp_path))
    assert result.exit_code == 2
    assert "--private: is for json alone" in result.stderr


# ---- libraries and files


@pytest.mark.parametrize(("name", "library"), [("xlsx", "xlsxwriter"), ("ics", "icalendar")])
def test_a_missing_library_names_its_extra(
    name: str, library: str, run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, library, None)
    result = run("sheet", str(THREE), "--as", f"csv,{name}", "-o", str(tmp_path / "out"), *DATED)
    assert result.exit_code == 1
    said = f"format {name}: needs {library}, which is not installed; pip install 'setwright[{FORMATS[name].extra}]'\n"
    assert result.stderr == said
    assert not (tmp_path / "out").exists()


LOADED = """
import sys
from setwright.solver.cli.group import setwright
try:
    setwright([*{arguments!r}])
except SystemExit:
    pass
heavy = ("ortools", "highspy", "xlsxwriter", "openpyxl", "icalendar", "typst", "jinja2")
print("LOADED", *[name for name in heavy if name in sys.modules])
"""


@pytest.mark.parametrize(("names", "loaded"), [("csv,md,json", []), ("xlsx", ["xlsxwriter"]), ("ics", ["icalendar"])])
def test_only_the_library_asked_for_is_loaded(
    names: str, loaded: list[str], program: Callable[..., subprocess.CompletedProcess[str]], tmp_path: Path
) -> None:
    arguments = ("sheet", str(THREE), "--as", names, "-o", str(tmp_path), *DATED)
    done = program("-c", LOADED.format(arguments=arguments))
    assert done.stdout.splitlines()[-1].split()[1:] == loaded
