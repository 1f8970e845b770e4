"""The schema's own errors said in a coach's words, each with its path, what was got and what was expected."""

from __future__ import annotations

import re
from collections.abc import Mapping

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from setwright.catalogue.faults import Fault
from setwright.catalogue.near import did_you_mean
from setwright.solver.brief import schema
from setwright.solver.brief.defaults import LIMITS, OUT_OF_LIMITS
from setwright.solver.brief.fault_words import path_of, shown

_MODELS: Mapping[tuple[str, ...], type[BaseModel]] = {
    (): schema.Brief,
    ("days",): schema.DayAsk,
    ("other",): schema.OtherActivity,
    ("owned",): schema.Owned,
    ("muscles",): schema.MuscleAsk,
    ("lifts",): schema.LiftAsk,
    ("pins",): schema.Pin,
    ("client",): schema.Client,
    ("client", "cautions"): schema.CautionAsk,
    ("client", "clearance"): schema.Clearance,
    ("clock",): schema.Clock,
}
_NAMED = (("muscles",), ("lifts",))
"""Tables whose keys are names, not fields."""
_EXPECTED: Mapping[str, str] = {
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "finite_number": "a number",
    "string_type": "words in quotes",
    "bool_type": "true or false",
    "tuple_type": "a list",
    "dict_type": "a table",
    "model_type": "a table",
    "string_pattern_mismatch": "a date as YYYY-MM-DD",
    "string_too_short": "at least one letter",
}
_RANGED = ("greater_than_equal", "less_than_equal", "int_type", "float_type", "int_from_float", "missing")


def validation_faults(error: ValidationError) -> tuple[Fault, ...]:
    """Every fault of one failed validation, in the order met."""
    return tuple(_fault(detail) for detail in error.errors(include_url=False) if not _follows(detail))


def _follows(detail: ErrorDetails) -> bool:
    """Whether a list only seems too short because its malformed rows, named already, were left out."""
    if detail["type"] != "too_short" or not isinstance(detail["input"], list | tuple):
        return False
    return len(detail["input"]) >= LIMITS[str(detail["loc"][-1])][0]


def _fault(detail: ErrorDetails) -> Fault:
    loc = tuple(part for part in detail["loc"] if part not in schema.UNION_TAGS)
    where, kind = path_of(loc), detail["type"]
    if kind == "extra_forbidden":
        fields = _fields_beside(loc)
        elsewhere = _table_of(str(loc[-1])) if len(loc) == 1 else ""
        near = elsewhere or did_you_mean(str(loc[-1]), fields)
        remedy = near or f"the fields here: {', '.join(fields)}"
        return Fault(where, "is not a field of a brief", remedy)
    if kind == "missing":
        return Fault(where, f"is missing, expected {_wanted(loc, detail)}")
    if kind in ("too_short", "too_long"):
        low, high = LIMITS[str(loc[-1])]
        return Fault(where, f"got {len(detail['input'])}, expected {low:g} to {high:g}")
    value = detail["input"]
    # 40.0 where a whole number belongs is told with its point, which is what is wrong with it.
    got = repr(value) if isinstance(value, float) and kind.startswith("int_") else shown(value, "toml")
    remedy = _near_literal(detail)
    if kind in ("greater_than_equal", "less_than_equal"):
        below, above = OUT_OF_LIMITS.get(str(loc[-1]), ("", ""))
        remedy = below if kind == "greater_than_equal" else above
    return Fault(where, f"got {got}, expected {_wanted(loc, detail)}", remedy)


def _wanted(loc: tuple[int | str, ...], detail: ErrorDetails) -> str:
    """What a field takes, with its limits where it has them."""
    kind = detail["type"]
    if loc[0] == "rules" and len(loc) > 1:
        return "'off', 'hard' or a cost of 0 or more"
    if kind == "literal_error":
        return str(detail["ctx"]["expected"])
    field = next((part for part in reversed(loc) if isinstance(part, str)), "")
    noun = _EXPECTED.get(kind, "")
    if field in LIMITS and field not in ("days", "regions") and kind in _RANGED:
        low, high = LIMITS[field]
        return f"{noun} from {low:g} to {high:g}" if noun else f"{low:g} to {high:g}"
    if kind == "missing":
        return "one day or more, each with its minutes" if field == "days" else "a value"
    return noun or detail["msg"]


def _near_literal(detail: ErrorDetails) -> str:
    if detail["type"] != "literal_error" or not isinstance(detail["input"], str):
        return ""
    return did_you_mean(detail["input"], re.findall(r"'([^']*)'", str(detail["ctx"]["expected"])))


def _table_of(field: str) -> str:
    """The remedy for a field that stands beside the tables instead of in the one it belongs to; empty for others."""
    for table in ("client", "owned", "clock"):
        if field in _MODELS[table,].model_fields:
            return f"write it as {table}.{field}"
    return ""


def _fields_beside(loc: tuple[int | str, ...]) -> tuple[str, ...]:
    """The fields of the table in which a path's last part stands."""
    parents = tuple(part for part in loc[:-1] if isinstance(part, str))
    model = _MODELS.get(parents[:1] if parents[:1] in _NAMED else parents, schema.Brief)
    return tuple(model.model_fields)
