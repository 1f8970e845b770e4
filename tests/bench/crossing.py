"""One brief held against everything that should agree on it: search, both engines whole, the audit, print and JSON."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, field, replace
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.understand import Understood
from setwright.solver.model.build import all_day_columns, day_sheet
from setwright.solver.model.columns import Board, Column
from setwright.solver.model.engines import highs
from setwright.solver.model.engines.cpsat import Program
from setwright.solver.model.limits import SEARCHES
from setwright.solver.model.naming import week_of
from setwright.solver.model.search import Outcome
from setwright.solver.model.search.warm import columns_of
from setwright.solver.model.sheet import Sheet
from setwright.solver.plan import Clash, End, OutOfTime, Solved, completed, plan
from setwright.solver.reckoning.audit import Audit, audit
from setwright.solver.reckoning.resolve import resolve
from setwright.solver.sheets.audit import audit_document
from setwright.solver.sheets.document import dumped, week_document
from setwright.solver.sheets.reading import read_week
from setwright.solver.sheets.table import week_text
from setwright.solver.sheets.words import sets_by_reps, whole_minutes

LIMITS = replace(SEARCHES["quick"], rounds=3, work=0.1, columns=30, nodes=3, seconds=3600.0)
WHOLE = 240
"""Columns that both engines are given: all where they are few, else spread evenly over all, and the week's own."""
WORK, NODES, SECONDS = 0.5, 3, 60.0
ABOVE = 700
"""Score units: tangents and costs rounded outward may put the model's word on a week so far above the audit's."""


@dataclass
class Crossed:
    """What was found of one brief: how it ended, how large the model was, and every disagreement in words."""

    ended: str = ""
    columns: int = 0
    above: float = 0.0
    """How far the model's word on the week passes the audit's, in score units."""
    left: float = 0.0
    """How far a whole-week engine's week passes the search's, in score units."""
    faults: list[str] = field(default_factory=list)

    def claim(self, holds: bool, words: str) -> None:
        if not holds:
            self.faults.append(words)


def crossed(understood: Understood, catalogue: Catalogue) -> Crossed:
    """The brief planned twice and cross-checked."""
    found = Crossed()
    try:
        end, outcome = completed(understood, catalogue, LIMITS, with_pairs_note=False)
        alone = plan(understood, catalogue, LIMITS, side_by_side=False, with_pairs_note=False)
    except Exception as error:
        found.ended, found.faults = "raised", [f"planning raised {type(error).__name__}: {error}"]
        return found
    found.ended = type(end).__name__.lower()
    found.claim(said(end) == said(alone), "one thread gives another end than two")
    if isinstance(end, Solved) and outcome.best is not None:
        agree_on_score(found, end, outcome, outcome.best)
        engines_overlap(found, outcome, outcome.best)
        prints_the_same(found, end, catalogue)
    else:
        no_engine_has_a_week(found, outcome)
    return found


def said(end: End) -> str:
    """An end as text."""
    match end:
        case Solved():
            return dumped(week_document(end, private=True))
        case Clash():
            return str(end.conflicts)
        case OutOfTime():
            return end.ended_by


# ---- the search and the audit


def agree_on_score(found: Crossed, end: Solved, outcome: Outcome, best: Audit) -> None:
    """The audit's word on the delivered week, anew from nothing but the week."""
    again = audit(resolve(end.understood.brief, end.terms.catalogue), end.audit.view.week)
    found.claim(not again.broken, f"the audit breaks {[f.rule for f in again.broken]}")
    found.claim(again.score_units == end.audit.score_units, "a second audit scores otherwise")
    found.claim(best.score_units <= outcome.bound, f"score {best.score_units} passes the bound {outcome.bound:.0f}")
    found.claim(end.audit.score_units <= end.bound_units, "the delivered score passes the bound printed")


# ---- both engines on the whole week


def engines_overlap(found: Crossed, outcome: Outcome, best: Audit) -> None:
    """Search, CP-SAT and HiGHS: no one's week passes another's bound, and every week passes the audit."""
    board = outcome.climb.board
    mine = columns_of(board, best.view.week)
    found.claim(bool(mine), "the week cannot be told in columns")
    sheet = whole(board, mine)
    found.columns = len(sheet.columns)
    chosen = frozenset(j for j, column in enumerate(sheet.columns) if column in set(mine))
    worth_of_the_week(found, sheet, chosen, best)
    program = Program(sheet)
    program.hint(chosen)
    program.maximise()
    ours, theirs = program.solve(WORK, SECONDS), highs.bound(sheet, NODES, SECONDS)
    slack = highs.ROUNDING
    found.claim(ours.status != "INFEASIBLE", "CP-SAT finds the whole week impossible")
    found.claim(not theirs.infeasible, "HiGHS finds the whole week infeasible")
    for who, bound in (("CP-SAT", ours.bound), ("HiGHS", theirs.bound)):
        found.claim(best.score_units <= bound + slack, f"score {best.score_units} passes {who}'s bound {bound:.0f}")
    found.claim(ours.value <= theirs.bound + ABOVE, f"CP-SAT {ours.value:.0f} passes HiGHS's bound {theirs.bound:.0f}")
    found.claim(theirs.value <= ours.bound + slack, f"HiGHS {theirs.value:.0f} passes CP-SAT's bound {ours.bound:.0f}")
    for who, columns in (("CP-SAT", ours.columns), ("HiGHS", in_use(theirs))):
        if columns is not None:
            week_of_an_engine(found, who, sheet, columns, outcome, best)


