"""One raw table turned into one entry of the catalogue, exercises apart; what is amiss is faulted in its `Fields`."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.catalogue.entries import (
    Group,
    Item,
    Kit,
    Muscle,
    Number,
    RuleNumbers,
    Slot,
)
from setwright.catalogue.fields import Fields


def parse_muscle(f: Fields) -> Muscle:
    """One muscle from its [[muscle]] table."""
    return Muscle(
        id=f.text("id"),
        name=f.text("name"),
        size=f.choice("size", ("large", "small", "minor")),
        isolate=f.flag("isolate"),
        default_weight=f.number("default_weight", 1.0),
        aliases=f.texts("aliases"),
    )


def parse_group(f: Fields) -> Group:
    """One group of muscles from its [[group]] table."""
    return Group(
        id=f.text("id"),
        name=f.text("name"),
        priority=f.texts("priority"),
        otherwise=f.texts("otherwise"),
        normal_when_priority=f.texts("normal_when_priority"),
        aliases=f.texts("aliases"),
    )


def parse_slot(key: str, f: Fields) -> Slot:
    """One slot from its [slot.ID] table."""
    return Slot(
        id=key,
        name=f.text("name"),
        movement=f.text("movement"),
        region=f.choice("region", ("push", "pull", "lower", "arms", "other")),
        multi_joint=f.flag("multi"),
        focus=f.texts("focus"),
    )


def parse_item(key: str, f: Fields) -> Item:
    """One piece of equipment from its [item.ID] table."""
    return Item(
        id=key,
        name=f.text("name"),
        place=f.choice("place", ("portable", "place", "fixed")),
        aliases=f.texts("aliases"),
        machine=f.flag("machine"),
    )


def parse_kit(f: Fields, items: Mapping[str, Item]) -> Kit:
    """One kit from its [[kit]] table; `*` among its items stands for all of them, and `-ID` takes one out again."""
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
        cannot_fill=f.sentences("cannot_fill"),
        aliases=f.texts("aliases"),
    )


def parse_number(key: str, f: Fields) -> Number:
    """One evidence number from its [number.ID] or [published.ID] table."""
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
    """One rule's numbers from its [rule.ID] table; without an origin they are a convention."""
    return RuleNumbers(
        id=key,
        cost=f.optional_number("cost"),
        limit=f.optional_number("limit"),
        more=f.numbers("more"),
        unit=f.text("unit"),
        origin=f.optional_text("origin") or "convention",
        hard_for=f.texts("hard-for"),
    )
