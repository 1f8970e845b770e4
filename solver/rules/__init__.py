"""Every rule of the reckoning, by id, in the order they are printed."""

from __future__ import annotations

from importlib import import_module
from types import MappingProxyType

from setwright.solver.evaluation.finding import Rule

MODULES = (
    # what is open
    "equipment", "stand_in", "close_press", "ability", "lone_lifter", "avoided", "caution", "muscle_none",
    "day_focus", "other_activity", "each_side_rest",
    # how a lift is done
    "set_range", "rest_range", "technique", "repetitions", "effort",
    # a day
    "day_minutes", "warm_up_given", "slot_once", "movement_once", "exercise_count", "seventh", "high_fatigue_sets",
    "axial_load", "technique_cap", "muscle_day_cap", "muscle_day_cram", "day_sets", "novice_barbell", "pair_fit",
    "pair_shared", "order",
    # what was asked for
    "pinned", "must", "days_at_least", "exact_band", "band_low", "band_top", "band_high", "priority_days",
    "priority_variety", "priority_isolation", "liked", "disliked",
    # the shape of a week
    "coverage", "direct_work", "knee_flexion", "flat_press", "deadlift", "full_session", "main_lift",
    "region_main_lift", "theme", "region_days", "fourth_region_day", "region_consecutive", "hinge_over_knee",
    "pull_push", "hard_days", "axial_consecutive", "exercise_days", "third_day", "week_sets", "day_share",
    # the card
    "second_choice", "token_sets", "fourth_set", "fifth_set", "line", "distinct",
)  # fmt: skip

_found = [import_module(f"{__name__}.{module}").RULE for module in MODULES]
RULES: MappingProxyType[str, Rule] = MappingProxyType({rule.id: rule for rule in _found})
EXCLUDERS: tuple[Rule, ...] = tuple(rule for rule in _found if rule.excludes)
CHECKS: tuple[Rule, ...] = tuple(rule for rule in _found if rule.check)
