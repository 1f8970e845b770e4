"""A coach's own catalogue file laid over the shipped one, with what it changed in sentences."""

from __future__ import annotations

import copy
from typing import Any

from setwright.catalogue.faults import CatalogueFault, Fault
from setwright.catalogue.near import did_you_mean

LISTS = ("exercise", "kit", "caution", "muscle", "group")
TABLES = ("item", "slot", "number", "rule")


def lay_over(tables: dict[str, Any], overlay: dict[str, Any], name: str) -> tuple[dict[str, Any], tuple[str, ...]]:
    """The tables with the overlay's entries added or changed field by field, and what changed."""
    faults: list[Fault] = []
    changed: list[str] = []
    merged = copy.deepcopy(tables)
    for kind, value in overlay.items():
        if kind in LISTS and isinstance(value, list):
            for row in value:
                changed += _lay_row(merged.setdefault(kind, []), kind, row, name, faults)
        elif kind in TABLES and isinstance(value, dict):
            for key, row in value.items():
                changed += _lay_table(merged.setdefault(kind, {}), kind, key, row, name, faults)
        else:
            remedy = did_you_mean(kind, LISTS + TABLES) or f"use one of {', '.join(LISTS + TABLES)}"
            faults.append(Fault(f"{name}: {kind}", "is no part of a catalogue", remedy))
    if faults:
        raise CatalogueFault(faults)
    return merged, tuple(changed)


def _lay_row(rows: list[dict[str, Any]], kind: str, row: Any, name: str, faults: list[Fault]) -> list[str]:
    if not isinstance(row, dict) or not isinstance(row.get("id"), str):
        faults.append(Fault(f"{name}: {kind}", "an entry has no id", 'give it id = "..."'))
        return []
    row = {**row, "_from": name}
    for known in rows:
        if known.get("id") == row["id"]:
            fields = [key for key in row if key not in ("id", "_from") and known.get(key) != row[key]]
            known.update(row)
            return [f"{name} changes {kind} {row['id']}: {', '.join(fields)}"] if fields else []
    rows.append(row)
    return [f"{name} adds {kind} {row['id']}"]


def _lay_table(known: dict[str, Any], kind: str, key: str, row: Any, name: str, faults: list[Fault]) -> list[str]:
    if not isinstance(row, dict):
        faults.append(Fault(f"{name}: {kind}.{key}", "is not a table", f"write [{kind}.{key}]"))
        return []
    old = known.get(key)
    if old is None:
        if kind in ("number", "rule"):
            near = did_you_mean(key, known) or "the ids are listed by `setwright evidence`"
            faults.append(Fault(f"{name}: {kind}.{key}", "is not known", near))
            return []
        known[key] = row
        return [f"{name} adds {kind} {key}"]
    shown = [f"{field} {old.get(field)} -> {row[field]}" for field in row if old.get(field) != row[field]]
    known[key] = {**old, **row}
    return [f"{name} changes {kind} {key}: {', '.join(shown)}"] if shown else []
