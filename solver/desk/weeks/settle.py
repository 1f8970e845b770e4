"""Sets, rests and techniques of a week solved anew around a coach's change, as a task of a search process."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.auditing import audit
from setwright.solver.desk.searches.task import Telling
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.edits.edited_week import edit_document
from setwright.solver.uses.edits.effects import Effect
from setwright.solver.uses.edits.fixed_lines import reoptimised_lines


def settle(arguments: Mapping[str, Any], catalogue: Catalogue, telling: Telling) -> Mapping[str, Any]:
    """The week of `document` with sets solved anew around the lines `kept`, the first of them at `sets` if any
    are named, and what changed against `before`.

    Both documents have the brief with its health notes; the one that comes out has none. Raises SetwrightError where
    no sets keep every rule.
    """
    parsed, week = read_week(arguments["document"], catalogue)
    _, before = read_week({**arguments["before"], "brief": arguments["document"]["brief"]}, catalogue)
    resolved = resolve(parsed.brief, catalogue)
    kept = tuple((day, exercise) for day, exercise in arguments["kept"])
    sets = {kept[0]: arguments["sets"]} if kept and arguments["sets"] else {}
    found = reoptimised_lines(resolved, week, kept, sets)
    if found is None:
        said = f"no sets of the week's lines keep every rule: {arguments['why']}"
        raise SetwrightError(Fault("settle", said, "choose another change, or search anew with the lift pinned"))
    done = Effect(audit(resolved, before), found)
    return {**changed_week_document({}, parsed, found), "edit": edit_document(arguments["why"], done)}
