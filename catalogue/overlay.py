"""A coach's own catalogue file laid over the shipped one, with what it changed in sentences."""

from __future__ import annotations

import copy
from collections.abc import Mapping
from typing import Any

from setwright.catalogue.faults import CatalogueFault, Fault, shown
from setwright.catalogue.near import did_you_mean

LISTS = ("exercise", "kit", "caution", "age", "muscle", "group")
"""The kinds of entry that are written as [[kind]] with an id."""
TABLES = ("item", "slot", "position", "number", "rule")
"""The kinds of entry that are written as [kind.ID]."""
CLOSED = ("number", "rule")
"""The kinds of which an overlay may change entries but add none."""


def lay_over(tables: dict[str, Any], overlay: dict[str, Any], name: str) -> tuple[dict[str, Any], tuple[str, ...]]:
    """The tables with the overlay's entries added or changed field by field, and one sentence for each change.

    `tables` stays as it was; raises CatalogueFault with every entry that is out of place.
    """
    faults: list[Fault] = []
    changed: list[str] = []
    merged = copy.deepcopy(tables)
    for kind, value in overlay.items():
        where = f"{name}: {kind}"
        if kind in LISTS and isinstance(value, list):
            for row in value:
                changed += _lay_row(merged.setdefault(kind, []), kind, row, name, faults)
        elif kind in TABLES and isinstance(value, dict):
            for key, row in value.items():
                changed += _lay_table(merged.setdefault(kind, {}), kind, key, row, name, faults)
        elif kind in LISTS:
            said = "is a single table" if isinstance(value, dict) else f"is {shown(value)}"
            faults.append(Fault(where, said, f"write [[{kind}]] before each entry"))
        elif kind in TABLES:
            said = "is a list" if isinstance(value, list) else f"is {shown(value)}"
            faults.append(Fault(where, said, f"write [{kind}.ID] before each entry"))
        else:
            remedy = did_you_mean(kind, LISTS + TABLES) or f"use one of {', '.join(LISTS + TABLES)}"
            faults.append(Fault(where, "is no part of a catalogue", remedy))
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
    where = f"{name}: {kind}.{key}"
    if not isinstance(row, dict):
        faults.append(Fault(where, f"is {shown(row)}, expected a table", f"write [{kind}.{key}]"))
        return []
    old = known.get(key)
    if old is None:
        if kind in CLOSED:
            near, listing = did_you_mean(key, known), "the ids are listed by `setwright evidence`"
            faults.append(Fault(where, "is not known", near or listing, near or "write an id of the catalogue's own"))
            return []
        known[key] = {**row, "_from": name}
        return [f"{name} adds {kind} {key}"]
    if kind == "rule":
        faults += _unknown_numbers(old.get("more", {}), row.get("more"), where)
    changes: list[str] = []
    known[key] = {**_changed(old, row, "", changes), "_from": name}
    return [f"{name} changes {kind} {key}: {', '.join(changes)}"] if changes else []


def _changed(old: Mapping[str, Any], row: Mapping[str, Any], path: str, changes: list[str]) -> dict[str, Any]:
    """The old fields with the new ones laid over them; a table inside is changed field by field in its turn."""
    found = dict(old)
    for field, value in row.items():
        before = old.get(field)
        if isinstance(before, Mapping) and isinstance(value, Mapping):
            found[field] = _changed(before, value, f"{path}{field}.", changes)
        else:
            found[field] = value
            if before != value:
                changes.append(f"{path}{field} {_plain(before)} -> {_plain(value)}")
    return found


def _plain(value: Any) -> str:
    """A value as a change shows it: a text without quotes."""
    return value if isinstance(value, str) else shown(value)


def _unknown_numbers(known: Mapping[str, Any], said: Any, where: str) -> list[Fault]:
    """A fault for each of a rule's other numbers that the rule does not have."""
    if not isinstance(said, Mapping):
        return []
    otherwise = f"its numbers are {', '.join(known)}" if known else "it has only its cost or its limit"
    return [
        Fault(f"{where}.more.{name}", "is no number of this rule", did_you_mean(name, known) or otherwise)
        for name in said
        if name not in known
    ]
