"""A block's document, words, chart and cards: whole, read back as they were, and without a health note."""

from __future__ import annotations

import json
import sys
from datetime import date
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import jsonschema
import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "uses"))
from block_bases import CATALOGUE, NAMES, base_of, block_of

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.auditing import audit
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.blocks.handouts import block_handouts
from setwright.solver.sheets.document.blocks.block_document import block_document
from setwright.solver.sheets.document.blocks.block_reader import read_block
from setwright.solver.sheets.document.printed_schema import block_schema
from setwright.solver.sheets.formats import written
from setwright.solver.sheets.handout.values import CardLine
from setwright.solver.sheets.screen.over_time.block import block_text
from setwright.solver.sheets.screen.over_time.block_plot import drawn_block
from setwright.solver.uses.blocks.ask import BlockAsk, Span
from setwright.solver.uses.blocks.block import Block
from setwright.solver.uses.blocks.planning import plan_block

OFF = (Span(date(2026, 1, 12), date(2026, 1, 18)),)
ASK = BlockAsk(6, date(2026, 1, 5), lighter_every=3, off=OFF, now=(("chest", 6.0),))
LIFTS = (("dumbbell-bench-press", "20x10"),)
CAUTION_WORDS = ("shoulder trouble", '"clearance":', '"cautions":', '"age":')


@pytest.mark.parametrize("name", NAMES)
def test_a_block_is_read_back_as_it_was_written(name: str) -> None:
    document = json.loads(json.dumps(block_document(block_of(name, ASK), private=True)))
    jsonschema.Draft202012Validator(block_schema()).validate(document)
    assert block_document(read_block(document, CATALOGUE), private=True) == document


def test_the_same_ask_gives_the_same_block() -> None:
    parsed, week = base_of("two-30-pairs")
    one, two = (plan_block(parsed, CATALOGUE, ASK, base=week) for _ in range(2))
    assert isinstance(one, Block) and isinstance(two, Block)
    assert block_document(one) == block_document(two)


def spoilt(**more: Any) -> dict[str, Any]:
    return block_document(block_of("novice-home", BlockAsk(4)), private=True) | more


