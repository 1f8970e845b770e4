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


def _compare() -> Run:
    from setwright.solver.desk.trade_offs.search_compare import compare_goals

    return compare_goals


def _curve() -> Run:
    from setwright.solver.desk.trade_offs.search_curve import search_curve

    return search_curve


def _season() -> Run:
    from setwright.solver.desk.trade_offs.search_season import search_season

    return search_season


def _variants() -> Run:
    from setwright.solver.desk.variants.run_template import run_template

    return run_template


def _block() -> Run:
    from setwright.solver.desk.blocks.find_block import find_block

    return find_block


def _replan() -> Run:
    from setwright.solver.desk.replan.find_replan import find_replan

    return find_replan


TASKS: Final[Mapping[str, Callable[[], Run]]] = MappingProxyType(
    {
        "week": _week,
        "settle": _settle,
        "others": _others,
        "question": _question,
        "compare": _compare,
        "curve": _curve,
        "season": _season,
        "variants": _variants,
        "block": _block,
        "replan": _replan,
    }
)
