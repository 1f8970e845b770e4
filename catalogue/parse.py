"""Raw TOML tables turned into catalogue entries; a field that is missing, unknown or of the wrong kind is a fault."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, TypeVar

from setwright.catalogue.entries import (
    Catalogue,
    Caution,
    Exercise,
    Group,
    Item,
    Kit,
    Muscle,
    Number,
    RuleNumbers,
    Slot,
)
from setwright.catalogue.faults import CatalogueFault, Fault, shown
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
    "exercise",
    "number",
    "published",
    "rule",
)
"""The kinds of entry, each a table or a list of the data files; the other tables are defaults."""


def parse_catalogue(tables: Mapping[str, Any], digest: str, changed: tuple[str, ...]) -> Catalogue:
    """The catalogue's entries by id; raises CatalogueFault with all faults of form."""
    faults: list[Fault] = []

    def listed(kind: str, parse: Callable[[Fields], Entry]) -> dict[str, Entry]:
        found: dict[str, Entry] = {}
        for row in tables.get(kind, []):
            fields = Fields(row, f"{row.get('_from', kind)}: {kind} {row.get('id', '?')}", faults)
            entry = parse(fields)
            fields.finish()
            key = str(row.get("id"))
            if key in found:
                faults.append(Fault(fields.where, "the id stands twice", "keep one"))
            found[key] = entry
        return found

    def tabled(kind: str, parse: Callable[[str, Fields], Entry]) -> dict[str, Entry]:
        found: dict[str, Entry] = {}
        for key, row in tables.get(kind, {}).items():
            source = f"{row['_from']}: " if isinstance(row, Mapping) and "_from" in row else ""
            fields = Fields(row, f"{source}{kind} {key}", faults)
            found[key] = parse(key, fields)
            fields.finish()
        return found

    muscles = listed("muscle", parse_muscle)
    slots = tabled("slot", parse_slot)
    items = tabled("item", parse_item)
    for name in tables:
        if name not in KINDS + DEFAULT_TABLES:
            faults.append(Fault(name, "is no part of a catalogue", did_you_mean(name, KINDS + DEFAULT_TABLES)))
    catalogue = Catalogue(
        muscles=MappingProxyType(muscles),
        groups=MappingProxyType(listed("group", parse_group)),
        slots=MappingProxyType(slots),
        items=MappingProxyType(items),
        kits=MappingProxyType(listed("kit", lambda f: parse_kit(f, items))),
        cautions=MappingProxyType(listed("caution", parse_caution)),
        exercises=MappingProxyType(listed("exercise", lambda f: parse_exercise(f, slots))),
        evidence=MappingProxyType(tabled("number", parse_number) | tabled("published", parse_number)),
        rules=MappingProxyType(tabled("rule", parse_rule)),
        defaults=parse_defaults(tables, faults),
        digest=digest,
        changed=changed,
    )
    if faults:
        raise CatalogueFault(faults)
    return catalogue


def parse_muscle(f: Fields) -> Muscle:
    return Muscle(
        id=f.text("id"),
        name=f.text("name"),
        size=f.choice("size", ("large", "small", "minor")),
        isolate=f.flag("isolate"),
        default_weight=f.number("default_weight", 1.0),
        aliases=f.texts("aliases"),
    )


def parse_group(f: Fields) -> Group:
    return Group(
        id=f.text("id"),
        name=f.text("name"),
        priority=f.texts("priority"),
        otherwise=f.texts("otherwise"),
        normal_when_priority=f.texts("normal_when_priority"),
        aliases=f.texts("aliases"),
    )


def parse_slot(key: str, f: Fields) -> Slot:
    return Slot(
        id=key,
        name=f.text("name"),
        movement=f.text("movement"),
        region=f.choice("region", ("push", "pull", "lower", "arms", "other")),
        multi_joint=f.flag("multi"),
        focus=f.texts("focus"),
    )


def parse_item(key: str, f: Fields) -> Item:
    return Item(
        id=key,
        name=f.text("name"),
        place=f.choice("place", ("portable", "place", "fixed")),
        aliases=f.texts("aliases"),
    )


def parse_kit(f: Fields, items: Mapping[str, Item]) -> Kit:
    named = f.texts("items")
    held: set[str] = set()
    for word in named:
        if word == "*":
            held |= set(items)
        elif word.startswith("-"):
            held.discard(word[1:])
        else:
            held.add(word)
    return Kit(
        id=f.text("id"),
        name=f.text("name"),
        items=frozenset(held),
        dumbbell_max=f.optional_number("dumbbell_max"),
        cannot=f.texts("cannot"),
        aliases=f.texts("aliases"),
    )


def parse_caution(f: Fields) -> Caution:
    return Caution(
        id=f.text("id"),
        name=f.text("name"),
        closes_joints=f.texts("closes_joints"),
        needs_clearance=f.flag("needs_clearance"),
        sentence=f.text("sentence"),
        aliases=f.texts("aliases"),
    )


def parse_exercise(f: Fields, slots: Mapping[str, Slot]) -> Exercise:
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
    slot = f.choice("slot", tuple(slots))
    return Exercise(
        id=f.text("id"),
        name=f.text("name"),
        slot=slots.get(slot) or Slot(slot, slot, slot, "other", False, ()),
        rank=f.whole("rank"),
        needs=f.texts("needs"),
        contributions=tuple(sorted(parts.items())),
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
        link=f.optional_text("link"),
        aliases=f.texts("aliases"),
        notes=tuple(notes),
    )


def parse_number(key: str, f: Fields) -> Number:
    return Number(
        id=key,
        value=f.number("value", None),
        low=f.optional_number("low"),
        high=f.optional_number("high"),
        unit=f.text("unit"),
        mark=f.choice("mark", ("A", "B", "C", "D", "M")),
        source=f.text("source"),
        reading=f.text("reading"),
    )


def parse_rule(key: str, f: Fields) -> RuleNumbers:
    return RuleNumbers(
        id=key,
        cost=f.optional_number("cost"),
        limit=f.optional_number("limit"),
        more=f.numbers("more"),
        unit=f.text("unit"),
        origin=f.optional_text("origin") or "convention",
    )