@pytest.mark.parametrize(
    ("document", "said"),
    [
        ([], "expected 'setwright.block/1'"),
        ({"schema": "setwright.week/1"}, "expected 'setwright.block/1'"),
        (spoilt(weeks=[]), "are not those that its ask gives"),
        (spoilt(unit="stone"), "unit"),
    ],
)
def test_what_is_no_block_is_refused(document: Any, said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        read_block(document, CATALOGUE)


def test_the_text_has_a_row_for_each_week_and_the_rule_and_says_what_is_convention() -> None:
    text = block_text(block_of("novice-home", ASK, LIFTS))
    rows = [line for line in text.splitlines() if line[:4].strip().isdigit()]
    assert [row.split()[0] for row in rows] == ["1", "2", "3", "4", "5", "6"]
    assert "no sessions" in rows[1] and "lighter" in rows[4]
    assert "3x8@18" in text and "2x" in text
    for part in ("Progression: Repetitions rise first", "Conventions, no source", "Rogerson et al. 2024", "Caution:"):
        assert part in text
    assert all(len(line) <= 100 for line in text.splitlines())
    assert all(len(line) <= 80 for line in block_text(block_of("novice-home", ASK, LIFTS), 80).splitlines())


def test_the_minimum_dose_says_for_whom_it_holds() -> None:
    """Bickel et al. 2011 and Spiering et al. 2021, as the evidence file has them: younger adults, load kept."""
    ask = BlockAsk(3, date(2026, 1, 5), minimum=OFF)
    text = " ".join(block_text(block_of("novice-home", ask)).split())
    assert "33 % of the dose kept muscle size for 32 weeks in adults of 20-35 years" in text
    assert "2 sessions of 2-3 sets are the least" in text


def test_no_sheet_of_a_block_carries_a_health_note() -> None:
    block = block_of("shoulder-caution", ASK)
    said = [block_text(block), drawn_block(block), json.dumps(block_document(block))]
    for _, handout in block_handouts(block):
        said += [written(name, handout).decode() for name in ("md", "json", "csv", "html")]
    assert not [word for text in said for word in CAUTION_WORDS if word in text.lower()]
    assert block_document(block)["private_left_out"] is True
    assert block_document(block, private=True)["brief"]["client"]["cautions"]


def test_every_weeks_card_says_its_place_its_dates_and_its_targets() -> None:
    block = block_of("novice-home", ASK, LIFTS)
    handouts = dict(block_handouts(block))
    assert sorted(handouts) == [1, 3, 4, 5, 6]
    assert handouts[3].week == "Week 3/6" and handouts[3].start == date(2026, 1, 19)
    loads = [line.load for session in handouts[3].sessions for line in session.lines]
    assert "18 kg a dumbbell x 9" in loads
    assert all(loads)
    uids = {n: [x for x in written("ics", h).splitlines() if x.startswith(b"UID")] for n, h in handouts.items()}
    assert len({uid for week in uids.values() for uid in week}) == sum(len(week) for week in uids.values())


BARBELLS = (
    ("barbell-romanian-deadlift", "100x8, 2 left"),
    ("barbell-bench-press", "85x8, 2 left"),
    ("barbell-deadlift", "140x5, 2 left"),
    ("hack-squat", "120x10"),
)
PLATES = (20.0, 20.0, 15.0, 10.0, 5.0, 2.5)
"""Pairs; with a bar of 20 kg steps of 5 kg can be built."""


def test_the_cards_of_a_block_ramp_up_with_loads_that_can_be_built() -> None:
    parsed, week = base_of("pins-exact", lifts=dict(BARBELLS), owned={"bar": 20, "plates": list(PLATES)})
    block = plan_block(parsed, CATALOGUE, BlockAsk(6, lighter_every=6), base=week)
    assert isinstance(block, Block)
    handouts = dict(block_handouts(block))
    lifts: dict[str, list[CardLine]] = {}
    for number in sorted(handouts):
        for line in (line for session in handouts[number].sessions for line in session.lines):
            if line.load and " kg x " in line.load and line.ramp_up:
                lifts.setdefault(line.exercise, []).append(line)
    assert set(lifts) >= {"barbell-romanian-deadlift", "barbell-bench-press", "barbell-deadlift", "hack-squat"}
    for lines in lifts.values():
        assert len({line.ramp_up for line in lines}) > 1, "lighter in the lighter week"
        for line in lines:
            assert line.load is not None
            working = float(line.load.split()[0])
            weights = [float(part.split()[0]) for part in line.ramp_up.split(", ")]
            assert all(weight % 5 == 0 and weight < working for weight in weights), line.ramp_up
            assert weights == sorted(weights) and "half load" not in line.ramp_up
    squat, press = lifts["hack-squat"][0], lifts["barbell-bench-press"][0]
    assert (press.load, press.ramp_up) == ("85 kg x 6", "40 kg x 8, 55 kg x 5, 70 kg x 2")
    assert press.plates == "20 + 10 + 2.5 a side" and squat.plates.endswith(" a side")


def test_where_no_load_is_known_ramp_up_is_a_share() -> None:
    handouts = dict(block_handouts(block_of("pins-exact", BlockAsk(2, lighter_every=0))))
    said = {line.ramp_up for session in handouts[1].sessions for line in session.lines}
    assert "half load x 8, 70 % x 5, 85 % x 2" in said and not [words for words in said if " kg" in words]


def test_no_card_is_written_while_a_clearance_is_missing() -> None:
    """Of the cautions that call for one, those that the kept week is sound under."""
    tried = 0
    for tag in (caution.id for caution in CATALOGUE.cautions.values() if caution.needs_clearance):
        parsed, week = base_of("shoulder-caution", client={"cautions": [{"tag": tag}]})
        if audit(resolve(parsed.brief, CATALOGUE), week).broken:
            continue
        tried += 1
        block = plan_block(parsed, CATALOGUE, BlockAsk(2, lighter_every=0), base=week)
        assert isinstance(block, Block)
        assert block_text(block).startswith("BEFORE THE FIRST SESSION")
        with pytest.raises(SetwrightError, match="a clearance is missing"):
            list(block_handouts(block))
    assert tried


def test_the_chart_holds_every_week_and_its_sets_and_loads_in_words() -> None:
    block = block_of("novice-home", ASK, LIFTS)
    svg = ElementTree.fromstring(drawn_block(block))
    said = next(part.text for part in svg if part.tag.endswith("desc")) or ""
    assert f"All lifts: week 1 {block.weeks[0].sets} sets, week 3" in said
    assert "Dumbbell bench press: week 1 " in said and "at 18 kg" in said
    bars = [part for part in svg.iter() if part.get("class") == "bar"]
    lifts = {entry.exercise for entry in block.base_week.entries}
    assert len(bars) == 5 * (1 + len(lifts))
