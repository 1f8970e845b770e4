"""One raw [[exercise]] table turned into an exercise; what is amiss is faulted in its `Fields`."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.catalogue.entries import Exercise, Slot
from setwright.catalogue.faults import shown
from setwright.catalogue.fields import Fields


def parse_exercise(f: Fields, slots: Mapping[str, Slot]) -> Exercise:
    """One exercise from its [[exercise]] table; a slot that is not known is faulted and an empty one stands in."""
    contributions, notes = _contributions(f)
    slot = f.choice("slot", tuple(slots))
    return Exercise(
        id=f.text("id"),
        name=f.text("name"),
        slot=slots.get(slot) or Slot(slot, slot, slot, "other", False, ()),
        rank=f.whole("rank"),
        needs=f.texts("needs"),
        contributions=contributions,
        fatigue=f.choice("fatigue", ("high", "low")),
        limb=f.choice("limb", ("both", "each, then rest", "each, rest after each")),
        reps=f.span("reps"),
        alternating=f.flag("alternating"),
        change_over=f.whole("change_over"),
        axial=f.whole("axial"),
        grip_limited=f.flag("grip_limited"),
        can_pin=f.flag("can_pin"),
        safe_to_fail=f.flag("safe_to_fail"),
        ability=f.flag("ability"),
        once_a_week=f.flag("once_a_week"),
        techniques=f.texts("techniques"),  # type: ignore[arg-type]  # the words are checked in check.py
        joints=f.texts("joints"),
        load=f.text("load"),
        load_step=f.number("load_step", 0.0),
        light_below=f.optional_number("light_below"),
        setting=f.text("setting"),
        cue=f.text("cue"),
        timed=f.flag("timed"),
        body_weight=f.optional_text("body_weight"),  # type: ignore[arg-type]  # the word is checked in check.py
        link=f.optional_text("link"),
        aliases=f.texts("aliases"),
        notes=notes,
    )


def _contributions(f: Fields) -> tuple[tuple[tuple[str, int], ...], tuple[str, ...]]:
    """(muscle, hundredths of a set) sorted by muscle, with the reason for each that is neither 100 nor 50."""
    parts: dict[str, int] = {}
    notes: list[str] = []
    for muscle, part in [(m, 100) for m in f.texts("direct")] + [(m, 50) for m in f.texts("indirect")]:
        if muscle in parts:
            f.fault(f"names {muscle} twice", "let each muscle stand once")
        parts[muscle] = part
    for row in f.rows("other"):
        share, why = row.get("part"), str(row.get("why", ""))
        if not isinstance(share, int | float) or isinstance(share, bool) or not 0 < share <= 1 or not why:
            f.fault(
                f"other contribution of {shown(row.get('muscle'))}",
                'write { muscle = "...", part = 0.25, why = "source or convention" }',
            )
            continue
        parts[str(row.get("muscle"))] = round(100 * share)
        notes.append(f"{row.get('muscle')}: {why}")
    return tuple(sorted(parts.items())), tuple(notes)
