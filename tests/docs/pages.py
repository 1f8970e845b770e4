"""The pages that a reader is given, and the blocks and command lines on them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).parents[2]
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "docs").glob("*.md"))]

STORIES = [ROOT / "docs" / f"{name}.md" for name in ("book", "a-season")]
"""Pages whose commands stand on each other: they are run in order, in a folder and with a book of their own."""


def text_of(page: Path) -> str:
    """A page's text."""
    return page.read_text(encoding="utf-8")


def told(page: Path) -> list[tuple[str, str]]:
    """(kind, body) of every fenced block of a page in order."""
    return re.findall(r"^```(\w+)\n(.*?)^```", text_of(page), flags=re.M | re.S)


def files_of(page: Path) -> dict[str, str]:
    """Name -> content of the tables that a page gives: a csv block after a line that ends with its name."""
    found = re.findall(r"`([\w-]+\.csv)`:\n\n```csv\n(.*?)^```", text_of(page), flags=re.M | re.S)
    return dict(found)


def blocks(page: Path, *kinds: str) -> list[str]:
    """The texts of a page's fenced blocks of these kinds (sh, text, toml), in order."""
    return [
        body for kind, body in re.findall(r"^```(\w+)\n(.*?)^```", text_of(page), flags=re.M | re.S) if kind in kinds
    ]


def command_lines(*kinds: str, pages: Sequence[Path] = PAGES) -> list[str]:
    """Every line that begins with setwright in the blocks of these kinds on some pages, each once, in order.

    A line that ends with a backslash goes on in the next; words after several blanks are a comment.
    """
    joined = (re.sub(r" *\\\n *", " ", block) for page in pages for block in blocks(page, *kinds))
    lines = (re.split(r" {3,}", line.strip())[0] for block in joined for line in block.splitlines())
    return list(dict.fromkeys(line for line in lines if line.startswith("setwright ")))
