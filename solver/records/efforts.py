"""How hard a week is searched for again: as was said, else as it was made."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.solver.search.limits import DEFAULT, SEARCHES, Limits


def limits_of(search: str | None, document: Mapping[str, Any]) -> Limits:
    """The limits of the search asked for, else of the one that the week was made with."""
    made_by = document.get("made_by")
    limits = made_by.get("limits") if isinstance(made_by, Mapping) else None
    used = limits.get("search") if isinstance(limits, Mapping) else None
    return SEARCHES[search or (used if isinstance(used, str) and used in SEARCHES else DEFAULT)]
