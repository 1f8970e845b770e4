"""The commands that write in the book, killed -9 at a few random moments; tests/bench/killed.py has two hundred."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[2]))
from tests.bench.killed import COMMANDS, killed_points

POINTS = 6


@pytest.mark.slow
@pytest.mark.skipif(not hasattr(os, "killpg"), reason="needs process groups")
@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_killed_loses_nothing_acknowledged_and_leaves_nothing_by_half(name: str, tmp_path: Path) -> None:
    assert sum(killed_points(name, POINTS, tmp_path).values()) == POINTS
