"""The page: strict HTML that needs nothing from elsewhere, says what the week says, and keeps every text inert."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from itertools import pairwise
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import Element

import html5lib
import pytest
from handed import PAIRS, THREE, handed
from hostile import NAMES, hostile
from unruly import LONG, MARKUP, QUOTES, TEXTS, TURNED, spoilt

from setwright.solver.sheets.charts.bands import bands_chart
from setwright.solver.sheets.charts.client_words import CHART_WORDS
from setwright.solver.sheets.common.caution import SCREENING
from setwright.solver.sheets.common.labels import LABELS
from setwright.solver.sheets.handout.coach import Coach
from setwright.solver.sheets.handout.handout import Handout
from setwright.solver.sheets.html.page import Plots, html_bytes, openable

BOTH = pytest.mark.parametrize("name", [THREE, PAIRS])
PLOTS = Plots(
    curve=((60.0, 48.0), (120.0, 70.0), (240.0, 85.0)),
    intervals=((43.0, 53.0), (63.0, 77.0), (77.0, 93.0)),
    bend=120.0,
    rows=(("Chest", (4.0, 6.0)), ("Lats", (5.0, 7.5))),
    names=("Two days", "Three days"),
)
EXERCISE_PLAN = {
    *("activityDuration", "activityFrequency", "additionalVariable", "exerciseType"),
    *("intensity", "repetitions", "restPeriods", "workload"),
    *("name", "description", "inLanguage", "hasPart", "position"),
}
"""Properties of ExercisePlan that are its own, and those used of Thing and CreativeWork: https://schema.org/ExercisePlan,
read in schema-dts 2.1.0 (npm), the types that are made from schema.org's own vocabulary file."""
QUANTITY = {"value", "minValue", "maxValue", "unitCode", "unitText"}
"""Of https://schema.org/QuantitativeValue, read there too; unitCode takes UN/CEFACT codes: SEC is the second."""


