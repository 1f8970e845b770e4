"""The tables of defaults.toml turned into `Defaults`; whatever is missing, unknown or of the wrong kind is a fault."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from setwright.catalogue.defaults import (
    EMPHASES,
    EXPERIENCES,
    GOALS,
    LIFT_KINDS,
    Band,
    Bands,
    BlockDefaults,
    CostScale,
    Defaults,
    MinorBand,
    Rests,
    SeasonDefaults,
    SetSpans,
)
from setwright.catalogue.faults import Fault
from setwright.catalogue.fields import Fields

DEFAULT_TABLES = (
    "weights",
    "cost-scale",
    "bands",
    "bands-growth-minor",
    "novice-bands",
    "rests",
    "pair-rests",
    "warm-up",
    "sets",
    "drops",
    "ramp",
    "fewest-minutes",
    "block",
    "replan",
    "season",
)
"""The tables that `Defaults` is made of."""


def parse_defaults(tables: Mapping[str, Any], faults: list[Fault]) -> Defaults:
    """The defaults; what is amiss is added to `faults`, and an empty value stands in for it."""
    parts = Fields({name: tables[name] for name in DEFAULT_TABLES if name in tables}, "defaults", faults)
    weights, scale = parts.table("weights"), parts.table("cost-scale")
    minor, sets = parts.table("bands-growth-minor"), parts.table("sets")
    rests, pair_rests = parts.table("rests"), parts.table("pair-rests")
    found = Defaults(
        weights=MappingProxyType({emphasis: weights.number(emphasis, None) for emphasis in EMPHASES}),
        cost_scale=CostScale(scale.number("reference", None), scale.number("least", None), scale.number("most", None)),
        bands=_bands(parts.table("bands")),
        novice_bands=_bands(parts.table("novice-bands")),
        minor_growth=MinorBand(minor.texts("muscles"), _band(minor, "normal")),
        rests=MappingProxyType({goal: _rests(rests.table(goal), LIFT_KINDS) for goal in GOALS}),
        pair_rests=_rests(pair_rests, GOALS),
        single_pair_rests=_some_goals(pair_rests, "single"),
        heavy_pair_rests=_some_goals(pair_rests, "heavy"),
        sets=SetSpans(
            multi=sets.span("multi"),
            multi_most=sets.whole("multi-most"),
            single=sets.span("single"),
            trunk=sets.span("trunk"),
            once_a_week=sets.span("once-a-week"),
            minimum_dose=sets.span("minimum-dose"),
        ),
        drops=parts.table("drops").wholes("usual"),
        ramp=parts.table("ramp").pairs("steps"),
        phrase_rests=(rests.whole("short"), rests.whole("long")),
        full_rest=rests.whole("full"),
        warm_up_shortest=parts.table("warm-up").whole("shortest"),
        keep_share=parts.table("fewest-minutes").number("keep-share", None),
        block=_block(parts.table("block")),
        replan_share=parts.table("replan").number("keep-share", None),
        season=_season(parts.table("season")),
    )
    _check_rests(found, rests, pair_rests)
    parts.finish()
    return found


def _block(table: Fields) -> BlockDefaults:
    more = table.table("rir-more")
    return BlockDefaults(
        lighter_every=table.whole("lighter-every"),
        lighter_sets=table.number("lighter-sets", None),
        lighter_load=table.number("lighter-load", None),
        lighter_rir=table.whole("lighter-rir"),
        minimum_sets=table.number("minimum-sets", None),
        rise_most=table.number("rise-most", None),
        first_above_now=table.number("first-above-now", None),
        first_share=table.number("first-share", None),
        away_share=table.number("away-share", None),
        return_after=table.whole("return-after"),
        return_twice_after=table.whole("return-twice-after"),
        reps_step=table.number("reps-step", None),
        rir_more=MappingProxyType({experience: more.wholes(experience) for experience in EXPERIENCES}),
    )


def _season(table: Fields) -> SeasonDefaults:
    return SeasonDefaults(
        weeks=table.whole("weeks"),
        block_weeks=table.span("block-weeks"),
        specialised_most=table.whole("specialised-most"),
        running_most=table.whole("running-most"),
        usual_kept=table.number("usual-kept", None),
    )


def _bands(table: Fields) -> Bands:
    goals = {goal: table.table(goal) for goal in GOALS}
    bands = {goal: {e: _band(row, e) for e in EMPHASES if e != "none"} for goal, row in goals.items()}
    return MappingProxyType({goal: MappingProxyType(row) for goal, row in bands.items()})


def _band(table: Fields, key: str) -> Band:
    least, most = table.span(key)
    return float(least), float(most)


def _rests(table: Fields, keys: tuple[str, ...]) -> Rests:
    return MappingProxyType({key: table.wholes(key) for key in keys})


def _some_goals(table: Fields, kind: str) -> Rests:
    """The rests of a kind of pair, for the goals that have any."""
    return MappingProxyType({goal: table.wholes(f"{goal}-{kind}") for goal in GOALS if f"{goal}-{kind}" in table.row})


def _check_rests(found: Defaults, rests: Fields, pair_rests: Fields) -> None:
    """A fault for every rest that is not on the list of round ones."""
    listed = rests.wholes("round")
    for goal, kinds in found.rests.items():
        for kind, seconds in kinds.items():
            _check_round(rests, f"{goal}.{kind}", seconds, listed)
    for paired in (found.pair_rests, found.single_pair_rests, found.heavy_pair_rests):
        for goal, seconds in paired.items():
            _check_round(pair_rests, goal, seconds, listed)


def _check_round(table: Fields, key: str, seconds: tuple[int, ...], listed: tuple[int, ...]) -> None:
    for rest in seconds:
        if rest not in listed:
            table.fault(f"{key} holds {rest}", "take a rest of the list `round`")
