"""Name -> how its function is loaded, for each kind of search that a page can ask for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from setwright.solver.desk.searches.task import Run


def _week() -> Run:
    from setwright.solver.desk.weeks.find_week import find_week

    return find_week


def _settle() -> Run:
    from setwright.solver.desk.weeks.settle import settle

    return settle


def _others() -> Run:
    from setwright.solver.desk.weeks.other_weeks import other_weeks

    return other_weeks


def _question() -> Run:
    from setwright.solver.desk.weeks.questions import answer

    return answer


TASKS: Final[Mapping[str, Callable[[], Run]]] = MappingProxyType(
    {"week": _week, "settle": _settle, "others": _others, "question": _question}
)
