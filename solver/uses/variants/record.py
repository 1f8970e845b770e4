"""A cell's result as one JSON document: what every end shares, written and read."""

from __future__ import annotations

import json
from typing import Any

from setwright.solver.uses.variants.task import FINAL, SET_ASIDE, UNFINISHED, Standing, Task

SCHEMA = "setwright.variant/1"
ENDS = (*FINAL, UNFINISHED, SET_ASIDE)


def record(task: Task, end: str, said: str = "", **parts: Any) -> bytes:
    """The document of one end, sorted keys, the same bytes for the same end."""
    document = {
        "schema": SCHEMA,
        "key": task.key,
        "name": task.name,
        "values": dict(task.values),
        "end": end,
        "said": said,
        "extends": None,
        "week": None,
        "clash": None,
        **parts,
    }
    text = json.dumps(document, sort_keys=True, indent=1, ensure_ascii=False, allow_nan=False, default=str)
    return (text + "\n").encode()


def document_of(data: bytes, key: str) -> dict[str, Any] | None:
    """A stored result, or None where the bytes are not a whole result of this key."""
    try:
        found = json.loads(data)
    except (ValueError, RecursionError):
        return None
    if not isinstance(found, dict) or found.get("schema") != SCHEMA or found.get("key") != key:
        return None
    return found if found.get("end") in ENDS else None


def standing_of(data: bytes | None, key: str) -> Standing | None:
    """How a stored cell ended; None where there is no result or a damaged one."""
    found = document_of(data, key) if data else None
    return Standing(str(found["end"]), str(found.get("said", ""))) if found else None
