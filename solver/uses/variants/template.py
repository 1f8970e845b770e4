"""A template: a brief with lists where it varies, what is left out, how variants are named and extend each other."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from pydantic import ValidationError

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.toml_text import decoded, toml_tables
from setwright.solver.brief.validation_faults import model_faults
from setwright.solver.uses.variants.axes import AXES, Axis, AxisValue
from setwright.solver.uses.variants.template_checks import template_faults
from setwright.solver.uses.variants.template_model import Selector, TemplateFile, VaryTable

MOST_BYTES: Final = 1_000_000


@dataclass(frozen=True)
class Template:
    """What varies along which axis, what is excluded, the pattern of the names, the share, and the brief in common."""

    title: str
    name: str
    axes: tuple[Axis, ...]
    exclude: tuple[Selector, ...]
    also: tuple[tuple[Selector, Mapping[str, Any]], ...]
    """What is asked besides, as a part of a raw brief, of the variants that match."""
    share: float | None
    """The share of the week index that extending may cost; None: every variant is solved on its own."""
    brief: Mapping[str, Any]
    """The raw brief in common."""


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
    return template_in(decoded(data, str(path), UsageFault), str(path))


def template_in(text: str, where: str) -> Template:
    """The template that a text is; raises UsageFault with every fault of its structure."""
    if len(text.encode()) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 1 MB, expected a template of a page", "send the template"))
    return template_of(toml_tables(text, where, UsageFault), where)


def template_of(raw: Mapping[str, Any], where: str) -> Template:
    """The template of a file's tables; raises UsageFault with every fault found, each led by `where`.

    What does not fit together is looked for only where each part is right in itself.
    """
    try:
        file = TemplateFile.model_validate(raw)
    except ValidationError as error:
        raise UsageFault(model_faults(error, TemplateFile, raw, where, form="toml")) from None
    axes = _axes_of(file.vary)
    name = _usual_name(axes) if file.name is None else file.name
    brief, also = raw.get("brief", {}), [row["brief"] for row in _rows(raw.get("also", []))]
    faults = template_faults(file, axes, name, brief, also)
    if faults:
        raise UsageFault([fault.at(f"{where}: {fault.where}") for fault in faults])
    return Template(
        title=file.title,
        name=name,
        axes=axes,
        exclude=file.exclude,
        also=tuple((row.when, part) for row, part in zip(file.also, also, strict=True)),
        share=file.extend.share,
        brief=brief,
    )


def _rows(value: Any) -> list[Any]:
    return value if isinstance(value, list) else [value]


def _axes_of(vary: VaryTable) -> tuple[Axis, ...]:
    """The axes in their fixed order, however the template orders them."""
    found = {name: values for name in AXES if (values := getattr(vary, name)) is not None}
    return tuple(
        Axis(name, tuple(AxisValue(label, means) for label, means in values.items())) for name, values in found.items()
    )


def _usual_name(axes: tuple[Axis, ...]) -> str:
    """Names from what varies: days x minutes first, then every axis of more than one value."""
    parts = ["{days} x {minutes}"] if any(axis.name == "days" for axis in axes) else []
    parts += [f"{{{a.word}}}" for a in axes if a.name not in ("days", "minutes") and len(a.values) > 1]
    return ", ".join(parts) or "variant"
