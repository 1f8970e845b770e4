"""The form of a brief read: its fields as a raw brief, laid over the brief before, so that what it shows not stays."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief, raw_of
from setwright.solver.brief.phrase.lexicon import Kind, lexicon_of
from setwright.solver.brief.phrase.parse import draft_phrase
from setwright.solver.brief.schema import Brief
from setwright.solver.desk.forms import Fields
from setwright.solver.rulebook import RULES

ONE_DAY: Final = "1 day x 40 min"
"""A phrase is read whole, so a clause of the form stands behind a day that is left aside again."""


def brief_of_form(fields: Fields, before: Brief, catalogue: Catalogue) -> ParsedBrief:
    """The brief that a form says; raises UsageFault with every fault of its fields."""
    raw = raw_of(before)
    faults: list[Fault] = []
    raw |= {"title": fields.get("title", "").strip(), "any_order": "any_order" in fields}
    raw["days"] = list(_days(fields, before, catalogue))
    _put(raw, "rest_days_between", _number(fields.get("rest_days_between")) if raw["any_order"] else None)
    _put(raw, "equipment", _place(fields.get("place"), catalogue))
    for field in ("goal", "reps", "dose"):
        _put(raw, field, fields.get(field))
    raw["without"] = _names(fields, "without", ("item",), catalogue)
    raw["avoid"] = _lifts(fields, "avoid", catalogue)
    raw["dislike"], raw["like"] = _lifts(fields, "dislike", catalogue), _names(fields, "like", (), catalogue)
    raw["must"] = _names(fields, "must", ("movement",), catalogue)
    raw["muscles"] = dict(_muscles(fields, catalogue))
    raw["pins"] = _clauses(fields, "pins", "pin", catalogue, faults)
    raw["other"] = _clauses(fields, "sport", "sport", catalogue, faults, "other")
    for field in ("pairs", "techniques"):
        _put(raw, field, {"yes": True, "no": False}.get(fields.get(field, "")))
    _put(raw, "rir_more", _number(fields.get("rir_more")))
    share = _number(fields.get("keep_share"))
    _put(raw, "keep_share", share / 100 if isinstance(share, int | float) else share)
    raw["owned"] = _owned(fields, raw.get("owned", {}), catalogue)
    raw["client"] = _client(fields, raw.get("client", {}), catalogue)
    _put(raw, "lifts", _known(fields, before, faults))
    raw["clock"] = _clock(fields, raw.get("clock", {}))
    try:
        parsed = parse_brief(raw, catalogue, "", tuple(RULES))
    except UsageFault as error:
        raise UsageFault([*faults, *error.faults]) from None
    if faults:
        raise UsageFault(faults)
    return parsed


def _put(table: dict[str, Any], field: str, value: Any) -> None:
    """Set a field, or take it away where nothing is said."""
    if value in (None, ""):
        table.pop(field, None)
    else:
        table[field] = value


def _number(text: str | None) -> Any:
    """A number of a field, the text itself where it is none, None where nothing stands there."""
    said = (text or "").strip().replace(",", ".")
    try:
        found = float(said)
    except ValueError:
        return said or None
    return int(found) if found == int(found) else found


def _days(fields: Fields, before: Brief, catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    """The rows of the week that have minutes; what the form does not show of a day stays with its weekday."""
    kept = {day["weekday"]: day for day in raw_of(before)["days"] if "weekday" in day}
    for row in WEEKDAYS:
        minutes = _number(fields.get(f"{row}-minutes"))
        if minutes is None:
            continue
        day = dict(kept.get(row, {})) | {"minutes": minutes, "weekday": row}
        _put(day, "focus", fields.get(f"{row}-focus"))
        _put(day, "equipment", _place(fields.get(f"{row}-place"), catalogue))
        if "any_order" in fields:
            del day["weekday"]
        yield day


def _place(text: str | None, catalogue: Catalogue) -> Any:
    """A kit or an item as one word, several as a list; None where nothing is said."""
    lexicon = lexicon_of(catalogue)
    said = (text or "").strip()
    if not said:
        return None
    if known := lexicon.resolve(said, ("kit", "item")):
        return known[1] if known[0] == "kit" else [known[1]]
    words = [word.strip() for word in said.replace(" and ", ",").split(",") if word.strip()]
    return words if len(words) > 1 else said


def _lines(fields: Fields, field: str) -> list[str]:
    """The lines of a field that say something."""
    return [line.strip() for line in fields.get(field, "").splitlines() if line.strip()]


def _names(fields: Fields, field: str, kinds: tuple[Kind, ...], catalogue: Catalogue) -> list[str]:
    """The names of a field, one a line or with commas between them."""
    lexicon = lexicon_of(catalogue)
    found: list[str] = []
    for line in _lines(fields, field):
        whole = lexicon.resolve(line, kinds or ("exercise", "item"))
        found += [line] if whole else [word.strip() for word in line.split(",") if word.strip()]
    return found


def _lifts(fields: Fields, field: str, catalogue: Catalogue) -> list[str]:
    """The exercises of a field; a word such as squats stands for all that are called so."""
    lexicon = lexicon_of(catalogue)
    found: list[str] = []
    for name in _names(fields, field, ("exercise", "movement"), catalogue):
        kinds: tuple[Kind, ...] = ("exercise", "movement") if field == "avoid" else ("item", "exercise", "movement")
        known = lexicon.resolve(name, kinds)
        found += [name] if known is None or known[0] == "item" else lexicon.family(name, *known)
    return list(dict.fromkeys(found))


def _muscles(fields: Fields, catalogue: Catalogue) -> Iterator[tuple[str, dict[str, Any]]]:
    """What is asked of each group and muscle that something is asked of."""
    for name in (*catalogue.groups, *catalogue.muscles):
        ask: dict[str, Any] = {}
        _put(ask, "emphasis", fields.get(f"{name}-emphasis"))
        for field, part in (("at_least", "least"), ("at_most", "most"), ("days_at_least", "days")):
            _put(ask, field, _number(fields.get(f"{name}-{part}")))
        if ask:
            yield name, ask


def _clauses(
    fields: Fields, field: str, word: str, catalogue: Catalogue, faults: list[Fault], target: str = ""
) -> list[Any]:
    """The lines of a field, each read as the clause that a word leads in a phrase; what is wrong is kept."""
    found: list[Any] = []
    for line in _lines(fields, field):
        raw, wrong = draft_phrase(f"{ONE_DAY}, {word} {line}", catalogue)
        faults += (Fault(field, fault.said, fault.remedy) for fault in wrong)
        found += raw.get(target or field, [])
    return found


def _owned(fields: Fields, before: Mapping[str, Any], catalogue: Catalogue) -> dict[str, Any]:
    owned = dict(before) | {"safeties": "safeties" in fields, "busy": "busy" in fields}
    for field in ("dumbbell_max", "dumbbell_step", "bar"):
        _put(owned, field, _number(fields.get(field)))
    owned["plates"] = [_number(word) for word in fields.get("plates", "").replace(";", ",").split(",") if word.strip()]
    owned["single"] = _names(fields, "single", ("item",), catalogue)
    return owned


def _client(fields: Fields, before: Mapping[str, Any], catalogue: Catalogue) -> dict[str, Any]:
    """Who trains, with the health notes; who said a caution, and when, stays with it."""
    client = dict(before) | {"trains_alone": "alone" in fields}
    for field in ("experience", "unit"):
        _put(client, field, fields.get(field))
    _put(client, "age", _number(fields.get("age")))
    kept = {caution["tag"]: caution for caution in before.get("cautions", ())}
    ticked = [tag for tag in catalogue.cautions if f"caution-{tag}" in fields]
    client["cautions"] = [kept.get(tag, {"tag": tag}) for tag in ticked]
    cleared = {part: fields.get(f"clearance_{part}", "").strip() for part in ("by", "on", "limits")}
    _put(client, "clearance", cleared if any(cleared.values()) else None)
    return client


def _known(fields: Fields, before: Brief, faults: list[Fault]) -> dict[str, Any] | None:
    """What is known of lifts, LIFT = SET a line; None where the week is to name no loads."""
    found: dict[str, Any] = {}
    for line in _lines(fields, "lifts"):
        name, mark, known = line.partition("=")
        if not (mark and name.strip() and known.strip()):
            faults.append(Fault("lifts", f"got {line!r}, expected a lift, = and a set", "bench press = 80x8, 2 left"))
        else:
            found[name.strip()] = known.strip()
    return found if found or "loads" in fields else None


def _clock(fields: Fields, before: Mapping[str, Any]) -> dict[str, Any]:
    clock = dict(before)
    for field in ("warm_up", "spare"):
        minutes = _number(fields.get(field))
        _put(clock, field, round(60 * minutes) if isinstance(minutes, int | float) else minutes)
    return clock