def read(handout: Handout, plots: Plots | None = None) -> Element:
    """The page as a tree; html5lib in its strict way raises on any fault of the HTML."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    found: Element = parser.parse(html_bytes(handout, plots).decode())
    for e in found.iter():
        if isinstance(e.tag, str):
            e.tag = e.tag.rpartition("}")[2]
    return found


def all_of(tree: Element, tag: str) -> list[Element]:
    return list(tree.iter(tag))


def text_of(element: Element) -> str:
    return " ".join("".join(element.itertext()).replace("\u00a0", " ").split())


def marked(tree: Element, word: str) -> list[Element]:
    """The elements of a class."""
    return [e for e in tree.iter() if isinstance(e.tag, str) and word in (e.get("class") or "").split()]


@BOTH
def test_the_page_is_strict_html_and_says_what_the_week_says(name: str) -> None:
    handout = handed(name, Coach(name="Tern Street", lines=("by appointment",)), start=date(2026, 11, 30))
    tree = read(handout)
    text = text_of(tree)
    lines = [line for session in handout.sessions for line in session.lines]
    for said in (handout.title, handout.client, handout.asked, *handout.why, *handout.left_out, handout.caution):
        assert said in text
    assert "Tern Street" in text and "2026-11-30" in text
    cards = marked(tree, "line")
    assert len(cards) == len(lines)
    for line, card in zip(lines, cards, strict=True):
        words = text_of(card)
        for said in (line.label, line.name, f"{line.sets} x {line.reps}", line.rest, line.ramp_up, *line.swaps):
            assert said in words
        assert len(marked(card, "set")) == line.sets


@BOTH
def test_sections_headings_and_links_hang_together(name: str) -> None:
    tree = read(handed(name), PLOTS)
    ids = [e.get("id") for e in tree.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    for e in tree.iter():
        for wanted in (e.get("aria-labelledby") or "").split():
            assert wanted in ids
        if (e.get("href") or "").startswith("#"):
            assert (e.get("href") or "")[1:] in ids
    levels = [int(e.tag[1]) for e in tree.iter() if isinstance(e.tag, str) and re.fullmatch("h[1-6]", e.tag)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


@BOTH
def test_every_box_has_a_label_and_a_name_of_its_own(name: str) -> None:
    tree = read(handed(name))
    labelled = {box for label in all_of(tree, "label") if text_of(label) for box in label.iter() if box is not label}
    boxes = all_of(tree, "input") + all_of(tree, "textarea")
    assert boxes and all(box in labelled or box.get("aria-label") for box in boxes)
    names = [box.get("name") for box in boxes]
    assert len(names) == len(set(names)) and None not in names


def urls(tree: Element) -> Iterator[tuple[str, str]]:
    """Every value that could be fetched or followed, with where it stands."""
    for e in tree.iter():
        for key in ("href", "src", "srcset", "action", "data", "poster", "xlink:href", "formaction", "ping", "style"):
            if e.get(key) is not None:
                yield f"{e.tag} {key}", e.get(key) or ""


@BOTH
def test_nothing_is_fetched_and_only_the_screening_form_is_linked(name: str) -> None:
    tree = read(handed(name), PLOTS)
    assert {(where, url) for where, url in urls(tree) if not url.startswith("#")} == {("a href", SCREENING)}
    scripts = all_of(tree, "script")
    assert [script.get("type") for script in scripts] == ["application/ld+json"]
    (style,) = all_of(tree, "style")
    assert not re.search(r"url\(|@import|@font-face|expression", style.text or "")
    assert not [e.tag for e in tree.iter() if e.tag in ("link", "iframe", "object", "embed", "img", "source", "form")]
    assert not [key for e in tree.iter() for key in e.attrib if str(key).startswith("on")]


def test_an_exercises_own_link_is_a_plain_link_and_a_script_is_none() -> None:
    handout = handed()
    first = handout.sessions[0]
    links = ("https://example.org/squat?a=1&b=2", "javascript:alert(1)", " data:text/html,x")
    lines = tuple(replace(line, link=link) for line, link in zip(first.lines, links, strict=False))
    tree = read(replace(handout, sessions=(replace(first, lines=lines),)))
    found = {url for where, url in urls(tree) if where == "a href" and not url.startswith("#")}
    assert found == {links[0], SCREENING}
    assert links[1] in text_of(tree)
    assert [openable(x) for x in ("HTTPS://x", "http://x", "//x", "file:///x")] == [True, True, False, False]


@pytest.mark.parametrize("kind", TEXTS)
def test_hostile_texts_are_text(kind: str) -> None:
    tree = read(spoilt(handed(PAIRS), TEXTS[kind], labels=True), PLOTS)
    plain = read(handed(PAIRS), PLOTS)
    tags = [e.tag for e in tree.iter() if e.tag not in ("bdi", "p", "span", "a", "pattern", "path", "circle", "defs")]
    usual = [e.tag for e in plain.iter()]
    assert set(tags) <= set(usual) and tags.count("script") == 1 and tags.count("style") == 1
    assert not [key for e in tree.iter() for key in e.attrib if str(key).startswith("on") or key == "autofocus"]
    assert {url for _, url in urls(tree) if not url.startswith("#")} <= {SCREENING}


@pytest.mark.parametrize("name", NAMES)
def test_the_names_that_every_sheet_must_bear_are_text(name: str) -> None:
    tree = read(hostile(NAMES[name]))
    assert len(all_of(tree, "script")) == len(all_of(tree, "style")) == 1 and not all_of(tree, "img")
    assert {url for _, url in urls(tree) if not url.startswith("#")} == {SCREENING}


@pytest.mark.parametrize("text", [MARKUP, QUOTES, LONG, TURNED])
def test_hostile_texts_do_not_vanish(text: str) -> None:
    tree = read(spoilt(handed(), text))
    cards = marked(tree, "line")
    assert all(text in "".join(card.itertext()) for card in cards)
    assert text in "".join(all_of(tree, "h1")[0].itertext())


def test_letters_that_turn_the_line_are_held_in_bdi() -> None:
    """Unicode's bidirectional algorithm, UAX 9: an isolate keeps what it holds from turning its neighbours."""
    tree = read(spoilt(handed(), TURNED))
    parents = {child: parent for parent in tree.iter() for child in parent}
    held = ("bdi", "title", "desc", "text", "script")
    for e in tree.iter():
        if TURNED in (e.text or "") and e.tag not in held and "hidden" not in (e.get("class") or ""):
            assert parents[e].tag == "bdi", e.tag


def test_a_letter_that_no_text_may_hold_is_replaced() -> None:
    data = html_bytes(spoilt(handed(), TEXTS["controls"], labels=True))
    assert not re.search("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]", data.decode()) and "a\ufffdb" in data.decode()


def plan_of(handout: Handout) -> dict[str, Any]:
    (script,) = all_of(read(handout), "script")
    found: dict[str, Any] = json.loads(script.text or "")
    return found


def nodes(node: Any) -> Iterator[dict[str, Any]]:
    if isinstance(node, dict):
        yield node
        for part in node.values():
            yield from nodes(part)
    if isinstance(node, list):
        for part in node:
            yield from nodes(part)


@BOTH
def test_the_plan_uses_the_properties_of_schema_org(name: str) -> None:
    handout = handed(name)
    found = plan_of(handout)
    assert found.pop("@context") == "https://schema.org"
    for node in nodes(found):
        kind = node.pop("@type")
        assert set(node) <= {"ExercisePlan": EXERCISE_PLAN, "QuantitativeValue": QUANTITY}[kind]
    for session, said in zip(handout.sessions, found["hasPart"], strict=True):
        assert said["name"] == session.title
        assert said["activityDuration"] == f"PT{session.minutes}M"
        assert re.fullmatch(r"PT\d+M", said["activityDuration"])
        for line, part in zip(session.lines, said["hasPart"], strict=True):
            low, _, high = line.reps.removesuffix("/side").partition("-")
            assert part["repetitions"] == {"minValue": int(low), "maxValue": int(high or low)}
            minutes, seconds = map(int, line.rest.split(":"))
            assert part["restPeriods"]["value"] == minutes * 60 + seconds
            assert part["additionalVariable"].startswith(f"{line.sets} sets")


