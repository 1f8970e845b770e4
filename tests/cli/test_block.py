"""`setwright block`: results, files whole or not at all, faults all at once with the documented exit codes."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

sys.path.insert(0, str(Path(__file__).parents[1] / "uses"))
from block_bases import CATALOGUE, base_of

from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.cli.group import setwright
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.document.changed_week import changed_week_document

pytestmark = pytest.mark.usefixtures("little")
PHRASE = "3 days x 45 min, novice, home dumbbells"


def run(*words: str) -> Result:
    return CliRunner().invoke(setwright, ["block", "plan", *words], prog_name="setwright")


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """The file of the phrase's week."""
    parsed, kept = base_of("novice-home")
    found = audit(resolve(parsed.brief, CATALOGUE), kept)
    file = tmp_path / "week.json"
    file.write_text(json.dumps(changed_week_document({"brief": raw_of(parsed.brief)}, parsed, found)))
    return file


def test_a_block_of_a_given_week_is_printed_written_and_drawn_in_one_go(week: Path, tmp_path: Path) -> None:
    cards, plot, out = tmp_path / "cards", tmp_path / "block.svg", tmp_path / "block.json"
    options = ["--weeks", "4", "--lighter-every", "4", "--starts", "2026-01-05", "--off", "2026-01-12..2026-01-18"]
    files = ["--sheets", str(cards), "--as", "md,csv", "--plot", str(plot), "-o", str(out)]
    result = run(PHRASE, "--week", str(week), *options, *files)
    assert result.exit_code == 0, result.output
    assert sorted(path.name for path in cards.iterdir()) == [
        f"week-0{n}.{ending}" for n in (1, 3, 4) for ending in ("csv", "md")
    ]
    assert plot.read_text().startswith("<svg")
    document = json.loads(out.read_text())
    assert document["schema"] == "setwright.block/1"
    assert [part["kind"] for part in document["weeks"]] == ["build", "off", "build", "build"]
    text = run(PHRASE, "--week", str(week), *options)
    assert text.exit_code == 0 and "; 4 weeks" in text.stdout.splitlines()[0]


def test_every_fault_comes_at_once_and_nothing_is_written(week: Path, tmp_path: Path) -> None:
    taken = tmp_path / "cards"
    taken.mkdir()
    faults = [
        *("--weeks", "60", "--starts", "2026-01-06", "--off", "soon", "--short", "2026-01-05..2026-01-11"),
        *("--travel", "2026-01-12..2026-01-13 hotell", "--now", "chst 4", "--as", "pdff", "--plot", "block.png"),
        *("--sheets", str(taken)),
    ]
    result = run("3 days x 45 min, grow dlets", "--week", str(week), *faults)
    assert result.exit_code == 2
    for part in ("got 60", "expected a Monday", "'soon'", "2x30", "'hotel'", "'chest'", "'pdff'", ".svg", "dlets"):
        assert part in result.stderr, part
    assert not list(taken.iterdir())


def test_sheets_are_written_all_or_none(week: Path, tmp_path: Path) -> None:
    cards = tmp_path / "cards"
    cards.mkdir()
    (cards / "week-03.md").write_text("mine")
    words = [PHRASE, "--week", str(week), "--weeks", "3", "--sheets", str(cards), "--as", "md"]
    result = run(*words)
    assert result.exit_code == 2 and "week-03.md: is there already" in result.stderr
    assert [path.name for path in cards.iterdir()] == ["week-03.md"]
    assert (cards / "week-03.md").read_text() == "mine"
    assert run(*words, "--force").exit_code == 0
    assert len(list(cards.iterdir())) == 3


def test_a_calendar_of_a_block_without_a_first_day_is_refused(week: Path, tmp_path: Path) -> None:
    result = run(PHRASE, "--week", str(week), "--sheets", str(tmp_path / "cards"), "--as", "ics")
    assert result.exit_code == 2 and "ics cannot be dated" in result.stderr


def test_a_brief_without_a_week_ends_with_the_code_of_a_clash() -> None:
    result = run("2 days x 15 min, chest at least 30 sets", "--weeks", "3", "--search", "quick")
    assert result.exit_code == 3 and "no week is possible" in result.stderr


@pytest.mark.parametrize(
    ("option", "said"),
    [
        (("--travel", "2026-01-12..2026-01-14"), "names no kit"),
        (("--travel", "2026-01-12..2026-01-14 2x25"), "names no kit"),
        (("--off", "2026-02-30"), "in no calendar"),
        (("--short", "2026-01-05..2026-01-11 often"), "days x minutes"),
        (("--minimum", "2026-01-05..2026-01-11 x"), "is too much"),
        (("--now", "chest"), "write MUSCLE SETS"),
    ],
)
def test_an_option_that_cannot_be_read_says_how_to_write_it(option: tuple[str, str], said: str) -> None:
    result = run(PHRASE, "--starts", "2026-01-05", *option)
    assert result.exit_code == 2 and said in result.stderr
