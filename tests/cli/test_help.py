"""Help and version: complete, and quick because nothing heavy is imported."""

from __future__ import annotations

import subprocess
from collections.abc import Callable

import pytest

from setwright.solver.cli.group import COMMANDS

Program = Callable[..., subprocess.CompletedProcess[str]]
HEAVY = ("pydantic", "ortools", "highspy", "numpy", "tabulate", "pandas")
LOADED = """
import sys
sys.argv = ["setwright", *{arguments!r}]
from setwright.solver.cli import main
try:
    main()
except SystemExit:
    pass
print("LOADED", *[name for name in {heavy!r} if name in sys.modules])
"""


def loaded(program: Program, *arguments: str) -> list[str]:
    done = program("-c", LOADED.format(arguments=arguments, heavy=HEAVY))
    assert not done.stderr
    return done.stdout.splitlines()[-1].split()[1:]


@pytest.mark.parametrize("arguments", [("--help",), ("-h",), ("--version",)])
def test_help_imports_nothing_heavy(arguments: tuple[str, ...], program: Program) -> None:
    assert loaded(program, *arguments) == []


@pytest.mark.parametrize("name", COMMANDS)
def test_the_help_of_a_command_imports_nothing_heavy(name: str, program: Program) -> None:
    assert loaded(program, name, "--help") == []


@pytest.mark.parametrize("arguments", [("exercises",), ("evidence",), ("schema", "brief"), ("week", "2x40 grow dlets")])
def test_text_only_commands_import_no_solver(arguments: tuple[str, ...], program: Program) -> None:
    done = program("-c", LOADED.format(arguments=arguments, heavy=("ortools", "highspy")))
    assert done.stdout.splitlines()[-1] == "LOADED"


def test_help_names_every_command_and_exit_code(run: Callable[..., object]) -> None:
    text = run("--help").output  # type: ignore[attr-defined]
    for name, command in COMMANDS.items():
        assert name in text
        assert command.summary in text


def test_runs_as_a_module(program: Program) -> None:
    done = program("-m", "setwright.solver", "--version")
    assert done.returncode == 0
    assert done.stdout.startswith("setwright ")
