"""Name -> how its function is loaded, for each kind of search that a page can ask for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from setwright.solver.desk.searches.task import Run


def _week() -> Run:
    from setwright.solver.desk.weeks.find_week import find_week

    return find_week


def _block() -> Run:
    from setwright.solver.desk.blocks.find_block import find_block

    return find_block


def _replan() -> Run:
    from setwright.solver.desk.replan.find_replan import find_replan

    return find_replan


TASKS: Final[Mapping[str, Callable[[], Run]]] = MappingProxyType({"week": _week, "block": _block, "replan": _replan})
