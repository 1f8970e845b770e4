"""Fixed weeks made once with `setwright week ... --search quick --json`, as documents and as handouts."""

from __future__ import annotations

import copy
import json
import subprocess
import sys
from functools import cache
from pathlib import Path
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue
from setwright.solver.sheets.handout.coach import DEFAULT_COACH, Coach
from setwright.solver.sheets.handout.handout import Handout, handout_of

WEEKS = Path(__file__).parent / "weeks"
THREE, PAIRS = "three-40", "pairs-private"
"""Scenario 03; and 'mon thu 30 min, with pairs, efficiency, home dumbbells, avoid goblet squat, caution wrist'."""


@cache
def shipped() -> Catalogue:
    return load_catalogue()


@cache
def _text(name: str) -> str:
    return (WEEKS / f"{name}.json").read_text(encoding="utf-8")


def document(name: str = THREE) -> dict[str, Any]:
    """A week's document, free to be changed."""
    found: dict[str, Any] = copy.deepcopy(json.loads(_text(name)))
    return found


def handed(name: str = THREE, coach: Coach = DEFAULT_COACH, **more: Any) -> Handout:
    """The handout of a fixed week."""
    return handout_of(document(name), shipped(), coach, **more)


def prints_under_hash_seeds(code: str) -> set[str]:
    """What a program with this process's own path prints under two hash seeds: one text where it is reproducible."""
    path = f"import sys; sys.path[:0] = {[p for p in sys.path if p]!r}\n"
    return {
        subprocess.run(
            [sys.executable, "-c", path + code],
            env={"PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("0", "4242")
    }
