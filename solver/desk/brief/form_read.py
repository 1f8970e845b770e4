"""The form of a brief read: its fields as a raw brief, laid over the brief before, so that what it shows not stays."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief, raw_of
from setwright.solver.brief.phrase.lexicon import lexicon_of
from setwright.solver.brief.schema import Brief
from setwright.solver.desk.brief.field_read import (
    clauses_said,
    lifts_said,
    lines,
    names_said,
    number,
    place_said,
    put,
)
from setwright.solver.desk.brief.form_values import lift_words
from setwright.solver.desk.forms import Fields
from setwright.solver.rulebook import RULES


def brief_of_form(fields: Fields, before: Brief, catalogue: Catalogue) -> ParsedBrief:
    """The brief that a form says; raises UsageFault with every fault of its fields."""
    raw = raw_of(before)
    faults: list[Fault] = []
    raw |= {"title": fields.get("title", "").strip(), "any_order": "any_order" in fields}
    raw["days"] = list(_days(fields, before, catalogue))
    put(raw, "rest_days_between", number(fields.get("rest_days_between")) if raw["any_order"] else None)
    put(raw, "equipment", place_said(fields.get("place"), catalogue))
    for field in ("goal", "reps", "dose"):
        put(raw, field, fields.get(field))
    raw["without"] = names_said(fields, "without", ("item",), catalogue)
    raw["avoid"] = lifts_said(fields, "avoid", catalogue)
    raw["dislike"], raw["like"] = lifts_said(fields, "dislike", catalogue), names_said(fields, "like", (), catalogue)
    raw["must"] = names_said(fields, "must", ("movement",), catalogue)
    raw["muscles"] = dict(_muscles(fields, catalogue))
    raw["pins"] = clauses_said(fields, "pins", "pin", catalogue, faults)
    raw["other"] = clauses_said(fields, "sport", "sport", catalogue, faults, "other")
    for field in ("pairs", "techniques"):
        put(raw, field, {"yes": True, "no": False}.get(fields.get(field, "")))
    put(raw, "rir_more", number(fields.get("rir_more")))
    share = number(fields.get("keep_share"))
    put(raw, "keep_share", share / 100 if isinstance(share, int | float) else share)
    raw["owned"] = _owned(fields, raw.get("owned", {}), catalogue)
    raw["client"] = _client(fields, raw.get("client", {}), catalogue)
    put(raw, "lifts", _known(fields, before, catalogue, faults))
    raw["clock"] = _clock(fields, raw.get("clock", {}))
    try:
        parsed = parse_brief(raw, catalogue, "", tuple(RULES))
    except UsageFault as error:
        raise UsageFault([*faults, *error.faults]) from None
    if faults:
        raise UsageFault(faults)
    return parsed


def _days(fields: Fields, before: Brief, catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    """The rows of the week that have minutes; what the form does not show of a day stays with its weekday."""
    kept = {day["weekday"]: day for day in raw_of(before)["days"] if "weekday" in day}
    for row in WEEKDAYS:
        minutes = number(fields.get(f"{row}-minutes"))
        if minutes is None:
            continue
        day = dict(kept.get(row, {})) | {"minutes": minutes, "weekday": row}
        put(day, "focus", fields.get(f"{row}-focus"))
        put(day, "equipment", place_said(fields.get(f"{row}-place"), catalogue))
        if "any_order" in fields:
            del day["weekday"]
        yield day


def _muscles(fields: Fields, catalogue: Catalogue) -> Iterator[tuple[str, dict[str, Any]]]:
    """What is asked of each group and muscle that something is asked of."""
    for name in (*catalogue.groups, *catalogue.muscles):
        ask: dict[str, Any] = {}
        put(ask, "emphasis", fields.get(f"{name}-emphasis"))
        for field, part in (("at_least", "least"), ("at_most", "most"), ("days_at_least", "days")):
            put(ask, field, number(fields.get(f"{name}-{part}")))
        if ask:
            yield name, ask


def _owned(fields: Fields, before: Mapping[str, Any], catalogue: Catalogue) -> dict[str, Any]:
    owned = dict(before) | {"safeties": "safeties" in fields, "busy": "busy" in fields}
    for field in ("dumbbell_max", "dumbbell_step", "bar"):
        put(owned, field, number(fields.get(field)))
    owned["plates"] = [number(word) for word in fields.get("plates", "").replace(";", ",").split(",") if word.strip()]
    owned["single"] = names_said(fields, "single", ("item",), catalogue)
    return owned


def _client(fields: Fields, before: Mapping[str, Any], catalogue: Catalogue) -> dict[str, Any]:
    """Who trains, with the health notes; who said a caution, and when, stays with it."""
    client = dict(before) | {"trains_alone": "alone" in fields}
    for field in ("experience", "unit"):
        put(client, field, fields.get(field))
    put(client, "age", number(fields.get("age")))
    kept = {caution["tag"]: caution for caution in before.get("cautions", ())}
    ticked = [tag for tag in catalogue.cautions if f"caution-{tag}" in fields]
    client["cautions"] = [kept.get(tag, {"tag": tag}) for tag in ticked]
    cleared = {part: fields.get(f"clearance_{part}", "").strip() for part in ("by", "on", "limits")}
    put(client, "clearance", cleared if any(cleared.values()) else None)
    return client


def _known(fields: Fields, before: Brief, catalogue: Catalogue, faults: list[Fault]) -> dict[str, Any] | None:
    """What is known of lifts, LIFT = SET a line; None where the week is to name no loads.

    A line that says what it said keeps its day, which no line shows.
    """
    found: dict[str, Any] = {}
    kept = {(lift, lift_words(known)): known for lift, known in (before.lifts or {}).items()}
    lexicon = lexicon_of(catalogue)
    for line in lines(fields, "lifts"):
        name, mark, known = line.partition("=")
        if not (mark and name.strip() and known.strip()):
            faults.append(Fault("lifts", f"got {line!r}, expected a lift, = and a set", "bench press = 80x8, 2 left"))
        else:
            lift = lexicon.resolve(name.strip(), ("exercise",))
            same = kept.get((lift[1], known.strip())) if lift else None
            found[name.strip()] = known.strip() if same is None else same.model_dump(exclude_none=True)
    return found if found or "loads" in fields else None


def _clock(fields: Fields, before: Mapping[str, Any]) -> dict[str, Any]:
    clock = dict(before)
    for field in ("warm_up", "spare"):
        minutes = number(fields.get(field))
        put(clock, field, round(60 * minutes) if isinstance(minutes, int | float) else minutes)
    return clock
