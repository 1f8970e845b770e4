"""One raw table turned into a caution, an age group or a position; what is amiss is faulted in its `Fields`."""

from __future__ import annotations

from setwright.catalogue.cautions import AgeGroup, Caution, ClientLimits, Position
from setwright.catalogue.fields import Fields


def parse_caution(f: Fields) -> Caution:
    """One caution from its [[caution]] table."""
    return Caution(
        id=f.text("id"),
        name=f.text("name"),
        limits=_limits(f),
        needs_clearance=f.flag("needs_clearance"),
        sentence=f.text("sentence"),
        see_first=f.optional_text("see_first"),
        emergency=f.optional_text("emergency"),
        aliases=f.texts("aliases"),
    )


def parse_age_group(f: Fields) -> AgeGroup:
    """One age group from its [[age]] table."""
    return AgeGroup(
        id=f.text("id"),
        name=f.text("name"),
        youngest=f.whole("youngest"),
        oldest=f.whole("oldest"),
        limits=_limits(f),
        sentence=f.text("sentence"),
        least_sets=f.number("least_sets", 0.0),
        hold_days=f.whole("hold_days") if "hold_days" in f.row else 1,
        dose_sets=f.span("dose_sets") if "dose_sets" in f.row else None,
    )


def parse_position(key: str, f: Fields) -> Position:
    """One position from its [position.ID] table."""
    return Position(
        id=key,
        name=f.text("name"),
        exercises=f.texts("exercises"),
        slots=f.texts("slots"),
        words=f.texts("words"),
        excepted=f.texts("excepted"),
        holds=f.flag("holds"),
        pins=f.flag("pins"),
    )


def _limits(f: Fields) -> ClientLimits:
    """The limits of a caution or an age group; a field that is left out asks nothing."""
    return ClientLimits(
        closes_joints=frozenset(f.texts("closes_joints")),
        closes_positions=frozenset(f.texts("closes_positions")),
        warns_positions=frozenset(f.texts("warns_positions")),
        rir_least=_whole(f, "rir_least", 0, 5) or 0,
        reps_least=_whole(f, "reps_least", 0, 15) or 0,
        techniques_off=f.flag("techniques_off"),
        rest_least=_whole(f, "rest_least", 0, 300) or 0,
        sets_most=_whole(f, "sets_most", 2, 10),
    )


def _whole(f: Fields, key: str, least: int, most: int) -> int | None:
    """A whole number within its ends; None where it is left out or faulted."""
    if key not in f.row:
        return None
    value = f.whole(key)
    if not least <= value <= most:
        f.fault(f"{key} is {value}", f"expected {least} to {most}")
        return None
    return value
