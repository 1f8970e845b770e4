"""The place of a phrase once all of it is read: what is denied of it, and what is both there and not there."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from setwright.solver.brief.phrase.draft import BriefDraft
from setwright.solver.brief.phrase.token_reader import TokenReader

_OWN: Final[Mapping[str, str]] = {"home-dumbbells": "dumbbell", "bands": "band"}
"""Kits that are called by one of their items, which cannot be absent."""


def settle_place(reader: TokenReader, draft: BriefDraft) -> None:
    """Make dumbbells without a bench the dumbbells alone.

    Faults an item that is said to be there and not there, and a home of which nothing is said.
    """
    equipment: Any = draft.raw.get("equipment")
    absent = draft.raw.get("without", ())
    if equipment == "home-dumbbells" and "bench" in absent:
        draft.raw["equipment"] = ["dumbbell"]
    named = [_OWN.get(equipment)] if isinstance(equipment, str) else equipment or []
    for item in named:
        if item in absent:
            reader.fault(f"'{item}' is said to be there and not there", "keep one of the two")
    if draft.home and equipment is None and not reader.faults:
        reader.fault(
            "'home' does not say what is there",
            "write at home with dumbbells, home gym, barbell garage, bands or bodyweight",
        )
