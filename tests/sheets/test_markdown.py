"""The week as Markdown, read by a CommonMark parser that is not ours (markdown-it-py)."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from handed import PAIRS, THREE, handed
from hostile import NAMES, hostile
from markdown_it import MarkdownIt
from markdown_it.token import Token

from setwright.solver.sheets.common.sanitise import isolated
from setwright.solver.sheets.plain.markdown import markdown_bytes

PARSER = MarkdownIt("commonmark", {"html": True}).enable(["table", "strikethrough"])


def tokens(text: str) -> list[Token]:
    """Every token, those within lines too."""
    return [token for block in PARSER.parse(text) for token in (block, *(block.children or ()))]


def shape(text: str) -> list[str]:
    return [f"{t.type}/{t.tag}" for t in PARSER.parse(text)]


def said(text: str) -> str:
    """What a reader sees, without marks."""
    return " ".join(t.content for t in tokens(text) if t.type in ("text", "text_special", "code_inline"))


@pytest.mark.parametrize("name", [THREE, PAIRS])
def test_it_holds_every_line_of_every_session(name: str) -> None:
    h = handed(name)
    text = markdown_bytes(h).decode()
    rows = [[cell.strip() for cell in line.strip("|").split("|")] for line in text.splitlines() if line.startswith("|")]
    for session in h.sessions:
        assert f"## {session.title}: {session.minutes} min" in text
        for x in session.lines:
            assert [x.label, x.name, f"{x.sets} x {x.reps}", str(x.rir), x.rest, x.technique] in rows
    assert all(sentence in text.replace("\\", "") for sentence in h.why)
    assert shape(text).count("table_open/table") == len(h.sessions) + 2


def test_exclusions_and_caution_close_it() -> None:
    text = markdown_bytes(handed(PAIRS)).decode()
    assert "**Left out by your coach:** Goblet squat." in text
    assert "**Caution:** A general planning aid, not medical advice." in text
    assert "<https://eparmedx.com>" in text


@pytest.mark.parametrize("name", NAMES)
def test_a_name_marks_nothing_up(name: str) -> None:
    text, plain = markdown_bytes(hostile(NAMES[name])).decode(), markdown_bytes(hostile("plain")).decode()
    kinds = {t.type for t in tokens(text)} - {"text_special"}
    assert kinds == {t.type for t in tokens(plain)} - {"text_special"}
    assert [s for s in shape(text) if "code" not in s] == shape(plain)
    links = [str(t.attrs["href"]) for t in tokens(text) if t.type == "link_open"]
    assert set(links) <= {"https://eparmedx.com"}


@pytest.mark.parametrize("name", NAMES)
def test_a_name_does_not_vanish(name: str) -> None:
    letters = re.sub(r"\s", "", isolated(NAMES[name]))
    assert letters in re.sub(r"\s", "", said(markdown_bytes(hostile(NAMES[name])).decode()))


def test_a_link_to_a_page_is_one_and_nothing_else_is() -> None:
    h = handed()
    good, bad = "https://example.com/a_(b)", "javascript:alert(1)"
    first, second, *rest = h.sessions[0].lines
    lines = (replace(first, link=good), replace(second, link=bad), *rest)
    text = markdown_bytes(replace(h, sessions=(replace(h.sessions[0], lines=lines),))).decode()
    links = [str(t.attrs["href"]) for t in tokens(text) if t.type == "link_open"]
    assert links == ["https://example.com/a_%28b%29", "https://eparmedx.com"]
