"""The glossary is in order, explains each word once, and sends a reader to places that are there."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[2]))
from tests.docs.pages import ROOT, text_of

SOLVER = ROOT / "solver"


def table(title: str) -> list[list[str]]:
    """The cells of one table's rows, without its head."""
    part = text_of(ROOT / "docs" / "glossary.md").split(f"## {title}\n")[1].split("\n## ")[0]
    rows = [line for line in part.splitlines() if line.startswith("| ")][1:]
    return [[cell.strip() for cell in row.strip("|").split("|")] for row in rows]


@pytest.mark.parametrize(("title", "width"), [("Words of the trade", 2), ("Words of the model", 4)])
def test_each_table_is_in_alphabetical_order_and_whole(title: str, width: int) -> None:
    rows = table(title)
    words = [row[0] for row in rows]
    assert words == sorted(words, key=lambda word: re.sub("[^a-z]+", " ", word.lower())) and len(set(words)) == len(
        words
    )
    assert all(len(row) == width and all(row) for row in rows)


@pytest.mark.parametrize("row", table("Words of the model"), ids=lambda row: row[0])
def test_a_word_of_the_model_is_where_the_glossary_says(row: list[str]) -> None:
    found = re.fullmatch(r"`([a-z_/]+)`(?: \(`(\w+)`\))?", row[3])
    assert found, row[3]
    room, name = SOLVER / found[1], found[2]
    files = sorted(room.rglob("*.py")) if room.is_dir() else [room.with_suffix(".py")]
    sources = [text_of(file) for file in files]
    assert sources
    if name:
        assert any(re.search(rf"\b{name}\b", source) for source in sources), f"{name} is not in {room}"
        everywhere = (text_of(file) for file in SOLVER.rglob("*.py"))
        assert any(re.search(rf"^ *(?:class|def) {name}\b", source, flags=re.M) for source in everywhere)
