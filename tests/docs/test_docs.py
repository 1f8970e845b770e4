"""The pages say what is there."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from setwright.solver.cli import main
from setwright.solver.reckoning.rules import RULES

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "docs").glob("*.md"))]


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


def test_the_readmes_commands_run(monkeypatch) -> None:
    monkeypatch.chdir(ROOT)
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    lines = re.findall(r"^setwright (.+)$", text, flags=re.M)
    assert lines
    for line in lines:
        assert CliRunner().invoke(main, line.split()).exit_code == 0, line


def test_every_command_is_in_the_readme() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    for command in ("week", "audit", "exercises", "evidence", "schema"):
        assert f"setwright {command}" in text
