"""A cell's result as one JSON document: what every end shares, written and read."""

from __future__ import annotations

import json
from collections.abc import Mapping
from hashlib import sha256
from typing import Any

from setwright.solver.uses.variants.task import FINAL, SET_ASIDE, UNFINISHED, Standing, Task

SCHEMA = "setwright.variant/2"
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
    document = json.loads(json.dumps(document, allow_nan=False, default=str))
    document["digest"] = digest_of(document)
    return (json.dumps(document, sort_keys=True, indent=1, ensure_ascii=False) + "\n").encode()


def digest_of(document: Mapping[str, Any]) -> str:
    """The first 32 hexadecimal digits of the SHA-256 of all but the digest: a changed file is known by it."""
    rest = {name: value for name, value in document.items() if name != "digest"}
    return sha256(json.dumps(rest, sort_keys=True, separators=(",", ":")).encode()).hexdigest()[:32]


def document_of(data: bytes, key: str) -> dict[str, Any] | None:
    """A stored result, or None where the bytes are not just what `record` wrote for this key."""
    try:
        found = json.loads(data)
    except (ValueError, RecursionError):
        return None
    if not isinstance(found, dict) or found.get("schema") != SCHEMA or found.get("key") != key:
        return None
    return found if found.get("end") in ENDS and found.get("digest") == digest_of(found) else None


def standing_of(data: bytes | None, key: str) -> Standing | None:
    """How a stored cell ended; None where there is no result or a damaged one."""
    found = document_of(data, key) if data else None
    return Standing(str(found["end"]), str(found.get("said", ""))) if found else None
