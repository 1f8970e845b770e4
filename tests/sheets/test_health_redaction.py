"""No caution and no age stands in what a client is handed, whichever the catalogue has and however it is said."""

from __future__ import annotations

import json
from typing import Any

import pytest
from handed import PAIRS, document, shipped

from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.caution import caution_sentences
from setwright.solver.sheets.document.redaction import tells_of_health
from setwright.solver.sheets.handout.handout import Handout, handout_of

OFF = [rule for rule in RULES if rule.startswith("caution")]


def noted(title: str, tag: str, age: int | None) -> dict[str, Any]:
    """A private week of a client with a caution, a clearance and an age, and a title that tells of one of them."""
    said = document(PAIRS)
    client = said["brief"]["client"]
    client["cautions"] = [{"tag": tag, "said_by": "E47-SAYS"}]
    client["clearance"] = {"by": "DR-BLOGGS", "on": "2026-01-02"}
    if age is not None:
        client["age"] = age
    said["brief"]["title"] = title
    said["brief"]["rules"] = dict.fromkeys(OFF, "off")
    said["assumed"] = [f"caution {tag}: as the client says", f"caution {tag}: said 2 times", f"age {age}: aged 60"]
    said["overridden"] = [{"id": rule, "said": "off", "sentence": "x"} for rule in OFF]
    return said


def text_of(h: Handout) -> str:
    """All that is handed over but the caution that closes every sheet."""
    shown = [h.title, h.client, h.goal, h.asked, h.why, h.left_out, h.sessions, h.muscles, h.made_by]
    return (json.dumps(dict(h.document)) + repr(shown)).lower()


@pytest.mark.parametrize("tag", shipped().cautions)
def test_no_caution_is_handed_over(tag: str) -> None:
    caution = shipped().cautions[tag]
    for title in (caution.name, *caution.aliases):
        if title == "expecting":
            continue
        h = handout_of(noted(title, tag, None), shipped())
        text = text_of(h)
        assert h.title == "Training week"
        for word in ("e47-says", "dr-bloggs", 'clearance"', "caution-", f'"{tag}"', caution.name.lower()):
            assert word not in text.replace('"clearance_needed"', ""), (title, word)
        assert h.document["private_left_out"] is True
        assert not h.document["assumed"]


@pytest.mark.parametrize("age", [13, 17, 35, 60, 88])
def test_no_age_is_handed_over(age: int) -> None:
    titles = (f"{age}-year-old", f"Age {age}", f"aged {age}", f"{age} yrs, second block", "Over 60s", "Under 18")
    for title in titles:
        said = noted(title, "wrist", age)
        h = handout_of(said, shipped())
        assert h.title == "Training week", title
        assert '"age"' not in text_of(h) and "aged" not in text_of(h)
        assert h.document["private_left_out"] is True


@pytest.mark.parametrize("title", ["Over 60 minutes", "Under 20 sets", "Block 2 of 4", "40 min at home", "Stage 3"])
def test_a_title_without_an_age_is_kept(title: str) -> None:
    assert not tells_of_health(title, shipped())


def test_an_age_alone_leaves_a_mark_that_something_is_left_out() -> None:
    said = document()
    said["brief"]["client"]["age"] = 35
    h = handout_of(said, shipped())
    assert h.document["private_left_out"] is True
    assert "age" not in h.document["brief"]["client"]


def test_none_of_the_coachs_sentences_is_handed_over() -> None:
    """What the terminal says of every caution and age, sentence by sentence."""
    for tag in shipped().cautions:
        said = noted("Autumn", tag, 64)
        h = handout_of(said, shipped())
        for sentence in caution_sentences(_brief(tag), shipped()):
            for part in sentence.split(". "):
                assert part.lower() not in text_of(h)


def _brief(tag: str) -> Any:
    from setwright.solver.brief.parsed_brief import parse_brief

    raw = {"days": [{"minutes": 40}], "client": {"age": 64, "cautions": [{"tag": tag}]}}
    return parse_brief(raw, shipped(), "").brief
