"""The weeks of a folder of variants, read again as the values that they were written from."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.assumed import Assumption
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.planning import Solved
from setwright.solver.rulebook import resolve
from setwright.solver.search.limits import DEFAULT, SEARCHES
from setwright.solver.search.secondary.fewest_minutes import ShortestWeek
from setwright.solver.search.stopping import EndedBy
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import handout_of
from setwright.solver.sheets.handout.values import Handout
from setwright.solver.sheets.screen.week_table import week_text
from setwright.solver.uses.variants.matrix import Variant, VariantMatrix
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.results import read_result


def week_texts(
    matrix: VariantMatrix, store: ResultStore, catalogue: Catalogue, width: int
) -> Iterator[tuple[Variant, str]]:
    """Each variant that has a week, with the week as text at most `width` letters wide."""
    for variant in matrix.variants:
        week = stored_week(variant, store)
        if week is not None:
            yield variant, week_text(solved_again(week, catalogue, variant.name), width)


def week_handouts(
    matrix: VariantMatrix, store: ResultStore, catalogue: Catalogue, coach: Coach
) -> Iterator[tuple[Variant, Handout]]:
    """Each variant that has a week, with the week as a client is handed it."""
    for variant in matrix.variants:
        week = stored_week(variant, store)
        if week is not None:
            yield variant, handout_of(week, catalogue, coach, where=variant.name)


def stored_week(variant: Variant, store: ResultStore) -> dict[str, Any] | None:
    """A variant's week as a document; None where it has none."""
    data = store.read(variant.key)
    found = read_result(data, variant.key) if data else None
    return None if found is None else found["week"]


def solved_again(document: Mapping[str, Any], catalogue: Catalogue, where: str) -> Solved:
    """The solved week that a document was written from, audited anew; raises UsageFault, each fault led by `where`."""
    parsed, days = read_week(document, catalogue, where)
    parsed = replace(parsed, assumed=tuple(Assumption("plan", text) for text in document["assumed"]))
    resolved = resolve(parsed.brief, catalogue)
    found, cut = audit(resolved, days), document["shortened"]
    return Solved(
        parsed=parsed,
        resolved=resolved,
        audit=found,
        bound_units=math.inf if document["bound"] is None else _units(document["bound"]),
        ended_by=EndedBy(document["ended_by"]),
        limits=replace(SEARCHES[DEFAULT], name=document["made_by"]["limits"]["search"]),
        shortest=cut
        and ShortestWeek(found, _units(cut["best_score"]), _units(cut["floor"]), cut["seconds"], cut["least_seconds"]),
        best_without_pairs=document["best_without_pairs"],
    )


def _units(points: float) -> int:
    return round(UNITS * points)
