"""Whether a template's parts fit together: what varies, what is said of it, and the pattern of the names."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from string import Formatter
from typing import Any, Final

from setwright.catalogue.faults import Fault
from setwright.catalogue.near import did_you_mean
from setwright.solver.uses.variants.axes import AXES, Axis
from setwright.solver.uses.variants.template_model import Selector, TemplateFile

BRIEF_FIELD: Final[Mapping[str, str]] = {"days": "days", "kits": "equipment", "goals": "goal", "minutes": "days"}
"""The field of a brief that an axis says whole; emphases and experience are laid over what it says."""
NAME_EXAMPLE: Final = "write for example '{days} x {minutes}, {kit}'"


def template_faults(
    file: TemplateFile, axes: Sequence[Axis], name: str, brief: Mapping[str, Any], also: Sequence[Mapping[str, Any]]
) -> list[Fault]:
    """Every fault between a template's parts; `brief` and `also` are its raw briefs, as they stand in the file."""
    return [
        *_what_varies(axes, brief),
        *_said_twice(brief, axes, "brief"),
        *(fault for place, part in enumerate(also) for fault in _said_twice(part, axes, f"also[{place}].brief")),
        *(fault for where, selector in _selectors(file) for fault in _selector_faults(selector, axes, where)),
        *_name_faults(name, axes),
    ]


def _selectors(file: TemplateFile) -> Iterator[tuple[str, Selector]]:
    """Each selector with its path."""
    yield from ((f"exclude[{place}]", selector) for place, selector in enumerate(file.exclude))
    yield from ((f"also[{place}].when", row.when) for place, row in enumerate(file.also))


def _what_varies(axes: Sequence[Axis], brief: Mapping[str, Any]) -> Iterator[Fault]:
    names = {axis.name for axis in axes}
    if not names:
        yield Fault("vary", "is empty", f"say what varies: {', '.join(AXES)}")
    elif not names & {"days", "minutes"} and "days" not in brief:
        yield Fault("vary.days", "is missing, and brief.days too", "say days and minutes in [vary]")
    elif len(names & {"days", "minutes"}) == 1:
        yield Fault("vary", "has days or minutes without the other", "say both; one value alone is no list")


def _said_twice(brief: Mapping[str, Any], axes: Sequence[Axis], where: str) -> Iterator[Fault]:
    """What a brief in common says though it varies."""
    by_field = {BRIEF_FIELD[axis.name]: axis.name for axis in reversed(axes) if axis.name in BRIEF_FIELD}
    for field, axis in by_field.items():
        if field in brief:
            yield Fault(f"{where}.{field}", f"is said here and by vary.{axis}", "say it once")


def _selector_faults(selector: Selector, axes: Sequence[Axis], where: str) -> Iterator[Fault]:
    """Words that do not vary in this template, and labels that no value has."""
    by_word = {axis.word: axis for axis in axes}
    for word, labels in selector.items():
        axis = by_word.get(word)
        if axis is None:
            remedy = f"what varies here: {', '.join(by_word)}"
            yield Fault(f"{where}.{word}", "does not vary in this template", remedy)
            continue
        for label in labels:
            if label not in axis.labels:
                remedy = did_you_mean(label, axis.labels) or f"the values here: {', '.join(axis.labels)}"
                yield Fault(f"{where}.{word}", f"{label!r} is not among vary.{axis.name}", remedy)


def _name_faults(name: str, axes: Sequence[Axis]) -> Iterator[Fault]:
    """What is wrong with the pattern of the names."""
    if not name.strip():
        yield Fault("name", "is empty", f"{NAME_EXAMPLE}, or leave it out")
    known = {axis.word for axis in axes}
    try:
        parts = [(field, spec, way) for _, field, spec, way in Formatter().parse(name) if field is not None]
    except ValueError as error:
        yield Fault("name", f"is no pattern: {error}", NAME_EXAMPLE)
        return
    for field, spec, way in parts:
        if field not in known or spec or way:
            remedy = did_you_mean(field, known) or f"what varies here: {', '.join(sorted(known))}"
            yield Fault("name", f"{{{field}}} is nothing that varies here", remedy)
