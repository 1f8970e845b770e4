"""Public functions that exist for programs alone; the other public names are those that the commands use too."""

from __future__ import annotations

import json
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief import file
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.brief.schema import Goal
from setwright.solver.rulebook import RULES
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.compare import comparison
from setwright.solver.uses.compare.compared_brief import compared_briefs
from setwright.solver.uses.compare.comparison import Comparison
from setwright.solver.uses.variants.matrix import matrix_of
from setwright.solver.uses.variants.template import read_template


def read_brief(source: str | Path | Mapping[str, Any], catalogue: Catalogue) -> ParsedBrief:
    """The brief that a phrase, a TOML file or a table of a brief's fields stands for.

    Raises UsageFault with every fault found, each with its place and a remedy.
    """
    if isinstance(source, Mapping):
        return parse_brief(source, catalogue, "brief", tuple(RULES))
    return file.read_brief(str(source), catalogue, sys.stdin, tuple(RULES))


def compare(
    briefs: Sequence[ParsedBrief],
    catalogue: Catalogue,
    goals: Sequence[Goal] = (),
    options: SolveOptions | None = None,
) -> Comparison:
    """The weeks of some briefs, each under some goals or under its own, side by side; each is a search."""
    asked = options or SolveOptions()
    cases = compared_briefs(briefs, goals)
    return comparison.compare(cases, catalogue, asked.limits, asked.watch, asked.stopped)


def template_briefs(template: Path, catalogue: Catalogue) -> dict[str, ParsedBrief]:
    """Variant's name -> its brief, for every variant of a template, to be planned by an executor of your own.

    Raises UsageFault with every fault of the template or of a variant's brief.
    """
    matrix = matrix_of(read_template(template), catalogue, {}, tuple(RULES))
    found = matrix.variants
    return {v.name: parse_brief(json.loads(v.brief), catalogue, v.name, tuple(RULES)) for v in found}