def whole(board: Board, mine: tuple[Column, ...]) -> Sheet:
    """The week on its days over some of its columns, the week's own among them."""
    columns = all_day_columns(board)
    thinned = columns[:: -(-len(columns) // WHOLE)] if columns else ()
    return day_sheet(board, tuple(dict.fromkeys((*thinned, *mine))))


def worth_of_the_week(found: Crossed, sheet: Sheet, chosen: frozenset[int], best: Audit) -> None:
    """The model's objective for the week held still, against the audit's score."""
    program = Program(sheet, {j: int(j in chosen) for j in range(len(sheet.columns))})
    program.maximise()
    held = program.solve(5.0, SECONDS)
    if held.status != "OPTIMAL":
        found.faults.append(f"the model says {held.status} of the week the audit passes")
        return
    found.above = held.value - best.score_units
    found.claim(
        -highs.ROUNDING <= found.above <= ABOVE,
        f"the model's word on the week, {held.value:.0f}, is not the audit's {best.score_units}",
    )


def in_use(theirs: highs.Bounded) -> frozenset[int] | None:
    if theirs.amounts is None:
        return None
    return frozenset(j for j, amount in enumerate(theirs.amounts) if amount > 0.5)


def week_of_an_engine(
    found: Crossed, who: str, sheet: Sheet, columns: frozenset[int], outcome: Outcome, best: Audit
) -> None:
    """An engine's own week passes the audit and stays under the search's bound."""
    week = week_of(sheet.board, [(sheet.columns[j].cell, sheet.columns[j]) for j in sorted(columns)])
    result = audit(sheet.terms, week)
    found.claim(not result.broken, f"{who}'s week breaks {sorted({f'{f.rule}: {f.text}' for f in result.broken})}")
    if not result.broken:
        score = result.score_units
        found.claim(score <= outcome.bound + 1, f"{who}'s week {score} passes the search's bound {outcome.bound:.0f}")
        found.left = max(found.left, score - best.score_units)


def no_engine_has_a_week(found: Crossed, outcome: Outcome) -> None:
    """Where the search has no week neither engine has one, and neither proves one where a clash was named."""
    board = outcome.climb.board
    sheet = whole(board, ())
    found.columns = len(sheet.columns)
    ours, theirs = Program(sheet).solve(4 * WORK, SECONDS), highs.bound(sheet, NODES, SECONDS)
    found.claim(ours.columns is None, f"CP-SAT has a week where the search ended as {found.ended}")
    found.claim(theirs.amounts is None, f"HiGHS has a week where the search ended as {found.ended}")


# ---- print and file


def prints_the_same(found: Crossed, end: Solved, catalogue: Catalogue) -> None:
    """The JSON read back is the same brief and week, and its audit and the printed week show the same numbers."""
    document = json.loads(dumped(week_document(end, private=True)))
    understood, week = read_week(document, catalogue)
    found.claim(week == end.audit.view.week, "the week read back is another")
    found.claim(understood.brief == end.understood.brief, "the brief read back is another")
    again = json.loads(dumped(audit_document(audit(resolve(understood.brief, catalogue), week))))
    for key in sorted(set(again) & set(document) - {"schema"}):
        found.claim(again[key] == document[key], f"audit of the JSON: {key} differs")
    text = week_text(end, 100, private=True)
    found.claim(max(map(len, text.splitlines())) <= 100, "the printed week is wider than 100 columns")
    for words in printed(end, document):
        found.claim(words in re.sub(r"\s+", " ", text), f"the printed week lacks {words!r}")


def printed(end: Solved, document: dict[str, Any]) -> list[str]:
    """What the printed week must say: the document's numbers, and each line with its dose."""
    low, high = document["interval"]
    trained = [day for day in document["days"] if day["entries"]]
    lines = end.audit.view.lines
    return [
        f"Week index {document['stimulus']:.1f} (interval {low} to {high})",
        f"core {document['score']:.1f}",
        *(f"{whole_minutes(day['seconds'])} of {day['minutes']} min" for day in trained),
        *(f"{line.exercise.name} {sets_by_reps(line.entry, line.exercise)}" for line in lines),
    ]
