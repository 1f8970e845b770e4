"""Briefs resolved once and kept while they are asked for again, with what was found out of them in the meantime."""

from __future__ import annotations

import threading
from collections import OrderedDict
from typing import Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import resolve

MOST: Final = 12
_kept: OrderedDict[tuple[str, str], ResolvedBrief] = OrderedDict()
_lock: Final = threading.Lock()


def resolved_once(brief: Brief, catalogue: Catalogue) -> ResolvedBrief:
    """The brief resolved, the same value for the same brief and catalogue while it is among the last that were."""
    key = catalogue.digest, brief.model_dump_json()
    with _lock:
        found = _kept.pop(key, None) or resolve(brief, catalogue)
        _kept[key] = found
        if len(_kept) > MOST:
            _kept.popitem(last=False)
    return found
