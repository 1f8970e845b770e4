"""A lift that a coach closes leaves the swaps of every line of the week, on days that did not change too."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.schema import Brief
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.edits.edited_week import edited_week_document
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.leaving_out import left_out

CATALOGUE = load_catalogue()
STORED = json.loads((Path(__file__).parent / "weeks" / "pairs-private.json").read_bytes())
CLOSED = "goblet-box-squat"


def disliked(brief: Brief, exercise: str) -> Brief:
    return brief.model_copy(update={"dislike": (*brief.dislike, exercise)})


def swaps(document: dict[str, Any]) -> dict[str, list[str]]:
    return {line["exercise"]: line["swaps"] for day in document["days"] for line in day["entries"]}


@pytest.mark.parametrize("close", [left_out, disliked])
def test_a_closed_lift_is_named_nowhere_and_the_other_swaps_stand(close: Any) -> None:
    parsed, week = read_week(STORED, CATALOGUE)
    before = audit(resolve(parsed.brief, CATALOGUE), week)
    after = audit(resolve(close(parsed.brief, CLOSED), CATALOGUE), week)
    old = swaps(STORED)
    assert any(CLOSED in named for named in old.values())
    document = edited_week_document(STORED, replace(parsed), Effect(before, after))
    new = swaps(document)
    for line, named in old.items():
        if CLOSED in named:
            assert CLOSED not in new[line] and new[line], line
        else:
            assert new[line] == named
