"""A variant's result: the task solved, audited and written as one document; the act that workers are sent."""

from __future__ import annotations

import json
import math
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import asdict, replace
from functools import lru_cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any, assert_never

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import SetwrightError
from setwright.catalogue.load import load_catalogue
from setwright.catalogue.version import own_version
from setwright.solver.auditing import audit
from setwright.solver.brief.assumed import Assumption
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.finding import UNITS
from setwright.solver.evaluation.week import Week
from setwright.solver.planning import Clash, OutOfTime, Solved
from setwright.solver.rulebook import RULES, resolve
from setwright.solver.search.limits import DEFAULT, SEARCHES, Limits
from setwright.solver.search.secondary.fewest_minutes import ShortestWeek
from setwright.solver.search.stopping import EndedBy
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.document.provenance import evidence_digest
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.clash import clash_document
from setwright.solver.sheets.screen.week_table import week_text
from setwright.solver.uses.variants.matrix import Cell, Matrix
from setwright.solver.uses.variants.record import document_of, record
from setwright.solver.uses.variants.run import Mismatch
from setwright.solver.uses.variants.solve import Ended, limits_in, solve
from setwright.solver.uses.variants.store import Store
from setwright.solver.uses.variants.task import CLASH, NO_WEEK, SET_ASIDE, SOLVED, UNFINISHED, Task

ENGINES = ("ortools", "highspy")


def stamp_of(catalogue: Catalogue, limits: Limits) -> dict[str, Any]:
    """All that a result depends on beside its brief; another of any of these is another key."""
    from setwright.solver.engines.cpsat import SEED

    return {
        "version": own_version(),
        "catalogue": catalogue.digest,
        "evidence": evidence_digest(catalogue),
        "engines": {name: installed(name) for name in ENGINES},
        "seed": SEED,
        "limits": asdict(limits),
    }


def installed(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return "unknown"


def solved_variant(task: Task) -> bytes:
    """The result of one task; raises Mismatch where this process has another version or catalogue than the run."""
    check_version(task.stamp)
    catalogue = catalogue_of(task.overlay)
    check_worker(task.stamp, catalogue)
    try:
        parsed = parse_brief(json.loads(task.brief), catalogue, task.name, tuple(RULES))
        previous = previous_of(task.previous, catalogue)
        return result(task, solve(parsed, catalogue, limits_in(task.stamp), previous, task.share))
    except SetwrightError as error:
        return record(task, SET_ASIDE, str(error))


def check_version(asked: Mapping[str, Any]) -> None:
    """Raise Mismatch before more of a task is read: another version may have other limits, catalogues and briefs."""
    here = {"version": own_version()}
    if here["version"] != asked.get("version"):
        raise Mismatch(differences(asked, here))


def check_worker(asked: Mapping[str, Any], catalogue: Catalogue) -> None:
    """Raise Mismatch where this process is not what the run was planned with; another version has other limits."""
    here = stamp_of(catalogue, SEARCHES[DEFAULT])
    if set(here["limits"]) == set(asked.get("limits", ())):
        here["limits"] = asked["limits"]
    if here != dict(asked):
        raise Mismatch(differences(asked, here))


def result(task: Task, ended: Ended) -> bytes:
    """The document of one end."""
    if ended.late:
        return record(task, UNFINISHED, "the wall-clock limit ended the search: run again on a quieter machine")
    match ended.end:
        case Solved():
            return record(task, SOLVED, extends=extends_of(task, ended), week=week_document(ended.end))
        case Clash():
            found = clash_document(ended.end)
            return record(task, CLASH, clash_line(found), clash=found)
        case OutOfTime():
            return record(task, NO_WEEK, f"no week was found ({ended.end.ended_by})")
        case _:
            assert_never(ended.end)


def clash_line(document: Mapping[str, Any]) -> str:
    """The members of a clash in one line, wishes in the brief's words."""
    return "; ".join(row["words"] or row["rule"] for row in document["conflicts"])


def extends_of(task: Task, ended: Ended) -> dict[str, Any] | None:
    """What the variant keeps of the shorter one."""
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


def previous_of(data: bytes | None, catalogue: Catalogue) -> Week | None:
    """The week of an earlier result."""
    if data is None:
        return None
    found = document_of(data, json.loads(data)["key"])
    if found is None or found["week"] is None:
        raise AssertionError("only a result with a week is extended")
    return read_week(found["week"], catalogue, str(found["name"]))[1]


@lru_cache(maxsize=4)
def catalogue_of(overlay: tuple[str, bytes] | None) -> Catalogue:
    """The catalogue with the run's own file laid over it, whose bytes came with the task."""
    if overlay is None:
        return load_catalogue()
    with tempfile.TemporaryDirectory(prefix="setwright-") as folder:
        path = Path(folder) / overlay[0]
        path.write_bytes(overlay[1])
        return load_catalogue(path)


def differences(asked: Mapping[str, Any], here: Mapping[str, Any]) -> str:
    """Where two stamps differ, in a line."""
    said = [f"{name} {here[name]} here, {asked.get(name)} in the run" for name in here if here[name] != asked.get(name)]
    return "a worker differs from the run: " + "; ".join(said)


def sheets_of(matrix: Matrix, store: Store, catalogue: Catalogue, width: int) -> Iterator[tuple[Cell, str]]:
    """Each variant that has a week, with the week as text."""
    for cell in matrix.cells:
        data = store.read(cell.key)
        found = document_of(data, cell.key) if data else None
        if found is not None and found["week"] is not None:
            yield cell, week_text(solved_of(found["week"], catalogue, cell.name), width)


def solved_of(week: Mapping[str, Any], catalogue: Catalogue, where: str) -> Solved:
    """A stored week as the value it was written from, reckoned anew."""
    parsed, days = read_week(week, catalogue, where)
    parsed = replace(parsed, assumed=tuple(Assumption("plan", text) for text in week["assumed"]))
    resolved = resolve(parsed.brief, catalogue)
    found, cut = audit(resolved, days), week["shortened"]
    return Solved(
        parsed=parsed,
        resolved=resolved,
        audit=found,
        bound_units=math.inf if week["bound"] is None else round(UNITS * week["bound"]),
        ended_by=EndedBy(week["ended_by"]),
        limits=replace(SEARCHES[DEFAULT], name=week["made_by"]["limits"]["search"]),
        shortest=cut
        and ShortestWeek(found, units(cut["best_score"]), units(cut["floor"]), cut["seconds"], cut["least_seconds"]),
        pairs_would_add=week["pairs_would_add"],
    )


def units(points: float) -> int:
    return round(UNITS * points)
