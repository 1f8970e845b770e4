"""The words of a fault: its path, what was got, and what a JSON Schema says was expected."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from setwright.catalogue import faults
from setwright.catalogue.faults import Form


def path_of(loc: Sequence[int | str]) -> str:
    """A path as `days[0].minutes`; places in a list count from 0."""
    text = ""
    for part in loc:
        if isinstance(part, int):
            text += f"[{part}]"
        else:
            text += f".{part}" if text else part
    return text


def shown(value: Any, form: Form = "json") -> str:
    """A value in a fault of a document, as it was written there; cut short, or by its kind, when long."""
    return faults.shown(value, form)


def node_at(schema: Mapping[str, Any], loc: Sequence[int | str]) -> Mapping[str, Any]:
    """The part of a JSON Schema that describes a path; empty where nothing is said of it."""
    node: Mapping[str, Any] = schema
    for part in loc:
        node = _followed(node, schema)
        if isinstance(part, int):
            node = node.get("items", {})
        else:
            node = node.get("properties", {}).get(part, node.get("additionalProperties"))
        node = node if isinstance(node, Mapping) else {}
    return _followed(node, schema, keep_null=True)


def _followed(node: Mapping[str, Any], schema: Mapping[str, Any], keep_null: bool = False) -> Mapping[str, Any]:
    """A part with its reference followed, and its choice between something and null taken for the something."""
    if "$ref" in node:
        return _followed(schema["$defs"][node["$ref"].rsplit("/", 1)[1]], schema, keep_null)
    choices = node.get("anyOf", ())
    some = [choice for choice in choices if choice.get("type") != "null"]
    if len(some) != 1:
        return node
    found = _followed(some[0], schema)
    return {**found, "nullable": True} if keep_null and len(choices) > 1 else found


def words_of(node: Mapping[str, Any]) -> list[str]:
    """The words that a part of a JSON Schema takes, where it takes some words only."""
    return [word for word in (node.get("enum") or [node.get("const")]) if isinstance(word, str)]


def expected(node: Mapping[str, Any], form: Form = "json") -> str:
    """What a part of a JSON Schema takes, in words; only JSON has null, and TOML has tables for objects."""
    said = _plainly(node)
    if form == "table":
        return said
    if form == "toml":
        return {"an object": "a table", "text": "text in quotes"}.get(said, said)
    return f"{said} or null" if node.get("nullable") else said


def _plainly(node: Mapping[str, Any]) -> str:
    words = [repr(word) for word in node.get("enum") or [node[name] for name in ("const",) if name in node]]
    if words:
        return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"
    choices = [*node.get("anyOf", ()), *node.get("oneOf", ())]
    if choices:
        return " or ".join(_plainly(choice) for choice in choices)
    names = {"string": "text", "boolean": "true or false", "array": "a list", "object": "an object"}
    numbers = {"integer": "a whole number", "number": "a number"}
    kind = str(node.get("type", ""))
    if kind not in numbers:
        return names.get(kind, "a value")
    low, high = node.get("minimum"), node.get("maximum")
    if low is None and high is None:
        return numbers[kind]
    return f"{numbers[kind]} {'of' if high is None else 'from'} {span(low, high)}"


def span(low: float | None, high: float | None) -> str:
    """A range in words: 1 to 20, 0 or more, 100 or less."""
    if low == high and low is not None:
        return f"{low:g}"
    if low is None:
        return f"{high:g} or less"
    return f"{low:g} or more" if high is None else f"{low:g} to {high:g}"
