"""The pages that are made by a command are as the command makes them."""

from __future__ import annotations

import re
import sys
from io import StringIO
from pathlib import Path

import click
import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.cli.exit_codes import ExitCode
from setwright.solver.cli.group import COMMANDS, setwright
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.document.week_reader import read_week

sys.path.insert(0, str(Path(__file__).parents[2]))
from tests.docs import commands_page, readme_week, rules_page
from tests.docs.pages import ROOT, text_of

DOCS = ROOT / "docs"


def test_the_rules_page_is_current() -> None:
    assert text_of(DOCS / "rules.md") == rules_page.page()


def test_every_rule_has_an_anchor() -> None:
    assert all(f"## {rule}\n" in text_of(DOCS / "rules.md") for rule in RULES)


def test_the_commands_page_is_current() -> None:
    assert text_of(DOCS / "commands.md") == commands_page.page()


def every_command() -> list[click.Context]:
    return list(commands_page.commands_under(click.Context(setwright, info_name="setwright")))


def section(path: str) -> str:
    """What the commands page says of one command, up to the next heading."""
    found = re.search(rf"^##+ {path}\n(.*?)(?=^#+ |\Z)", text_of(DOCS / "commands.md"), flags=re.M | re.S)
    assert found, path
    return found[1]


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_on_the_commands_page(name: str) -> None:
    assert any(context.command_path == f"setwright {name}" for context in every_command())
    assert section(f"setwright {name}")


@pytest.mark.parametrize("context", every_command(), ids=lambda context: context.command_path)
def test_every_option_and_argument_is_in_its_commands_section(context: click.Context) -> None:
    text = section(context.command_path)
    before_usage = text.split("```text", 1)[0]
    for parameter in context.command.params:
        for option in (o for o in parameter.opts if o.startswith("--")):
            assert re.search(rf"^\| `[^`]*{option}\b[^`]*` \| \S", text, flags=re.M), option
        if isinstance(parameter, click.Argument) and parameter.nargs == 1 and parameter.type.name != "choice":
            assert parameter.human_readable_name.strip("[]") in before_usage, parameter.name


def test_notes_for_no_command_are_refused(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    notes = tmp_path / "command_notes.md"
    notes.write_text("# setwright\nOf all.\n\n# setwright weak\nOf none.\n", encoding="utf-8")
    monkeypatch.setattr(commands_page, "NOTES", notes)
    with pytest.raises(ValueError, match="setwright weak"):
        commands_page.page()


def test_every_exit_code_has_a_row() -> None:
    rows = re.findall(r"^\| (\d+) \| \w", text_of(DOCS / "commands.md"), flags=re.M)
    assert [int(code) for code in rows] == list(ExitCode)


def test_the_readmes_week_is_the_stored_week_audited_anew() -> None:
    assert readme_week.shown() == readme_week.text_of_stored()


def test_the_stored_week_is_that_of_the_readmes_brief() -> None:
    catalogue = load_catalogue()
    asked = read_brief(readme_week.brief(), catalogue, StringIO(), tuple(RULES))
    assert read_week(readme_week.stored(), catalogue, "")[0].brief == asked.brief
