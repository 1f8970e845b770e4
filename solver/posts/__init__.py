"""Every rule's rows, by the same names as the reckoning's checks."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from types import MappingProxyType

from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.rules import MODULES, RULES

BY_COLUMNS = (
    "equipment", "stand-in", "close-press", "ability", "lone-lifter", "avoided", "caution", "muscle-none", "day-focus",
    "other-activity", "each-side-rest", "set-range", "rest-range", "technique", "repetitions", "effort", "order",
)  # fmt: skip
"""Rules that hold because no column breaks them, or that are set after solving."""
POSTED_WITH = MappingProxyType({"warm-up-given": "day-minutes", "band-high": "band-top"})
"""Rules whose rows stand beside another's."""
FIRST = ("exercise-days", "day-minutes")
"""Rules that make the variables which others use."""

POSTS: MappingProxyType[str, Callable[[LinearModel], None]] = MappingProxyType(
    {
        name.replace("_", "-"): import_module(f"{__name__}.{name}").post
        for name in MODULES
        if name.replace("_", "-") not in (*BY_COLUMNS, *POSTED_WITH)
    }
)
ALWAYS = (*FIRST, "band-top", "distinct")
"""Rules whose rows also keep books; they ask themselves whether the brief turns them off."""


def post_all(model: LinearModel) -> None:
    """Post every rule that the brief leaves on, in the registry's order."""
    for rule in (*FIRST, *(r for r in RULES if r in POSTS and r not in FIRST)):
        if rule in ALWAYS or not model.resolved.off(rule):
            POSTS[rule](model)
