"""A template's variants: every combination that is not excluded, with its brief, its name and what it extends."""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from hashlib import sha256
from itertools import product
from math import prod
from typing import Any
from unicodedata import normalize

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.uses.variants.axes import AxisValue, word_of
from setwright.solver.uses.variants.template import Template
from setwright.solver.uses.variants.template_model import Selector

MOST_VARIANTS = 200_000
SHOWN_FAULTS = 20
MOST_BYTES = 200
"""Of a file's name before its ending: file systems take 255, and what is written beside needs some."""


@dataclass(frozen=True)
class Variant:
    """One variant: its name, the labels it combines, its raw brief as JSON, its key and the variant it extends."""

    name: str
    values: Mapping[str, str]
    brief: str
    key: str
    extends: int | None
    """The place in the matrix of the next shorter variant, None where there is none."""


@dataclass(frozen=True)
class VariantMatrix:
    """All variants of a template in a fixed order, a variant never before the one it extends."""

    title: str
    axes: tuple[tuple[str, tuple[str, ...]], ...]
    share: float | None
    stamp: Mapping[str, Any]
    """All that a result depends on beside the brief: version, catalogue, evidence, engines, limits."""
    variants: tuple[Variant, ...]

    @cached_property
    def place_of(self) -> Mapping[str, int]:
        """key -> place."""
        return {variant.key: place for place, variant in enumerate(self.variants)}

    @cached_property
    def chains(self) -> tuple[tuple[int, ...], ...]:
        """The places of variants that extend each other, shortest first."""
        found: dict[int, list[int]] = {}
        root: list[int] = []
        for place, variant in enumerate(self.variants):
            root.append(place if variant.extends is None else root[variant.extends])
            found.setdefault(root[place], []).append(place)
        return tuple(tuple(chain) for chain in found.values())


def matrix_of(
    template: Template, catalogue: Catalogue, stamp: Mapping[str, Any], rules: Sequence[str]
) -> VariantMatrix:
    """The variants of a template; raises UsageFault where a brief cannot be understood or two names are one.

    A variant's key is the first 32 hexadecimal digits of the SHA-256 of its raw brief, the stamp and the share, with
    the key of the shorter variant it extends.
    """
    variants: list[Variant] = []
    shorter: dict[tuple[str, ...], int] = {}
    faults: dict[Fault, None] = {}
    for values in _combinations(template):
        labels = {word_of(axis): value.label for axis, value in values.items()}
        name = template.name.format_map(labels)
        raw = _brief_of(template, values, name)
        faults.update(dict.fromkeys(_misunderstood(raw, catalogue, name, rules)))
        if len(faults) > SHOWN_FAULTS:
            break
        line = tuple(label for axis, label in labels.items() if axis != "minutes")
        extends = shorter.get(line) if _extendable(template, values) else None
        shorter[line] = len(variants)
        text = _canonical(raw)
        key = _key_of(text, stamp, template.share, None if extends is None else variants[extends].key)
        variants.append(Variant(name, labels, text, key, extends))
    faults.update(dict.fromkeys(_misnamed(variants)))
    if not variants and not faults:
        faults[Fault("exclude", "every variant is excluded", "leave one in")] = None
    if faults:
        raise UsageFault(tuple(faults)[:SHOWN_FAULTS])
    axes = tuple((axis.word, axis.labels) for axis in template.axes)
    return VariantMatrix(template.title, axes, template.share, stamp, tuple(variants))


def _combinations(template: Template) -> Iterator[Mapping[str, AxisValue]]:
    """Every combination of values that no exclusion takes out."""
    count = prod(len(axis.values) for axis in template.axes)
    if count > MOST_VARIANTS:
        raise UsageFault(
            Fault("vary", f"makes {count} variants, at most {MOST_VARIANTS} are planned", "part the template")
        )
    names = [axis.name for axis in template.axes]
    for values in product(*(axis.values for axis in template.axes)):
        found = dict(zip(names, values, strict=True))
        if not any(_matched(row, found) for row in template.exclude):
            yield found


