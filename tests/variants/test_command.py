"""The commands: plan, run, status and sheets, on a template of two tiny weeks."""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from cheap_variants import contents
from click.testing import CliRunner, Result
from dask_cluster import NAMES
from test_faults import wait_until

from setwright.catalogue.load import load_catalogue
from setwright.solver.cli.group import setwright

HOUSE = Path(__file__).parents[2] / "scenarios" / "templates" / "house.toml"
TINY = """
title = "Tiny"
[vary]
days = 1
minutes = [12, 15]
kits = ["bands"]
[brief]
techniques = false
pairs = false
"""


def run(*words: str) -> Result:
    return CliRunner().invoke(setwright, ["variants", *words], prog_name="setwright")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the template, and its results in `out`."""
    found = tmp_path_factory.mktemp("tiny")
    (found / "tiny.toml").write_text(TINY)
    result = run("run", str(found / "tiny.toml"), "-o", str(found / "out"), "--search", "quick")
    assert result.exit_code == 0, result.output
    assert "Tiny: 2 variants, 2 solved." in result.stdout
    assert "2 variants: 2 solved, 0 impossible; 0 were there before" in result.stderr
    return found


def test_plan_prints_the_matrix_the_count_and_the_time_of_the_house_template() -> None:
    text = run("plan", str(HOUSE)).output
    assert "House template: 15 variants in 9 chains." in text and "Expected time" in text
    assert "2 x 45, barbell    2 x 30, barbell" in text
    assert max(map(len, text.splitlines())) <= 100
    document = json.loads(run("plan", str(HOUSE), "--json").output)
    assert len(document["variants"]) == 15 and document["expected_seconds"] > 0


def test_fewer_workers_take_longer_but_never_less_than_the_longest_chain() -> None:
    seconds = [
        json.loads(run("plan", str(HOUSE), "--json", "--workers", n).output)["expected_seconds"]
        for n in ("1", "2", "99")
    ]
    assert seconds[0] == pytest.approx(2 * seconds[1], abs=1) and 0 < seconds[2] < seconds[1]


def test_a_second_run_is_quick_to_say_that_all_is_there(folder: Path) -> None:
    before = contents(folder / "out")
    result = run("run", str(folder / "tiny.toml"), "-o", str(folder / "out"), "--search", "quick")
    assert result.exit_code == 0 and "2 were there before" in result.stderr and contents(folder / "out") == before


def test_the_week_that_was_stored_is_audited_and_the_longer_one_keeps_the_shorter(folder: Path) -> None:
    found = [json.loads(data) for data in contents(folder / "out").values()]
    assert all(document["end"] == "solved" and document["week"]["stimulus"] > 0 for document in found)
    (longer,) = (document for document in found if document["extends"])
    (shorter,) = (document for document in found if not document["extends"])
    kept = longer["extends"]
    lines = {f"mon {entry['exercise']}" for entry in shorter["week"]["days"][0]["entries"]}
    assert kept["name"] == shorter["name"] and set(kept["kept"]) | set(kept["dropped"]) == lines


def test_status_tells_how_the_folder_stands(folder: Path) -> None:
    assert "Tiny: 2 variants, 2 solved." in run("status", str(folder / "out")).output
    assert json.loads(run("status", str(folder / "out"), "--json").output)["ends"] == {"solved": 2}


def test_sheets_are_the_weeks_as_week_prints_them(folder: Path) -> None:
    text = run("sheets", str(folder / "out")).stdout
    assert text.count("Caution: A general planning aid") == 2 and "1 x 15: 1 day x 15 min" in text
    result = run("sheets", str(folder / "out"), "-o", str(folder / "printed"))
    assert result.exit_code == 0 and "2 of 2 variants have a week" in result.stderr
    assert sorted(path.name for path in (folder / "printed").iterdir()) == ["1-x-12.txt", "1-x-15.txt"]
    week = CliRunner().invoke(setwright, ["week", "mon 12 min, bands, no techniques, no pairs", "--search", "quick"])
    one = (folder / "printed" / "1-x-12.txt").read_text()
    assert one.partition(": ")[2].partition("\nAssumed")[0] == week.output.partition("\nAssumed")[0]


def test_sheets_in_the_formats_of_sheet(folder: Path) -> None:
    out = folder / "handed"
    result = run("sheets", str(folder / "out"), "-o", str(out), "--as", "csv,md")
    assert result.exit_code == 0, result.output
    assert sorted(p.name for p in out.iterdir()) == ["1-x-12.csv", "1-x-12.md", "1-x-15.csv", "1-x-15.md"]
    again = run("sheets", str(folder / "out"), "-o", str(out), "--as", "csv")
    assert again.exit_code == 2 and "is there already" in again.output
    assert "add -o FOLDER" in run("sheets", str(folder / "out"), "--as", "csv").output
    assert "--start" in run("sheets", str(folder / "out"), "-o", str(out), "--as", "ics").output


def test_tidy_removes_what_the_template_no_longer_asks_for(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "tiny.toml").write_text(TINY.replace("[12, 15]", "[12]"))
    out = tmp_path / "out"
    for path in (folder / "out").rglob("*.json"):
        (out / path.relative_to(folder / "out")).parent.mkdir(parents=True, exist_ok=True)
        (out / path.relative_to(folder / "out")).write_bytes(path.read_bytes())
    words = ("run", str(tmp_path / "tiny.toml"), "-o", str(out), "--search", "quick")
    assert "1 were there before" in run(*words).stderr and len(contents(out)) == 2
    assert "1 results of earlier runs" in run("status", str(out)).output
    assert "1 results that the template no longer asks for were removed" in run(*words, "--tidy").stderr
    assert len(contents(out)) == 1


def test_a_folder_of_another_template_is_named_and_not_tidied_at_once(folder: Path, tmp_path: Path) -> None:
    other = tmp_path / "other.toml"
    other.write_text(TINY.replace("Tiny", "Other").replace("[12, 15]", "[13]"))
    out = tmp_path / "out"
    shutil.copytree(folder / "out", out)
    words = ("run", str(other), "-o", str(out), "--search", "quick")
    before = contents(out)
    refused = run(*words, "--tidy")
    assert refused.exit_code == 2 and "was last run with another template, 'Tiny'" in refused.output
    assert contents(out) == before and "Tiny: 2 variants" in run("status", str(out)).output
    said = run(*words)
    assert said.exit_code == 0 and "'Tiny': its results are kept" in said.stderr
    assert before.items() < contents(out).items()
    assert "another template" not in run(*words).stderr and "2 results that" in run(*words, "--tidy").stderr


@pytest.mark.slow
def test_two_runs_at_once_in_one_folder_leave_each_result_whole(folder: Path, tmp_path: Path) -> None:
    words = ["variants", "run", str(folder / "tiny.toml"), "-o", str(tmp_path / "out"), "--search", "quick"]
    pipe, environment = subprocess.PIPE, {**os.environ, "PYTHONPATH": str(NAMES)}
    both = [
        subprocess.Popen(command, stdout=pipe, stderr=pipe, text=True, env=environment)
        for command in 2 * [[sys.executable, "-m", "setwright", *words]]
    ]
    said = [process.communicate(timeout=60) for process in both]
    assert [process.returncode for process in both] == [0, 0], said
    assert contents(tmp_path / "out") == contents(folder / "out") and said[0][0] == said[1][0]
    assert list((tmp_path / "out" / ".unfinished").iterdir()) == []


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--shard", "3/2"), "expected K/N"),
        (("--shard", "0/4"), "expected K/N"),
        (("--cluster", "tcp://127.0.0.1:1", "--workers", "2"), "counts its own"),
        (("--tls-ca", "x"), "go together"),
        (("--cluster", "nowhere"), "is no address"),
    ],
)
def test_wrong_use_is_refused(tmp_path: Path, words: tuple[str, ...], said: str) -> None:
    result = run("run", str(HOUSE), "-o", str(tmp_path / "out"), *words)
    assert result.exit_code == 2 and said in result.output and not (tmp_path / "out").exists()


def test_near_misses_are_named(tmp_path: Path) -> None:
    assert "did you mean 'status'" in run("statu").output
    assert "name a folder that `setwright variants run` wrote" in run("status", str(tmp_path)).output
    assert run("run", str(tmp_path / "none.toml"), "-o", str(tmp_path)).exit_code == 2


def test_results_of_another_catalogue_are_not_printed_with_this_one(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text('[[exercise]]\nid = "push-up"\nname = "Press-up"\n')
    result = run("sheets", str(folder / "out"), "--catalogue", str(tmp_path / "own.toml"))
    assert result.exit_code == 2 and "another catalogue" in result.output
    assert load_catalogue().digest in (folder / "out" / "variants.json").read_text()


@pytest.mark.slow
def test_ctrl_c_finishes_what_runs_and_ends_with_130(tmp_path: Path) -> None:
    (tmp_path / "many.toml").write_text(TINY.replace("[12, 15]", "[12, 13, 14, 15, 16, 17]"))
    out = tmp_path / "out"
    words = ["variants", "run", str(tmp_path / "many.toml"), "-o", str(out), "--search", "quick"]
    process = subprocess.Popen(
        [sys.executable, "-m", "setwright", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(NAMES)},
        start_new_session=True,
    )
    wait_until(lambda: list(out.glob("results/*/*.json")))
    os.killpg(process.pid, signal.SIGINT)
    said, errors = process.communicate(timeout=60)
    assert process.returncode == 130 and "stopping: variants that are running are finished" in errors
    held = contents(out)
    assert 1 <= len(held) < 6 and f"{len(held)} solved and {6 - len(held)} to do" in said
    assert list((out / ".unfinished").iterdir()) == []
