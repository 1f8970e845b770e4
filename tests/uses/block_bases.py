"""Solved weeks to make blocks of: planned once with --search quick and kept, so that no test waits for a search."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.rulebook import RULES
from setwright.solver.uses.blocks.ask import BlockAsk
from setwright.solver.uses.blocks.block import Block
from setwright.solver.uses.blocks.planning import plan_block

CATALOGUE = load_catalogue()
FOLDER = Path(__file__).parent / "block_weeks"
NAMES = tuple(sorted(file.stem for file in FOLDER.glob("*.json")))


def base_of(name: str, **more: Any) -> tuple[ParsedBrief, Week]:
    """A kept brief, with more laid over it, and its week."""
    kept = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    week = Week(tuple(tuple(Entry(**row | {"reps": tuple(row["reps"])}) for row in day) for day in kept["days"]))
    return parse_brief(kept["brief"] | more, CATALOGUE, name, tuple(RULES)), week


@cache
def block_of(name: str, ask: BlockAsk, lifts: tuple[tuple[str, str], ...] = ()) -> Block:
    """The block of a kept week."""
    parsed, week = base_of(name, **({"lifts": dict(lifts)} if lifts else {}))
    found = plan_block(parsed, CATALOGUE, ask, base=week)
    assert isinstance(found, Block)
    return found
