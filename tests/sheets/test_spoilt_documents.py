"""Documents that were changed by hand or by a program: each is refused with its place or printed, never a traceback."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from handed import PAIRS, THREE, document, shipped

from setwright.catalogue.faults import UsageFault
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.foreign.foreign_week import read_any
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.json_values import parse_json
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.day_parts import swaps_digest
from setwright.solver.sheets.document.own_figures import STALE
from setwright.solver.sheets.formats import FORMATS, written
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import handout_of

DATED = Coach(start=date(2026, 1, 5))


def faults_of(said: dict[str, Any]) -> list[str]:
    with pytest.raises(UsageFault) as caught:
        handout_of(parse_json(json.dumps(said).encode(), "w.json"), shipped(), where="w.json")
    return [str(fault) for fault in caught.value.faults]


def without_client(said: dict[str, Any]) -> None:
    del said["brief"]["client"]


def without_unit(said: dict[str, Any]) -> None:
    del said["brief"]["client"]["unit"]


def without_what_has_a_default(said: dict[str, Any]) -> None:
    for name in ("client", "other", "rules", "title", "rest_days_between", "owned", "clock", "any_order"):
        said["brief"].pop(name, None)


@pytest.mark.parametrize("spoil", [without_client, without_unit, without_what_has_a_default])
@pytest.mark.parametrize("name", FORMATS)
def test_what_a_brief_leaves_out_has_its_default_in_every_format(
    name: str, spoil: Callable[[dict[str, Any]], None]
) -> None:
    for module in {"pdf": ("typst",), "xlsx": ("xlsxwriter",), "html": ("jinja2",), "ics": ("icalendar",)}.get(
        name, ()
    ):
        pytest.importorskip(module)
    said = document()
    spoil(said)
    handout = handout_of(said, shipped(), DATED)
    assert written(name, handout)
    assert handout.document["brief"]["client"]["unit"] == "kg"


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf"), "half \ud800 a letter"])
@pytest.mark.parametrize("place", ["new", "seconds", "made_by"])
def test_what_no_json_can_hold_is_refused_wherever_it_stands(value: Any, place: str) -> None:
    said = document()
    said["days"][1]["entries"][2][place] = {"deep": [value]}
    fault = faults_of(said)[0]
    assert fault.startswith(f"w.json: days[1].entries[2].{place}.deep[0]: ")
    assert re.search(r"got (nan|inf|-inf), expected a number|half a letter", fault)


def test_a_name_with_half_a_letter_is_refused() -> None:
    said = document()
    said["n\ud800"] = 1
    assert "has a name with half a letter" in faults_of(said)[0]


def test_endless_nesting_and_endless_numbers_are_refused() -> None:
    said = document()
    deep: list[Any] = []
    for _ in range(400):
        deep = [deep]
    said["new"] = deep
    assert faults_of(said) == ["w.json: new: is nested more than 60 deep; name a week that setwright wrote as JSON"]
    with pytest.raises(UsageFault, match="is not JSON"):
        parse_json(b'{"score": ' + b"9" * 5000 + b"}", "w.json")
    said = document()
    said["stimulus"] = 10**400
    assert faults_of(said)[0].startswith("w.json: stimulus: ")


@pytest.mark.parametrize("value", [None, [], "x", 3, {}])
def test_what_the_sheets_read_is_refused_where_it_is_of_another_kind(value: Any) -> None:
    for name in ("made_by", "costs", "assumed", "overridden", "clearance_needed", "stimulus"):
        said = document()
        if type(said[name]) is type(value) or (name == "stimulus" and value == 3):
            continue
        said[name] = value
        assert any(fault.startswith(f"w.json: {name}: ") for fault in faults_of(said))


@pytest.mark.parametrize("brief", [None, 3, [], "mon 40 min"])
def test_a_week_held_against_another_brief_is_read_whatever_its_own_says(brief: Any) -> None:
    asked = parse_brief(document()["brief"], shipped())
    said = {**document(), "brief": {"client": [1], "nonsense": 2}}
    found = read_any(json.dumps(said).encode(), "w.json", shipped(), asked)
    assert changed_week_document(found.document, found.parsed, audit(resolve(asked.brief, shipped()), found.week))
    del said["brief"]
    assert read_any(json.dumps(said).encode(), "w.json", shipped(), asked).week == found.week
    with pytest.raises(UsageFault, match=r"w\.json: brief: got .*, expected an object"):
        read_any(json.dumps({**said, "brief": brief}).encode(), "w.json", shipped(), asked)


# ---- swaps changed by hand


def swap(said: dict[str, Any], *swaps: str) -> dict[str, Any]:
    said["days"][0]["entries"][0]["swaps"] = list(swaps)
    return said


def test_a_closed_lift_among_the_swaps_is_refused_with_what_closes_it() -> None:
    said = document(PAIRS)
    assert "goblet-squat" in said["brief"]["avoid"]
    assert faults_of(swap(said, "goblet-squat", "leg-press")) == [
        f"w.json: days[0].entries[0].swaps[0]: 'goblet-squat' is closed on that day by avoided; {STALE}",
        f"w.json: days[0].entries[0].swaps[1]: 'leg-press' is closed on that day by equipment; {STALE}",
    ]


def test_a_swap_for_other_work_is_refused() -> None:
    assert "'cable-crunch' cannot stand in for hack-squat" in faults_of(swap(document(), "cable-crunch"))[0]


def test_any_change_of_a_swap_is_refused_in_a_document_with_its_digest() -> None:
    said = document()
    lines = [[(entry["exercise"], entry["swaps"]) for entry in day["entries"]] for day in said["days"]]
    said["swaps_digest"] = swaps_digest(lines)
    assert handout_of(said, shipped()).sessions
    first = said["days"][0]["entries"][0]
    assert len(first["swaps"]) == 2
    for other in (first["swaps"][::-1], first["swaps"][:1], []):
        assert faults_of(swap(said, *other)) == [
            f"w.json: swaps: are not the ones that the week was written with; {STALE}"
        ]


def test_what_is_handed_of_a_private_week_says_that_its_cautions_were_left_out_and_is_read_again() -> None:
    handed = dict(handout_of(document(PAIRS), shipped()).document)
    assert handed["private_left_out"] is True
    assert "cautions" not in handed["brief"]["client"]
    assert dict(handout_of(handed, shipped()).document) == handed


def test_a_stand_in_for_what_a_caution_closes_is_printed_without_the_caution() -> None:
    """A goblet squat stands in only while heavier squats are closed, here by a caution that is left out."""
    said = swap(document(), "goblet-squat")
    assert "'goblet-squat' is closed on that day by stand-in" in faults_of(said)[0]
    said["private_left_out"] = True
    del said["swaps_digest"]
    assert handout_of(said, shipped()).sessions
    assert "'cable-crunch' cannot stand in for" in faults_of(swap(said, "cable-crunch"))[0]


def test_a_week_index_that_is_not_the_lines_own_is_refused() -> None:
    said = document(THREE)
    said["stimulus"] += 1
    assert "the entries have" in faults_of(said)[0]
    del said["stimulus"]
    assert faults_of(said) == [
        "w.json: stimulus: is missing, expected the week index; name a week that setwright wrote as JSON"
    ]
