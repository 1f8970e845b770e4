"""A variant's result as one JSON document: what every end shares, written and read."""

from __future__ import annotations

import json
from collections.abc import Mapping
from hashlib import sha256
from typing import Any

from setwright.solver.uses.variants.task import FINAL, SET_ASIDE, UNFINISHED, Ending, VariantTask

SCHEMA = "setwright.variant/2"
ENDS = (*FINAL, UNFINISHED, SET_ASIDE)


def written_result(task: VariantTask, end: str, said: str = "", **parts: Any) -> bytes:
    """The document of one end, sorted keys, the same bytes for the same end.

    `end` is one of ENDS, `said` why there is no week, `parts` the week, the clash or what is kept of a shorter variant.
    """
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


def read_result(data: bytes, key: str) -> dict[str, Any] | None:
    """A stored result, or None where the bytes are not just what `written_result` wrote for this key."""
    try:
        found = json.loads(data)
    except (ValueError, RecursionError):
        return None
    if not isinstance(found, dict) or found.get("schema") != SCHEMA or found.get("key") != key:
        return None
    return found if found.get("end") in ENDS and found.get("digest") == digest_of(found) else None


def ending_of(data: bytes | None, key: str) -> Ending | None:
    """How a stored variant ended; None where there is no result or a damaged one."""
    found = read_result(data, key) if data else None
    return Ending(str(found["end"]), str(found.get("said", ""))) if found else None
