"""The command line run in this process, or as a program of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from setwright.solver.cli.group import setwright

HOUSE = Path(__file__).parents[2]
Run = Callable[..., Result]


@pytest.fixture
def run() -> Run:
    """The command with these arguments, its stdout and stderr apart."""

    def invoke(*arguments: str, given: str | bytes | None = None) -> Result:
        return CliRunner().invoke(setwright, list(arguments), input=given, prog_name="setwright")

    return invoke


@pytest.fixture(scope="session")
def program() -> Callable[..., subprocess.CompletedProcess[str]]:
    """A Python program with setwright on its path."""

    def start(*arguments: str, **more: str) -> subprocess.CompletedProcess[str]:
        names = os.pathsep.join(path for path in (str(HOUSE / ".names"), os.environ.get("PYTHONPATH", "")) if path)
        environment = {**os.environ, "PYTHONPATH": names, **more}
        command = [sys.executable, *arguments]
        return subprocess.run(command, capture_output=True, text=True, env=environment, check=False)

    return start
