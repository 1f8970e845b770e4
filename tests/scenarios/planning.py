"""What the scenario tests share: briefs read as a user's are, and cheap limits."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

from light_search import LIGHT

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.planning import End, plan
from setwright.solver.search.solve_options import SolveOptions

ROOT = Path(__file__).parents[2]
CHEAP = replace(LIGHT, rounds=3, work=0.1, nodes=0, pattern_nodes=0)


def planned(brief: str, catalogue: Catalogue, limits=CHEAP) -> End:
    """The end of planning a scenario's file or a phrase."""
    parsed = read_brief(brief, catalogue, io.BytesIO(b""))
    return plan(parsed, catalogue, SolveOptions(limits, pairs_note=False))
