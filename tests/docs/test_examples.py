"""The examples on the pages are ones that setwright reads, and the faults they show are those it finds."""

from __future__ import annotations

import re
import sys
import tomllib
from io import StringIO
from pathlib import Path

import pytest
from click.testing import CliRunner

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.cli.group import setwright
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.handout.coach import parse_coach
from setwright.solver.uses.variants.template import template_of

sys.path.insert(0, str(Path(__file__).parents[2]))
from tests.docs.pages import ROOT, blocks, text_of

BRIEF, SHEETS, VARIANTS = (ROOT / "docs" / f"{name}.md" for name in ("brief", "sheets", "variants"))
PHRASES = re.findall(r"^\| `([^`]*\d[^`]*)` \| ", text_of(BRIEF).split("## A phrase\n")[1], flags=re.M)
FAULTY = (
    'days = [{ minutes = 5 }, { minutes = 40 }]\nequipment = ["dumbbell", "bench", "barbel"]\n',
    "3x40, grow dlets",
    "3x40, grow chest, no chest",
)
"""What the faults on the page are found in, in the page's order: a file, then phrases."""


@pytest.mark.parametrize("phrase", PHRASES)
def test_a_phrase_of_the_brief_page_is_understood(phrase: str) -> None:
    assert read_brief(phrase, load_catalogue(), StringIO(), tuple(RULES)).brief.days


def test_the_brief_page_shows_phrases() -> None:
    assert len(PHRASES) > 10


def test_the_brief_file_of_the_brief_page_is_read(tmp_path: Path) -> None:
    (example,) = blocks(BRIEF, "toml")
    file = tmp_path / "brief.toml"
    file.write_text(example, encoding="utf-8")
    assert read_brief(str(file), load_catalogue(), StringIO(), tuple(RULES)).brief.title == "Three short days"


def test_the_faults_of_the_brief_page_are_those_that_are_found(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.chdir(tmp_path)
    Path("brief.toml").write_text(FAULTY[0], encoding="utf-8")
    said = ""
    for source in ("brief.toml", *FAULTY[1:]):
        result = CliRunner().invoke(setwright, ["week", source], prog_name="setwright")
        assert result.exit_code == 2
        said += result.stderr
    assert said == blocks(BRIEF, "text")[-1]


def test_the_coach_file_of_the_sheets_page_is_read() -> None:
    (example,) = blocks(SHEETS, "toml")
    coach = parse_coach(example.encode(), load_catalogue(), "coach.toml")
    assert coach.name == "Studio Birch"
    assert coach.weeks == 4


def test_the_template_of_the_variants_page_is_read() -> None:
    (example,) = blocks(VARIANTS, "toml")
    assert template_of(tomllib.loads(example), "template.toml").title == "House template"
