"""The catalogue on screen and as documents: exercises, and every number with where it comes from."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from setwright.catalogue.entries import Catalogue, Exercise, Number
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import counted, listed, muscle_name, one_set, page_width, wrapped

MARKS = {
    "A": "read in the paper's own abstract or record",
    "B": "reported second-hand",
    "C": "common practice or a convention, no source",
    "D": "arithmetic or a modelling choice on marked values",
    "M": "from memory, not confirmed",
}


def exercises_text(exercises: Sequence[Exercise], catalogue: Catalogue, width: int = 100) -> str:
    """One line for each exercise: id, what it trains directly, what it needs."""
    if not exercises:
        return "No exercise passes all of these filters.\n"
    width = page_width(width)
    rows = [
        [e.id, e.movement, ", ".join(muscle_name(catalogue, m) for m in sorted(e.direct)), ", ".join(e.needs) or "-"]
        for e in exercises
    ]
    ids, movements = (max(len(row[column]) for row in rows) for column in (0, 1))
    left = max(24, width - ids - max(movements, len("Movement")) - 6)
    lines = grid(["Exercise", "Movement", "Direct", "Needs"], rows, "llll", [None, None, left // 2, left - left // 2])
    return "\n".join([*lines, counted(len(exercises), "exercise")]) + "\n"


def exercise_text(exercise: Exercise, catalogue: Catalogue, width: int = 100) -> str:
    """Everything known of one exercise."""
    e, width = exercise, page_width(width)
    indirect = [(m, part) for m, part in e.contributions if part < 100]
    parts = listed(f"{muscle_name(catalogue, m)} ({part / 100:g})" for m, part in indirect)
    flags = [
        word
        for word, true in (
            ("limited by grip", e.grip_limited),
            ("can pin the lifter: spotter or safeties", e.can_pin),
            ("safe to take to the last repetition", e.safe_to_fail),
            ("closed to novices unless pinned or liked", e.ability),
            ("once a week", e.once_a_week),
        )
        if true
    ]
    rows = [
        ("id", e.id),
        ("movement", f"{e.movement}, {e.slot.name}"),
        ("needs", ", ".join(catalogue.items[i].name.lower() for i in e.needs if i in catalogue.items) or "nothing"),
        ("direct", listed(muscle_name(catalogue, m) for m in sorted(e.direct))),
        ("indirect", parts),
        ("repetitions", one_set(e.reps, e)),
        ("limbs", e.limb),
        ("fatigue", f"{e.fatigue}; load on the spine {e.axial} of 3"),
        ("change-over", f"{e.change_over} s"),
        ("techniques", listed(e.techniques)),
        ("joints loaded", listed(e.joints)),
        ("note", "; ".join(flags)),
        ("setting", e.setting),
        ("cue", e.cue),
        ("also called", listed(e.aliases, "or")),
        ("contributions", "; ".join(e.notes)),
        ("link", e.link or ""),
    ]
    lines = [e.name]
    for name, value in rows:
        if value:
            lines += wrapped(f"  {name + ':':<15}{value}", width, " " * 17)
    return "\n".join(lines) + "\n"


def _exercise_document(exercise: Exercise) -> dict[str, Any]:
    """One exercise as JSON."""
    e = exercise
    return {
        "id": e.id,
        "name": e.name,
        "movement": e.movement,
        "slot": e.slot.id,
        "region": e.region,
        "multi_joint": e.multi_joint,
        "rank": e.rank,
        "needs": list(e.needs),
        "contributions": {m: part / 100 for m, part in e.contributions},
        "fatigue": e.fatigue,
        "limb": e.limb,
        "alternating": e.alternating,
        "timed": e.timed,
        "reps": list(e.reps),
        "change_over_seconds": e.change_over,
        "axial": e.axial,
        "grip_limited": e.grip_limited,
        "can_pin": e.can_pin,
        "safe_to_fail": e.safe_to_fail,
        "ability": e.ability,
        "once_a_week": e.once_a_week,
        "techniques": list(e.techniques),
        "joints": list(e.joints),
        "load": e.load,
        "load_step": e.load_step,
        "body_weight": e.body_weight,
        "light_below": e.light_below,
        "setting": e.setting,
        "cue": e.cue,
        "link": e.link,
        "aliases": list(e.aliases),
        "notes": list(e.notes),
    }


def exercises_document(exercises: Sequence[Exercise]) -> dict[str, Any]:
    """Some exercises as JSON, contributions as parts of a set."""
    return {"schema": "setwright.exercises/1", "exercises": [_exercise_document(e) for e in exercises]}


def evidence_text(numbers: Sequence[Number], width: int = 100) -> str:
    """Every number with its value, interval, unit, mark and source."""
    width = page_width(width)
    lines: list[str] = []
    for n in numbers:
        lines += wrapped(f"{n.id}: {n.value:g}{_interval(n)} {n.unit} [{n.mark}]", width, "    ")
        lines += wrapped(f"    source: {n.source or 'none'}", width, "    ")
        lines += wrapped(f"    reading: {n.reading}", width, "    ") if n.reading else []
    marks = "; ".join(f"{mark} {said}" for mark, said in MARKS.items())
    return "\n".join([*lines, "", *wrapped(f"Marks: {marks}.", width, "  ")]) + "\n"


def _interval(number: Number) -> str:
    """A number's interval, or nothing where nobody gives one."""
    if number.low is None or number.high is None:
        return ""
    return f" ({number.low:g} to {number.high:g})"


def evidence_document(numbers: Sequence[Number]) -> dict[str, Any]:
    """The numbers as JSON."""
    rows = [
        {
            "id": n.id,
            "value": n.value,
            "interval": None if n.low is None or n.high is None else [n.low, n.high],
            "unit": n.unit,
            "mark": n.mark,
            "source": n.source,
            "reading": n.reading,
        }
        for n in numbers
    ]
    return {"schema": "setwright.evidence/1", "marks": MARKS, "numbers": rows}
