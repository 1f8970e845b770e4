"""What the scenario tests share: briefs read as a user's are, and planned by little work."""

from __future__ import annotations

import io
from pathlib import Path

from light_search import LITTLE

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.planning import End, plan
from setwright.solver.search.solve_options import SolveOptions

ROOT = Path(__file__).parents[2]


def planned(brief: str, catalogue: Catalogue, limits=LITTLE) -> End:
    """The end of planning a scenario's file or a phrase."""
    parsed = read_brief(brief, catalogue, io.BytesIO(b""))
    return plan(parsed, catalogue, SolveOptions(limits, pairs_note=False))
