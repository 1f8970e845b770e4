"""What a week's document says beyond its entries: swaps, reasons, loads and costs as planned, read strictly."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek

NEAR = 0.001
"""Index points between a document's week index and the one reckoned from its entries."""
STALE = (
    "plan it again, or name the catalogue file it was planned with (--catalogue): "
    "a week changed by hand, or made by another version, would print numbers that are not its own"
)


@dataclass(frozen=True)
class PlannedLine:
    """What was said of one line when it was planned; only the planner knew the cautions that its swaps keep."""

    swaps: tuple[str, ...] = ()
    why: str = ""
    load: str | None = None


@dataclass(frozen=True)
class Planned:
    """Lines as [day][place], and the cost of each rule in index points."""

    lines: tuple[tuple[PlannedLine, ...], ...]
    costs: Mapping[str, float]


def planned_of(document: Mapping[str, Any], evaluated: EvaluatedWeek, where: str) -> Planned:
    """What a document says that was read as a week before; raises UsageFault with every fault found."""
    faults: list[Fault] = []
    catalogue = evaluated.resolved.catalogue
    lines = tuple(
        tuple(
            line_of(row, catalogue, f"{where}: days[{day}].entries[{place}]", faults)
            for place, row in enumerate(session["entries"])
        )
        for day, session in enumerate(document["days"])
    )
    costs = costs_of(document.get("costs", []), f"{where}: costs", faults)
    current(document.get("stimulus"), evaluated, f"{where}: stimulus", faults)
    texts_are_texts(document, where, faults)
    if faults:
        raise UsageFault(faults)
    return Planned(lines, costs)


def line_of(row: Mapping[str, Any], catalogue: Catalogue, path: str, faults: list[Fault]) -> PlannedLine:
    """One entry's swaps (ids), reason and load."""
    swaps, why, load = row.get("swaps", []), row.get("why", ""), row.get("load")
    if not isinstance(swaps, list):
        faults.append(Fault(f"{path}.swaps", "expected a list of exercises' ids"))
        swaps = []
    for swap in swaps:
        if not isinstance(swap, str) or swap not in catalogue.exercises:
            faults.append(Fault(f"{path}.swaps", f"{swap!r} is not in the catalogue, expected an exercise's id"))
    if not isinstance(why, str):
        faults.append(Fault(f"{path}.why", f"got {why!r}, expected text"))
    if load is not None and not isinstance(load, str):
        faults.append(Fault(f"{path}.load", f"got {load!r}, expected text or null"))
    return PlannedLine(tuple(s for s in swaps if isinstance(s, str)), str(why), load if load is None else str(load))


def costs_of(rows: Any, path: str, faults: list[Fault]) -> dict[str, float]:
    """Rule -> cost in index points."""
    found: dict[str, float] = {}
    for place, row in enumerate(rows if isinstance(rows, list) else [rows]):
        rule, cost = (row.get("rule"), row.get("cost")) if isinstance(row, Mapping) else (None, None)
        if isinstance(rule, str) and isinstance(cost, int | float) and not isinstance(cost, bool):
            found[rule] = float(cost)
        else:
            faults.append(Fault(f"{path}[{place}]", "expected a rule and its cost"))
    return found


def current(said: Any, evaluated: EvaluatedWeek, path: str, faults: list[Fault]) -> None:
    """Keep a fault where the document's week index is not the one its entries have."""
    if not isinstance(said, int | float) or isinstance(said, bool):
        faults.append(Fault(path, f"got {said!r}, expected the week index", "name a week written with --json"))
    elif abs(said - evaluated.stimulus) > NEAR:
        faults.append(Fault(path, f"says {said:.2f}, the entries have {evaluated.stimulus:.2f}", STALE))


def texts_are_texts(document: Mapping[str, Any], where: str, faults: list[Fault]) -> None:
    """Keep a fault for lists that the sheets filter and that are none."""
    for name, wanted in (("assumed", str), ("overridden", Mapping)):
        rows = document.get(name, [])
        if not isinstance(rows, list) or not all(isinstance(row, wanted) for row in rows):
            kind = "sentences" if wanted is str else "objects"
            faults.append(Fault(f"{where}: {name}", f"expected a list of {kind}", "name a week written with --json"))
