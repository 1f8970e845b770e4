"""What a pydantic model refuses, said as faults: the path, what was got, what was expected, the nearest right word."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails, PydanticCustomError

from setwright.catalogue.faults import Fault, Form
from setwright.catalogue.near import did_you_mean
from setwright.solver.brief.fault_words import expected, node_at, path_of, shown, span, words_of
from setwright.solver.brief.schema import UNION_TAGS

REFUSED: Final = "refused"
"""The type of an error that a validator of ours raised: it brings its own words."""
KEY: Final = "[key]"
"""What pydantic adds to the path of a key, as against the value that stands under it."""


def refusal(said: str, remedy: str = "") -> PydanticCustomError:
    """The error that a field's validator raises when its fault needs words of its own."""
    return PydanticCustomError(REFUSED, "{said}", {"said": said, "remedy": remedy})


def model_faults(
    error: ValidationError, model: type[BaseModel], raw: Any, where: str = "", form: Form = "json"
) -> list[Fault]:
    """Every fault of one failed validation, in the order in which the values stand in `raw`, each led by `where`.

    What was expected is read off the model's own JSON Schema, so that it is what `setwright schema` prints.
    """
    schema = model.model_json_schema()
    details = [detail for detail in error.errors(include_url=False) if not _follows(detail)]
    details.sort(key=lambda detail: _position(raw, detail["loc"]))
    return [_fault(detail, schema, where, form) for detail in details]


def _follows(detail: ErrorDetails) -> bool:
    """Whether a list only seems too short because its malformed rows, named already, were left out."""
    least = detail.get("ctx", {}).get("min_length", 0)
    return detail["type"] == "too_short" and isinstance(detail["input"], list | tuple) and len(detail["input"]) >= least


def _position(raw: Any, loc: Sequence[int | str]) -> tuple[int, ...]:
    """Where a path stands in a value, as one place for each of its parts; what is missing comes last."""
    places = []
    for part in loc:
        if isinstance(raw, Mapping) and part in raw:
            places.append(list(raw).index(part))
            raw = raw[part]
        elif isinstance(raw, list | tuple) and isinstance(part, int) and part < len(raw):
            places.append(part)
            raw = raw[part]
        else:
            places.append(len(raw) if isinstance(raw, Mapping | list | tuple) else 0)
            raw = None
    return tuple(places)


def _fault(detail: ErrorDetails, schema: Mapping[str, Any], where: str, form: Form) -> Fault:
    loc, kind, got = detail["loc"], detail["type"], detail["input"]
    of_key = loc[-1:] == (KEY,)
    loc = loc[:-1] if of_key or _ends_in_tag(loc, schema) else loc
    place = ": ".join(part for part in (where, path_of(loc)) if part)
    if kind == REFUSED:
        return Fault(place, str(detail["ctx"]["said"]), str(detail["ctx"]["remedy"]))
    beside = node_at(schema, loc[:-1])
    if kind == "extra_forbidden" or of_key:
        known = list(beside.get("properties", {})) or words_of(beside.get("propertyNames", {}))
        return Fault(place, "is not known here", did_you_mean(str(loc[-1]), known) or f"known: {', '.join(known)}")
    node = node_at(schema, loc)
    if kind == "missing":
        near = did_you_mean(str(loc[-1]), _unknown(got, beside))
        return Fault(place, f"is missing, expected {expected(node, form)}", near.replace("did you mean", "is it"))
    if kind in ("too_short", "too_long") and isinstance(got, list | tuple):
        return Fault(place, f"has {len(got)} values, expected {span(node['minItems'], node.get('maxItems'))}")
    if kind == "string_too_long":
        return Fault(place, f"is {len(got)} letters long, expected at most {node['maxLength']}")
    near = did_you_mean(got, words_of(node)) if isinstance(got, str) else ""
    return Fault(place, f"got {shown(got, form)}, expected {expected(node, form)}", near)


def _ends_in_tag(loc: Sequence[int | str], schema: Mapping[str, Any]) -> bool:
    """Whether a path ends in the tag of a choice between kinds, which is no part of the file."""
    return bool(loc) and loc[-1] in UNION_TAGS and loc[-1] not in node_at(schema, loc[:-1]).get("properties", {})


def _unknown(got: Any, beside: Mapping[str, Any]) -> list[str]:
    """The fields of an object that its model does not know: one of them may be the missing one, misspelt."""
    known = beside.get("properties", {})
    return [str(name) for name in got if name not in known] if isinstance(got, Mapping) else []
