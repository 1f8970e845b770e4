"""The exit codes: each with a meaning that help and docs/commands.md name, and used by name alone."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.catalogue.faults import CatalogueFault, Fault, UsageFault
from setwright.solver.cli.exit_codes import MEANINGS, ExitCode, NoWeekError, exit_code_of

ROOT = Path(__file__).parents[2]


def test_every_code_has_a_meaning() -> None:
    assert list(MEANINGS) == list(ExitCode)


@pytest.mark.parametrize("code", ExitCode)
def test_help_and_the_commands_page_name_every_code(code: ExitCode, run: Callable[..., Result]) -> None:
    assert f" {code:d} {MEANINGS[code]}" in " ".join(run("--help").stdout.split())
    page = (ROOT / "docs" / "commands.md").read_text(encoding="utf-8")
    assert f"| {code:d} | {MEANINGS[code]} |" in page


def test_no_other_place_writes_a_code_as_a_number() -> None:
    own = ROOT / "solver" / "cli" / "exit_codes.py"
    for path in {*(ROOT / "solver" / "cli").rglob("*.py")} - {own}:
        assert not re.search(r"exit\([^)]*\d|\b(130|141)\b", path.read_text(encoding="utf-8")), path


def test_an_error_ends_with_the_code_of_its_kind() -> None:
    fault = Fault("x", "is wrong")
    assert exit_code_of(UsageFault(fault)) is ExitCode.USAGE
    assert exit_code_of(CatalogueFault(fault)) is ExitCode.ERROR
    assert exit_code_of(NoWeekError(fault, ExitCode.CLASH)) is ExitCode.CLASH
