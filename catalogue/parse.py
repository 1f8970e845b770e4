"""Raw TOML tables turned into catalogue entries; a field that is missing, unknown or of the wrong kind is a fault."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, TypeVar

from setwright.catalogue.caution_parsers import parse_age_group, parse_caution, parse_position
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.entry_parsers import (
    parse_group,
    parse_item,
    parse_kit,
    parse_muscle,
    parse_number,
    parse_rule,
    parse_slot,
)
from setwright.catalogue.exercise_parser import parse_exercise
from setwright.catalogue.faults import CatalogueFault, Fault
from setwright.catalogue.fields import Fields
from setwright.catalogue.near import did_you_mean
from setwright.catalogue.parse_defaults import DEFAULT_TABLES, parse_defaults

Entry = TypeVar("Entry")
KINDS = (
    "muscle",
    "group",
    "slot",
    "item",
    "kit",
    "caution",
    "age",
    "position",
    "exercise",
    "number",
    "published",
    "rule",
)
"""The kinds of entry, each a table or a list of the data files; the other tables are defaults."""


def parse_catalogue(tables: Mapping[str, Any], digest: str, changed: tuple[str, ...]) -> Catalogue:
    """The catalogue's entries by id; raises CatalogueFault with all faults of form."""
    faults: list[Fault] = []
    muscles = _listed(tables, "muscle", parse_muscle, faults)
    slots = _tabled(tables, "slot", parse_slot, faults)
    items = _tabled(tables, "item", parse_item, faults)
    for name in tables:
        if name not in KINDS + DEFAULT_TABLES:
            faults.append(Fault(name, "is no part of a catalogue", did_you_mean(name, KINDS + DEFAULT_TABLES)))
    catalogue = Catalogue(
        muscles=muscles,
        groups=_listed(tables, "group", parse_group, faults),
        slots=slots,
        items=items,
        kits=_listed(tables, "kit", lambda f: parse_kit(f, items), faults),
        cautions=_listed(tables, "caution", parse_caution, faults),
        ages=_listed(tables, "age", parse_age_group, faults),
        positions=_tabled(tables, "position", parse_position, faults),
        exercises=_listed(tables, "exercise", lambda f: parse_exercise(f, slots), faults),
        evidence=MappingProxyType(
            {
                **_tabled(tables, "number", parse_number, faults),
                **_tabled(tables, "published", parse_number, faults),
            }
        ),
        rules=_tabled(tables, "rule", parse_rule, faults),
        defaults=parse_defaults(tables, faults),
        digest=digest,
        changed=changed,
    )
    if faults:
        raise CatalogueFault(faults)
    return catalogue


def _listed(
    tables: Mapping[str, Any], kind: str, parse: Callable[[Fields], Entry], faults: list[Fault]
) -> Mapping[str, Entry]:
    """The entries of a kind that is written as [[kind]], by id."""
    found: dict[str, Entry] = {}
    for row in tables.get(kind, []):
        fields = Fields(row, f"{row.get('_from', kind)}: {kind} {row.get('id', '?')}", faults)
        entry = parse(fields)
        fields.finish()
        key = str(row.get("id"))
        if key in found:
            faults.append(Fault(fields.where, "the id stands twice", "keep one"))
        found[key] = entry
    return MappingProxyType(found)


def _tabled(
    tables: Mapping[str, Any], kind: str, parse: Callable[[str, Fields], Entry], faults: list[Fault]
) -> Mapping[str, Entry]:
    """The entries of a kind that is written as [kind.ID], by id."""
    found: dict[str, Entry] = {}
    for key, row in tables.get(kind, {}).items():
        source = f"{row['_from']}: " if isinstance(row, Mapping) and "_from" in row else ""
        fields = Fields(row, f"{source}{kind} {key}", faults)
        found[key] = parse(key, fields)
        fields.finish()
    return MappingProxyType(found)
