"""Builds the pictures of docs/gallery out of fixed weeks: `python -m tests.gallery [FOLDER]`.

The card is drawn with pdftoppm (Debian's poppler-utils), the page with chromium, the workbook with LibreOffice; a
format or a tool that is not there is named and left out. The weeks are those of tests/sheets/weeks, never solved anew,
so the pictures change only with the sheets.
"""

from __future__ import annotations

import importlib.util
import json
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any, Literal

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / ".names"))
WEEKS = ROOT / "tests" / "sheets" / "weeks"
FOLDER = ROOT / "docs" / "gallery"
DOTS = 84
"""Dots an inch: the card's smallest print can still be read, and a page stays under 90 kB."""


@dataclass(frozen=True)
class Shown:
    """One week of the gallery: its file, the paper, the pages of its card that are shown, and the formats."""

    week: str
    paper: Literal["a4", "letter"]
    pages: tuple[int, ...]
    formats: tuple[str, ...] = ("card",)


SHOWN = (
    Shown("three-40", "a4", (1, 2), ("card", "page", "workbook")),
    Shown("pairs-private", "a4", (2,)),
    Shown("six-90", "letter", (1, 2)),
    Shown("barbell-loads", "a4", (2,)),
)
FORMATS = {
    "card": ("pdf", "typst"),
    "page": ("html", "jinja2"),
    "workbook": ("xlsx", "xlsxwriter"),
}
"""What is shown -> the format of `setwright sheet`, and the library that writes it."""
TOOLS = {"card": ("pdftoppm",), "page": ("chromium",), "workbook": ("soffice", "pdftoppm")}


def handout(shown: Shown) -> Any:
    """The week as an invented coach hands it over."""
    from setwright.catalogue.load import load_catalogue
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.sheets.handout.handout import handout_of

    lines = ("1 Example Street, Exampleton", "coach@example.org")
    start = date(2026, 1, 5)
    coach = Coach(name="Example Street Strength", lines=lines, paper=shown.paper, start=start, review_weeks=4)
    document = json.loads((WEEKS / f"{shown.week}.json").read_text(encoding="utf-8"))
    return handout_of(document, load_catalogue(), coach)


def run(*command: str | Path) -> None:
    subprocess.run([str(word) for word in command], check=True, capture_output=True)


def card_pictures(source: Path, shown: Shown, target: Path) -> None:
    """The chosen pages of a card."""
    for page in shown.pages:
        name = target / f"card-{shown.week}-{page}"
        run("pdftoppm", "-gray", "-png", "-singlefile", "-r", str(DOTS), "-f", str(page), "-l", str(page), source, name)


def page_pictures(source: Path, shown: Shown, target: Path) -> None:
    """The page on a phone and on a desk."""
    for name, size in (("phone", "390,1600"), ("desk", "1280,1400")):
        picture = target / f"page-{shown.week}-{name}.png"
        flags = ("--headless", "--no-sandbox", "--hide-scrollbars", f"--window-size={size}")
        run("chromium", *flags, f"--screenshot={picture}", source.as_uri())


def workbook_pictures(source: Path, shown: Shown, target: Path) -> None:
    """The workbook's first session as it prints; its page one is the week."""
    run("soffice", "--headless", "--convert-to", "pdf", "--outdir", source.parent, source)
    printed, name = source.with_suffix(".pdf"), target / f"workbook-{shown.week}"
    run("pdftoppm", "-png", "-singlefile", "-r", str(DOTS), "-f", "2", "-l", "2", printed, name)


PICTURES: dict[str, Callable[[Path, Shown, Path], None]] = {
    "card": card_pictures,
    "page": page_pictures,
    "workbook": workbook_pictures,
}


def lacking(name: str) -> str:
    """What a format's pictures lack here, or nothing."""
    if importlib.util.find_spec(FORMATS[name][1]) is None:
        return f"no module {FORMATS[name][1]}"
    gone = [tool for tool in TOOLS[name] if shutil.which(tool) is None]
    return f"no program {', '.join(gone)}" if gone else ""


def build(target: Path, names: Iterable[str]) -> None:
    """Every picture of the formats named, and nothing else touched in the folder."""
    from setwright.solver.sheets.formats import written

    target.mkdir(parents=True, exist_ok=True)
    for name in names:
        ending, _ = FORMATS[name]
        for shown in (shown for shown in SHOWN if name in shown.formats):
            with tempfile.TemporaryDirectory() as folder:
                source = Path(folder) / f"week.{ending}"
                source.write_bytes(written(ending, handout(shown)))
                PICTURES[name](source, shown, target)


def main(folder: str = str(FOLDER)) -> int:
    lacks = {name: lacking(name) for name in FORMATS}
    for name, what in lacks.items():
        if what:
            print(f"{name}: left out, {what}", file=sys.stderr)
    build(Path(folder), [name for name, what in lacks.items() if not what])
    pictures = sorted(Path(folder).glob("*.png"))
    print(f"{len(pictures)} pictures, {sum(p.stat().st_size for p in pictures) // 1000} kB in {folder}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(*sys.argv[1:]))
