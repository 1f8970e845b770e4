"""A brief as the TOML file that is read as the same brief."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from setwright.solver.brief.schema import Brief


def brief_toml(brief: Brief, comment: str = "") -> bytes:
    """The brief's file in UTF-8, without what it leaves to the defaults; `comment` stands above it."""
    raw = brief.model_dump(mode="json", exclude_none=True, exclude_defaults=True)
    plain = [f"{name} = {_value(value)}" for name, value in raw.items() if not _is_table(value)]
    tables = [_tables(name, value) for name, value in raw.items() if _is_table(value)]
    parts = [*(f"# {line}" for line in comment.splitlines()), *plain, *tables]
    return ("\n".join(parts) + "\n").encode()


def _is_table(value: Any) -> bool:
    return isinstance(value, Mapping) or (isinstance(value, list) and bool(value) and isinstance(value[0], Mapping))


def _tables(name: str, value: Any) -> str:
    """A table, or a table for each item of a list, what they hold in one line each."""
    head = "[{}]" if isinstance(value, Mapping) else "[[{}]]"
    rows = [value] if isinstance(value, Mapping) else value
    return "\n".join(
        line for row in rows for line in ("", head.format(name), *(f"{key} = {_value(v)}" for key, v in row.items()))
    )


def _value(value: Any) -> str:
    """A value in one line; a text as JSON writes it, but for DEL, which TOML wants escaped (TOML 1.0, Strings)."""
    if isinstance(value, Mapping):
        inside = ", ".join(f"{key} = {_value(v)}" for key, v in value.items())
        return f"{{ {inside} }}"
    if isinstance(value, list):
        return f"[{', '.join(map(_value, value))}]"
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
