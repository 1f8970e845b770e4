"""A load to begin with, in words and as a document."""

from __future__ import annotations

from typing import Any

from setwright.solver.sheets.common.loads.built_words import load_said, plates_said
from setwright.solver.sheets.common.words import page_width, wrapped
from setwright.solver.uses.loads.buildable import Built
from setwright.solver.uses.loads.maximum import Estimate
from setwright.solver.uses.loads.working_load import WorkingLoad

SCHEMA = "setwright.load/1"
LIMITS = (
    "Both formulas are fitted to groups; one person, one lift and one day differ by several per cent. Begin with it, "
    "and change it by what the first set shows. Use a spotter or safeties for lifts that can pin you; pain means stop."
)
UNSURE = "Of many repetitions the formulas say little: take it as a first guess, and go up or down after one set."
PEOPLE_LEAVE_MORE = "People leave about one repetition more than they say."


def load_text(found: WorkingLoad, unit: str, width: int) -> str:
    """The estimated maximum, the load to begin with and how to build it, ramp-up sets, and the limits of all that."""
    width = page_width(width)
    done = found.done
    left = f"{done.rir} left" if done.rir else "none left"
    lines = [
        f"{found.exercise.name}: {done.load:g} {unit} x {done.reps}, {left}",
        f"Estimated maximum: {_by_formula(found.maximum, unit)}",
    ]
    low, high = found.reps
    span = f"{low}" if low == high else f"{low}-{high}"
    lines.append(f"For {low} repetitions with {found.rir} left: {_by_formula(found.wanted, unit)}")
    if found.begin is None:
        lines.append("Begin with: nothing that light can be built; take an easier form of the lift.")
    else:
        lines.append(f"Begin {span} x with {_built(found.begin, unit)}")
        ramp = ", ".join(f"{_built(built, unit)} x {reps}" for built, reps in found.ramp)
        lines += wrapped(f"Ramp-up: {ramp}", width, "  ") if ramp else []
        lines += wrapped(
            f"When all sets reach {high} with {found.rir} left on two days, take the next load that can be built.",
            width,
        )
    for said in (UNSURE if found.unsure else "", PEOPLE_LEAVE_MORE if done.rir else "", LIMITS):
        lines += wrapped(said, width) if said else []
    return "\n".join(lines) + "\n"


def _by_formula(estimate: Estimate, unit: str) -> str:
    """106.7 kg (Epley), 103.4 kg (Brzycki)."""
    other = "" if estimate.brzycki is None else f", {estimate.brzycki:.1f} {unit} (Brzycki)"
    return f"{estimate.epley:.1f} {unit} (Epley){other}"


def _built(built: Built, unit: str) -> str:
    """82.5 kg (20 + 10 + 1.25 a side)."""
    return f"{load_said(built.load, unit)}{plates_said(built)}"


def load_document(found: WorkingLoad, unit: str) -> dict[str, Any]:
    """The same as JSON, every weight in `unit`."""
    return {
        "schema": SCHEMA,
        "exercise": found.exercise.id,
        "unit": unit,
        "done": {"load": found.done.load, "reps": found.done.reps, "rir": found.done.rir},
        "reps": list(found.reps),
        "rir": found.rir,
        "maximum": _document(found.maximum),
        "load": _document(found.wanted),
        "begin": None if found.begin is None else _built_document(found.begin),
        "ramp_up": [{**_built_document(built), "reps": reps} for built, reps in found.ramp],
        "unsure": found.unsure,
    }


def _document(estimate: Estimate) -> dict[str, Any]:
    other = estimate.brzycki
    return {"epley": round(estimate.epley, 2), "brzycki": None if other is None else round(other, 2)}


def _built_document(built: Built) -> dict[str, Any]:
    return {"load": built.load, "plates_a_side": list(built.plates)}
