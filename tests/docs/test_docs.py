"""The pages say what is there."""

from __future__ import annotations

import fnmatch
import re
import shlex
import sys
from pathlib import Path

import pytest
from click import Context
from click.testing import CliRunner

from setwright.catalogue.load import load_catalogue
from setwright.solver.cli.group import COMMANDS, setwright
from setwright.solver.rulebook import RULES

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "docs").glob("*.md"))]
MOST_SOLVES = 3


def shown(pages: list[Path]) -> list[str]:
    """Every line of a block tagged sh that begins with setwright, each once, in the pages' order."""
    blocks = (re.findall(r"^```sh\n(.*?)^```", page.read_text(encoding="utf-8"), flags=re.M | re.S) for page in pages)
    lines = (line.strip() for found in blocks for block in found for line in block.splitlines())
    return list(dict.fromkeys(line for line in lines if line.startswith("setwright ")))


SHOWN = shown(PAGES)


def test_the_rules_page_is_current() -> None:
    from tests.docs.rules_page import page

    assert (ROOT / "docs" / "rules.md").read_text(encoding="utf-8") == page()


def test_every_rule_has_an_anchor() -> None:
    text = (ROOT / "docs" / "rules.md").read_text(encoding="utf-8")
    assert all(f"## {rule}\n" in text for rule in RULES)


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_links_to_files_lead_somewhere(page: Path) -> None:
    for target in re.findall(r"\]\(([^)#:]+)\)", page.read_text(encoding="utf-8")):
        assert (page.parent / target).exists(), target


@pytest.mark.parametrize("command", SHOWN)
def test_a_shown_command_runs(monkeypatch, command) -> None:
    monkeypatch.chdir(ROOT)
    words = shlex.split(command)[1:]
    if words[0] == "week":
        words += ["--search", "quick"]
    result = CliRunner().invoke(setwright, words, prog_name="setwright")
    assert result.exit_code == 0, result.output


def test_the_pages_show_commands_but_few_that_solve() -> None:
    assert SHOWN
    assert sum(command.startswith("setwright week") for command in SHOWN) <= MOST_SOLVES


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_and_option_is_in_the_readme(name) -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    assert f"setwright {name}" in text
    command = setwright.get_command(Context(setwright), name)
    assert command is not None
    for parameter in command.params:
        for prescription in (o for o in parameter.opts if o.startswith("--")):
            assert re.search(rf"`[^`]*{prescription}\b", text), prescription


def test_every_evidence_id_that_a_page_names_is_there() -> None:
    evidence, rules = load_catalogue().evidence, load_catalogue().rules
    text = (ROOT / "docs" / "reckoning.md").read_text(encoding="utf-8")
    for name in re.findall(r"`([a-z*]+(?:-[a-z*]+)+)`", text):
        assert fnmatch.filter([*evidence, *rules], name), name