def _matched(selector: Selector, values: Mapping[str, AxisValue]) -> bool:
    """Whether a combination (axis -> value) has one of the labels of everything that the selector names."""
    labels = {word_of(axis): value.label for axis, value in values.items()}
    return all(labels[word] in wanted for word, wanted in selector.items())


def _brief_of(template: Template, values: Mapping[str, AxisValue], name: str) -> dict[str, Any]:
    """The raw brief of one combination."""
    means = {axis: value.means for axis, value in values.items()}
    raw: dict[str, Any] = {**template.brief, "title": name}
    for selector, more in template.also:
        raw = _united(raw, more) if _matched(selector, values) else raw
    if "days" in means:
        raw["days"] = [{"weekday": day, "minutes": means["minutes"]} for day in means["days"]]
    if "kits" in means:
        raw["equipment"] = means["kits"]
    if "goals" in means:
        raw["goal"] = means["goals"]
    if "emphases" in means:
        raw = _joined(raw, "muscles", means["emphases"])
    if "experience" in means:
        raw = _joined(raw, "client", {"experience": means["experience"]})
    return raw


def _joined(raw: dict[str, Any], field: str, more: Mapping[str, Any]) -> dict[str, Any]:
    """A brief with more in one of its tables; what is no table is left for the brief's own check to name."""
    table = raw.get(field, {})
    return {**raw, field: {**table, **more}} if isinstance(table, Mapping) else raw


def _united(raw: Mapping[str, Any], more: Mapping[str, Any]) -> dict[str, Any]:
    """One brief with another's fields: tables are united, lists joined, single values replaced."""
    found = dict(raw)
    for field, value in more.items():
        old = found.get(field)
        if isinstance(old, Mapping) and isinstance(value, Mapping):
            value = {**old, **value}
        elif isinstance(old, list) and isinstance(value, list) and field != "days":
            value = [*old, *value]
        found[field] = value
    return found


def _extendable(template: Template, values: Mapping[str, AxisValue]) -> bool:
    """Whether the variant may extend a shorter one; efficiency cuts its minutes to the fewest, so it keeps nothing."""
    goal = values["goals"].means if "goals" in values else template.brief.get("goal")
    return template.share is not None and goal != "efficiency"


def _misunderstood(raw: Mapping[str, Any], catalogue: Catalogue, name: str, rules: Sequence[str]) -> tuple[Fault, ...]:
    try:
        parse_brief(raw, catalogue, name, tuple(rules))
    except UsageFault as error:
        return error.faults
    return ()


def _misnamed(variants: list[Variant]) -> Iterator[Fault]:
    """Names that two variants share, as words or as files, and names that are too long for a file."""
    stems = [file_stem(variant.name) for variant in variants]
    counts = Counter(stems)
    for variant, stem in zip(variants, stems, strict=True):
        if counts[stem] > 1:
            said = f"two variants are both called {variant.name!r}, or their files both {stem!r}"
            yield Fault("name", said, "put all that varies into the name, in letters or digits that differ")
        if len(stem.encode()) > MOST_BYTES:
            said = f"{variant.name[:40]!r} ... makes a file's name of {len(stem.encode())} bytes"
            yield Fault("name", f"{said}, expected at most {MOST_BYTES}", "shorten it")


def file_stem(name: str) -> str:
    """A name that every file system takes: small letters, digits and hyphens, accents composed (Unicode's NFKC)."""
    return re.sub(r"[^\w]+", "-", normalize("NFKC", name).casefold()).strip("-_") or "variant"


def _canonical(value: Any) -> str:
    """One JSON text for one value."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False, default=str)


def _key_of(brief: str, stamp: Mapping[str, Any], share: float | None, extends: str | None) -> str:
    text = _canonical({"brief": brief, "stamp": stamp, "share": share if extends else None, "extends": extends})
    return sha256(text.encode()).hexdigest()[:32]
