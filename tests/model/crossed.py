"""Random briefs, and what must hold of each however its week is looked at: shared by the tests and the bench."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from random import Random
from typing import Any

from boards import CATALOGUE, days

from setwright.catalogue.faults import UsageFault
from setwright.solver.brief.understand import Understood, understand
from setwright.solver.model.build import day_sheet
from setwright.solver.model.columns import Board, board_of
from setwright.solver.model.engines import highs
from setwright.solver.model.engines.cpsat import Program
from setwright.solver.model.limits import SEARCHES
from setwright.solver.model.naming import week_of
from setwright.solver.model.search import Outcome, search
from setwright.solver.plan import deliver
from setwright.solver.reckoning.audit import audit
from setwright.solver.reckoning.resolve import resolve
from setwright.solver.reckoning.rules import RULES
from setwright.solver.reckoning.week import Week
from setwright.solver.sheets.document import dumped, week_document
from setwright.solver.sheets.reading import read_week

LITTLE = replace(
    SEARCHES["quick"], rounds=3, work=0.1, columns=30, nodes=5, theme_nodes=1, leap_nodes=0, settle_nodes=0
)
WEEKS = ("mon", "tue fri", "mon thu", "mon wed fri", "tue thu sat", "mon tue thu fri", "mon wed thu sat")
KITS = ("bands", "bodyweight-and-bands", "home-dumbbells", "hotel-gym", "barbell-garage", "machine-gym")
MUSCLES = ("chest", "lats", "quads", "hamstrings", "glutes", "side-delts", "biceps", "triceps", "calves")
TAGS = ("shoulder", "knee", "lower-back")
COLUMNS = 100
"""Columns on all days that both engines are given whole."""
WORK = 0.4
NODES = 3
TANGENTS = 700
"""Score units by which the model's tangents may lie above the audit's curves, over all muscles."""


@dataclass(frozen=True)
class Crossed:
    """How a brief ended, and what did not hold, in words."""

    seed: int
    end: str
    wrong: tuple[str, ...] = ()


def drawn(seed: int) -> dict[str, Any]:
    """A random brief of one to four days: kit, goal, bands, pins, tastes, cautions, pairs and rules by chance."""
    random = Random(seed)
    chance, choice = random.random, random.choice
    raw: dict[str, Any] = {
        "days": days(choice(WEEKS), choice((15, 20, 25, 30, 40))),
        "equipment": choice(KITS),
        "goal": choice(("growth", "balanced", "efficiency")),
        "client": {"experience": choice(("novice", "intermediate", "advanced"))},
    }
    if chance() < 0.4:
        raw["muscles"] = dict.fromkeys(random.sample(MUSCLES, choice((1, 2))), "priority")
    elif chance() < 0.4:
        raw["muscles"] = {choice(MUSCLES[:4]): {"at_least": choice((1.0, 2.0))}, choice(MUSCLES[4:]): {"at_most": 6.0}}
    if chance() < 0.3:
        raw["pairs"] = choice((True, False))
    if chance() < 0.3:
        raw["client"]["cautions"] = [{"tag": choice(TAGS), "said_by": "physiotherapist", "on": "2026-10-02"}]
    names = sorted(CATALOGUE.exercises)
    for taste in ("dislike", "like", "avoid"):
        if chance() < 0.3:
            raw[taste] = random.sample(names, 5)
    if chance() < 0.25:
        raw["rules"] = {choice(sorted(RULES)): choice(("off", "hard"))}
    if chance() < 0.3:
        raw["pins"] = [{"exercise": choice(names), "sets": choice((2, 3))}]
    return raw


def understood(seed: int) -> Understood:
    """The brief of a seed; what cannot be said with the rest of it is left out, the dearest first."""
    raw = drawn(seed)
    for dropped in ("pins", "like", "rules", "client", "muscles", "pairs"):
        try:
            return understand(raw, CATALOGUE, f"seed {seed}", tuple(RULES))
        except UsageFault:
            raw.pop(dropped, None)
    return understand(raw, CATALOGUE, f"seed {seed}", tuple(RULES))


def crossed(seed: int) -> Crossed:
    """One brief searched, given whole to either engine, printed and read again."""
    asked = understood(seed)
    board = board_of(resolve(asked.brief, CATALOGUE))
    beside, alone = (search(board, LITTLE, side_by_side=both) for both in (True, False))
    if beside.best is None or alone.best is None:
        same = beside.best is None and alone.best is None
        return Crossed(seed, "no week", () if same else ("one thread finds a week, two do not",))
    wrong = [*lanes(beside, alone), *engines(board, beside), *printed(asked, board, beside)]
    return Crossed(seed, "solved", tuple(wrong))


def lanes(beside: Outcome, alone: Outcome) -> list[str]:
    """One lane or two give the same, and the score keeps under the bound."""
    assert beside.best is not None and alone.best is not None
    said = []
    if beside.best.view.week != alone.best.view.week or beside.bound != alone.bound:
        said.append("one lane and two give different ends")
    if beside.best.score_units > beside.bound:
        said.append(f"the score {beside.best.score_units} passes the bound {beside.bound:.0f}")
    if beside.best.broken:
        said.append(f"the week breaks {[finding.rule for finding in beside.best.broken]}")
    return said


def engines(board: Board, outcome: Outcome) -> list[str]:
    """CP-SAT's and HiGHS's intervals over the same columns overlap, and no week of either passes the bound."""
    climb = outcome.climb
    most = COLUMNS // len(board.terms.days)
    kept = {j for day in climb.candidates.ranked for j in day[:most]} | climb.candidates.must | climb.chosen
    columns = [climb.candidates.columns[j] for j in sorted(kept)]
    sheet = day_sheet(board, columns)
    program = Program(sheet)
    program.hint(frozenset(i for i, j in enumerate(sorted(kept)) if j in climb.chosen))
    program.maximise()
    ours, theirs = program.solve(WORK, 60.0), highs.bound(sheet, NODES, 60.0)
    said = []
    if ours.status == "INFEASIBLE" or theirs.infeasible:
        said.append("an engine calls columns impossible that hold the week at hand")
    if ours.value > theirs.bound + 50 or theirs.value > ours.bound + 50:
        said.append(f"CP-SAT [{ours.value:.0f}, {ours.bound:.0f}], HiGHS [{theirs.value:.0f}, {theirs.bound:.0f}]")
    of_highs = None if theirs.amounts is None else frozenset(i for i, v in enumerate(theirs.amounts) if v > 0.5)
    for name, chosen, value in (("CP-SAT", ours.columns, ours.value), ("HiGHS", of_highs, theirs.value)):
        if chosen is not None:
            week = week_of(board, [(sheet.cells[columns[j].cell].days[0], columns[j]) for j in sorted(chosen)])
            said += raw_week(board, outcome, name, week, value)
    return said


def raw_week(board: Board, outcome: Outcome, name: str, week: Week, value: float) -> list[str]:
    """An engine's week is sound, worth no less than the engine says, and under the search's bound."""
    found = audit(board.terms, week)
    said = []
    if found.broken:
        said.append(f"{name}'s week breaks {[finding.rule for finding in found.broken]}")
    if value > found.score_units + TANGENTS:
        said.append(f"{name} says {value:.0f} of a week that the audit gives only {found.score_units}")
    if found.score_units > outcome.bound:
        said.append(f"{name}'s week scores {found.score_units}, above the bound {outcome.bound:.0f}")
    return said


def printed(asked: Understood, board: Board, outcome: Outcome) -> list[str]:
    """The whole document, cautions too, read again has the same week, score and findings."""
    solved = deliver(asked, board.terms, outcome, LITTLE)
    again, week = read_week(json.loads(dumped(week_document(solved, private=True))), CATALOGUE)
    found = audit(resolve(again.brief, CATALOGUE), week)
    said = []
    if week != solved.audit.view.week:
        said.append("the document read again is another week")
    if (found.score_units, found.broken) != (solved.audit.score_units, solved.audit.broken):
        said.append(f"the document read again scores {found.score_units}, not {solved.audit.score_units}")
    return said
