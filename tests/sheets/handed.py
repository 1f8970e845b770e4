"""Fixed weeks made once with `setwright week ... --search quick --json`, as documents and as handouts."""

from __future__ import annotations

import copy
import json
from functools import cache
from pathlib import Path
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue
from setwright.solver.sheets.coach import DEFAULT_COACH, Coach
from setwright.solver.sheets.handout import Handout, handout_of

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
