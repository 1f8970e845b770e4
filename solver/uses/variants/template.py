"""A template: a brief with lists where it varies, what is left out, how variants are named and extend each other."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from string import Formatter
from typing import Any

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import did_you_mean
from setwright.solver.uses.variants.axes import AXES, Axis, axis_of, one_of

FIELDS = ("title", "name", "vary", "exclude", "also", "extend", "brief")
SHARE = 0.02
"""The share of the stimulus that extending the shorter variant may cost where the template says none (convention)."""
MOST_BYTES = 1_000_000
PRIVATE = ("code", "cautions", "clearance")


Selector = Mapping[str, tuple[str, ...]]
"""Axis -> labels; a variant matches when it has one of the labels on every axis named."""


@dataclass(frozen=True)
class Template:
    """What varies along which axis, what is excluded, the pattern of the names, the share, and the brief in common."""

    title: str
    name: str
    axes: tuple[Axis, ...]
    exclude: tuple[Selector, ...]
    also: tuple[tuple[Selector, Mapping[str, Any]], ...]
    """What is asked besides of the variants that match."""
    share: float | None
    """The share of the stimulus that extending may cost; None: every variant is solved on its own."""
    brief: Mapping[str, Any]


def read_template(path: Path) -> Template:
    """The template a file holds; raises UsageFault with every fault of its structure."""
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except OSError as error:
        said = f"cannot be read: {error.strerror or error}"
        raise UsageFault(Fault(str(path), said, "name a template's TOML file")) from None
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(str(path), "is larger than 1 MB, expected a template of a page", "name the template"))
    try:
        raw = tomllib.loads(data.decode("utf-8-sig"))
    except (UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError) as error:
        raise UsageFault(Fault(str(path), f"is not TOML: {error}", "mend that line")) from None
    return template_of(raw, str(path))


def template_of(raw: Mapping[str, Any], where: str) -> Template:
    """The template of a raw table; raises UsageFault with every fault found, each led by `where`."""
    faults = [
        Fault(field, "is no part of a template", did_you_mean(field, FIELDS) or f"its parts: {', '.join(FIELDS)}")
        for field in raw
        if field not in FIELDS
    ]
    axes = tuple(axes_of(raw.get("vary"), faults))
    brief = brief_of(raw.get("brief", {}), axes, faults)
    found = Template(
        title=words(raw, "title", "", faults),
        name=words(raw, "name", usual_name(axes), faults),
        axes=axes,
        exclude=tuple(matches(raw.get("exclude", []), "exclude", axes, faults)),
        also=tuple(additions(raw.get("also", []), axes, faults)),
        share=share_of(raw.get("extend", {}), faults),
        brief=brief,
    )
    faults += name_faults(found)
    if faults:
        raise UsageFault(tuple(Fault(f"{where}: {f.where}", f.said, f.remedy) for f in faults))
    return found


def axes_of(raw: Any, faults: list[Fault]) -> Iterator[Axis]:
    """The axes in their fixed order, however the template orders them."""
    if not isinstance(raw, Mapping) or not raw:
        faults.append(
            Fault("vary", "is missing, expected lists", "write for example days = [2, 3], minutes = [30, 45]")
        )
        return
    for name in raw:
        if name not in AXES:
            remedy = did_you_mean(name, AXES) or f"a template varies {', '.join(AXES)}"
            faults.append(Fault(f"vary.{name}", "is nothing that varies", remedy))
    for name in AXES:
        if name in raw:
            yield axis_of(name, raw[name], faults)


def brief_of(raw: Any, axes: tuple[Axis, ...], faults: list[Fault], where: str = "brief") -> Mapping[str, Any]:
    """A brief in common: it says nothing that varies, and names no one person."""
    if not isinstance(raw, Mapping):
        faults.append(Fault(where, "is no table", "write [brief] and its fields below"))
        return {}
    names = {axis.name for axis in axes}
    varied = {"days": "days", "kits": "equipment", "goals": "goal", "emphases": "muscles", "minutes": "days"}
    for axis, field in varied.items():
        if axis in names and field in raw and field != "muscles":
            faults.append(Fault(f"{where}.{field}", f"is said here and by vary.{axis}", "say it once"))
    if where == "brief" and not names & {"days", "minutes"} and "days" not in raw:
        faults.append(Fault("vary.days", "is missing, and brief.days too", "say days and minutes in [vary]"))
    if where == "brief" and len(names & {"days", "minutes"}) == 1:
        faults.append(Fault("vary", "has days or minutes without the other", "say both; one value alone is no list"))
    if "title" in raw:
        faults.append(Fault(f"{where}.title", "is given by the variant's name", "write name = '...' above [vary]"))
    client = raw.get("client", {})
    for field in PRIVATE if isinstance(client, Mapping) else ():
        if field in client:
            remedy = "plan this client with `setwright week`; avoid = [...] closes lifts for everyone"
            faults.append(Fault(f"{where}.client.{field}", "speaks of one person, a template is for many", remedy))
    return raw


def matches(raw: Any, field: str, axes: tuple[Axis, ...], faults: list[Fault]) -> Iterator[Selector]:
    """Each row of a list as a match."""
    for place, row in enumerate(raw if isinstance(raw, list) else [raw]):
        yield match_of(row, f"{field}[{place}]", axes, faults)


def match_of(row: Any, where: str, axes: tuple[Axis, ...], faults: list[Fault]) -> Selector:
    """One match; a word or a value that does not vary is a fault."""
    if not isinstance(row, Mapping) or not row:
        faults.append(Fault(where, "is no table of what goes together", "write { days = 2, minutes = 60 }"))
        return {}
    by_word = {one_of(axis.name): axis for axis in axes}
    found: dict[str, tuple[str, ...]] = {}
    for word, value in row.items():
        if word not in by_word:
            remedy = did_you_mean(word, by_word) or f"what varies here: {', '.join(by_word)}"
            faults.append(Fault(f"{where}.{word}", "does not vary in this template", remedy))
            continue
        axis = by_word[word]
        found[axis.name] = tuple(str(one) for one in (value if isinstance(value, list) else [value]))
        if not found[axis.name]:
            faults.append(Fault(f"{where}.{word}", "is an empty list, which matches nothing", "name a value in it"))
        for label in found[axis.name]:
            if label not in axis.labels:
                remedy = did_you_mean(label, axis.labels) or f"the values here: {', '.join(axis.labels)}"
                faults.append(Fault(f"{where}.{word}", f"{label!r} is not among vary.{axis.name}", remedy))
    return found


def additions(raw: Any, axes: tuple[Axis, ...], faults: list[Fault]) -> Iterator[tuple[Selector, Mapping[str, Any]]]:
    """Each [[also]] as a match and the part of a brief it brings."""
    for place, row in enumerate(raw if isinstance(raw, list) else [raw]):
        where = f"also[{place}]"
        if not isinstance(row, Mapping) or set(row) != {"when", "brief"} or not isinstance(row["brief"], Mapping):
            remedy = "write when = { kit = 'bands' } and brief = { must = ['hinge'] }"
            faults.append(Fault(where, "is not made of when and brief", remedy))
            continue
        yield (
            match_of(row["when"], f"{where}.when", axes, faults),
            brief_of(row["brief"], axes, faults, f"{where}.brief"),
        )


def share_of(raw: Any, faults: list[Fault]) -> float | None:
    """The share that extending may cost; None where the template turns it off."""
    if not isinstance(raw, Mapping) or set(raw) - {"share"}:
        faults.append(Fault("extend", "takes share alone", "write share = 0.02, or share = 'off'"))
        return None
    said = raw.get("share", SHARE)
    if said == "off":
        return None
    if isinstance(said, bool) or not isinstance(said, int | float) or not 0 <= said <= 0.5:
        faults.append(Fault("extend.share", f"got {said!r}, expected 0 to 0.5 or 'off'", "0.02 is two hundredths"))
        return None
    return float(said)


def words(raw: Mapping[str, Any], field: str, unsaid: str, faults: list[Fault]) -> str:
    said = raw.get(field, unsaid)
    if not isinstance(said, str) or not said.isprintable():
        faults.append(Fault(field, f"got {said!r}, expected words in quotes"))
        return unsaid
    return said


def usual_name(axes: tuple[Axis, ...]) -> str:
    """Names from what varies: days x minutes first, then every axis of more than one value."""
    names = {axis.name: axis for axis in axes}
    parts = ["{days} x {minutes}"] if "days" in names else []
    parts += [f"{{{one_of(a.name)}}}" for a in axes if a.name not in ("days", "minutes") and len(a.values) > 1]
    return ", ".join(parts) or "variant"


def name_faults(template: Template) -> Iterator[Fault]:
    """What is wrong with the pattern of the names."""
    if not template.name.strip():
        yield Fault("name", "is empty", "write for example '{days} x {minutes}, {kit}', or leave it out")
    known = {one_of(axis.name) for axis in template.axes}
    try:
        parts = [(field, spec, way) for _, field, spec, way in Formatter().parse(template.name) if field is not None]
    except ValueError as error:
        yield Fault("name", f"is no pattern: {error}", "write for example '{days} x {minutes}, {kit}'")
        return
    for field, spec, way in parts:
        if field not in known or spec or way:
            remedy = did_you_mean(field, known) or f"what varies here: {', '.join(sorted(known))}"
            yield Fault("name", f"{{{field}}} is nothing that varies here", remedy)
