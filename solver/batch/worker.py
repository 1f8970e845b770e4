"""What a worker does: a task comes in, the variant is solved and audited, its result goes back as bytes.

A `VariantTask` is sent: the brief, the stamp of the run, the bytes of the coach's own catalogue file and the result of
the shorter variant, so that a worker needs nothing but the installed package. A JSON document comes back (see
`results.py`), the same bytes from any machine with the same stamp.
"""

from __future__ import annotations

import json
import tempfile
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any, assert_never

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import SetwrightError
from setwright.catalogue.load import load_catalogue
from setwright.solver.batch.stamp import check_stamp, check_version
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.week import Week
from setwright.solver.planning import Clash, OutOfTime, Solved
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.findings import no_week_words
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.clash import clash_document
from setwright.solver.uses.variants.results import read_result, written_result
from setwright.solver.uses.variants.solving import VariantEnd, limits_in, solve_variant
from setwright.solver.uses.variants.task import CLASH, NO_WEEK, SET_ASIDE, SOLVED, UNFINISHED, VariantTask


def solve_task(task: VariantTask) -> bytes:
    """The result of one task, also where its brief cannot be read or has no week.

    Raises WorkerMismatchError where this process has another version or catalogue than the run.
    """
    check_version(task.stamp)
    catalogue = _catalogue_with(task.overlay)
    check_stamp(task.stamp, catalogue)
    try:
        parsed = parse_brief(json.loads(task.brief), catalogue, task.name, tuple(RULES))
        previous = _week_in(task.previous, catalogue)
        end = solve_variant(parsed, catalogue, limits_in(task.stamp), previous, task.share)
    except SetwrightError as error:
        return written_result(task, SET_ASIDE, str(error))
    return _result(task, end)


def _result(task: VariantTask, ended: VariantEnd) -> bytes:
    if ended.late:
        return written_result(task, UNFINISHED, "the wall-clock limit ended the search: run again on a quieter machine")
    match ended.end:
        case Solved():
            return written_result(task, SOLVED, extends=_extends_part(task, ended), week=week_document(ended.end))
        case Clash():
            found = clash_document(ended.end)
            return written_result(task, CLASH, _clash_line(found), clash=found)
        case OutOfTime():
            return written_result(task, NO_WEEK, no_week_words(ended.end))
        case _:
            assert_never(ended.end)


def _clash_line(document: Mapping[str, Any]) -> str:
    """The members of a clash in one line, wishes in the brief's words."""
    return "; ".join(row["words"] or row["rule"] for row in document["conflicts"])


def _extends_part(task: VariantTask, ended: VariantEnd) -> dict[str, Any] | None:
    """What the variant keeps of the shorter one; None where it extends none."""
    kept = ended.kept
    if kept is None:
        return None
    return {
        "name": task.extends,
        "kept": list(kept.kept),
        "dropped": list(kept.dropped),
        "added": list(kept.added),
        "change": kept.change,
        "given_up": rounded(kept.given_up),
    }


def _week_in(data: bytes | None, catalogue: Catalogue) -> Week | None:
    """The week of an earlier result."""
    if data is None:
        return None
    found = read_result(data, json.loads(data)["key"])
    if found is None or found["week"] is None:
        raise AssertionError("only a result with a week is extended")
    return read_week(found["week"], catalogue, str(found["name"]))[1]


@lru_cache(maxsize=4)
def _catalogue_with(overlay: tuple[str, bytes] | None) -> Catalogue:
    """The catalogue with the run's own file laid over it, whose bytes came with the task."""
    if overlay is None:
        return load_catalogue()
    with tempfile.TemporaryDirectory(prefix="setwright-") as folder:
        path = Path(folder) / overlay[0]
        path.write_bytes(overlay[1])
        return load_catalogue(path)