@pytest.mark.parametrize("kind", [kind for kind in TEXTS if kind != "controls"])
def test_the_plan_holds_hostile_names_unbroken(kind: str) -> None:
    found = plan_of(spoilt(handed(), TEXTS[kind]))
    assert found["name"] == TEXTS[kind] and found["hasPart"][0]["hasPart"][0]["name"] == TEXTS[kind]


def test_the_plan_names_neither_client_nor_coach() -> None:
    handout = handed(THREE, Coach(name="Tern Street"))
    said = json.dumps(plan_of(replace(handout, client="Client-code-7")))
    assert "Client-code-7" not in said and "Tern Street" not in said


def test_no_health_note_stands_in_the_page() -> None:
    """The week of PAIRS was asked for with a wrist caution."""
    said = html_bytes(handed(PAIRS)).decode().lower()
    without = said.replace(handed(PAIRS).caution.lower(), "")
    assert not re.search(r"\bwrist (caution|pain|injur)|cautions|clearance", without)
    assert "left out by your coach" in said and "goblet squat" in said


def test_the_coachs_words_replace_every_label() -> None:
    """Each label the page uses is asked of the coach's table: none of them stands in English in a page of numbers."""
    words = {name: f"W{place}" for place, name in enumerate(LABELS)}
    tree = read(replace(handed(), coach=handed().coach.model_copy(update={"words": words, "language": "de-CH"})), PLOTS)
    assert (tree.get("lang"), tree.get("dir")) == ("de-CH", "ltr")
    said = text_of(tree)
    for name in ("glance", "why_week", "weekly_sets", "sets_reps", "how_hard", "notes", "caution", "bold_priority"):
        assert words[name] in said
    heads = [text_of(e) for e in all_of(tree, "h2") + all_of(tree, "dt") + all_of(tree, "th")]
    assert not {LABELS[key] for key in LABELS if key[:3] not in ("mon", "wed", "fri")} & set(heads)


def test_every_word_of_the_charts_has_a_label() -> None:
    folder = Path(bands_chart.__code__.co_filename).parent
    used = {
        said
        for name in ("bands", "curve", "pairs", "time_use", "drawing")
        for said in re.findall(
            r'style\.word\(["\']([^"\']+)["\']\)', (folder / f"{name}.py").read_text(encoding="utf-8")
        )
    }
    assert used - set(CHART_WORDS) <= {"What a week"}
    assert set(CHART_WORDS.values()) <= set(LABELS)


def test_plots_stand_in_the_page_when_given() -> None:
    def titles(plots: Plots | None) -> list[str]:
        return [text_of(svg[0]) for svg in all_of(read(handed(), plots), "svg")]

    assert len(titles(None)) == 2 and len(titles(PLOTS)) == 4
    assert {"What a week's minutes buy", "Side by side: Two days, Three days"} < set(titles(PLOTS))


def test_a_day_without_exercises_has_no_card() -> None:
    handout = handed()
    empty = replace(handout.sessions[1], lines=(), minutes=0, seconds=0, seconds_by_kind=())
    tree = read(replace(handout, sessions=(handout.sessions[0], empty, handout.sessions[2])))
    assert len(marked(tree, "session")) == 2
    assert LABELS["nothing"] in text_of(marked(tree, "glance")[0])


def test_the_paper_is_the_coachs() -> None:
    assert b"size: 8.5in 11in" in html_bytes(handed(THREE, Coach(paper="letter")))
    assert b"size: 210mm 297mm" in html_bytes(handed())


def test_the_same_week_gives_the_same_bytes() -> None:
    """Whatever the order of hashing: two fresh interpreters under different seeds."""
    code = "import sys, hashlib; from handed import handed; from setwright.solver.sheets.html.page import html_bytes;"
    code += "print(hashlib.sha256(html_bytes(handed())).hexdigest())"
    path = os.pathsep.join((str(Path(__file__).parent), str(Path(__file__).parents[2] / ".names")))
    digests = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": path},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("0", "1")
    }
    assert len(digests) == 1


@pytest.mark.parametrize(("language", "side"), [("ar", "rtl"), ("he-IL", "rtl"), ("en", "ltr"), ("arn", "ltr")])
def test_a_language_written_from_the_right_turns_the_page_but_no_figures(language: str, side: str) -> None:
    tree = read(handed(THREE, Coach(language=language)))
    assert (tree.get("lang"), tree.get("dir")) == (language, side)
    assert {svg.get("direction") for svg in all_of(tree, "svg")} == {"ltr"}
