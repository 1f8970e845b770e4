"""The gallery's pictures are there, few and small, and each stands on its page; a command builds them."""

from __future__ import annotations

import re
import shutil
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))
PICTURES = sorted((ROOT / "docs" / "gallery").glob("*.png"))
MOST_BYTES = 2_300_000


def test_the_pictures_are_small() -> None:
    assert PICTURES
    assert sum(picture.stat().st_size for picture in PICTURES) < MOST_BYTES


def test_each_picture_is_shown_with_words_for_who_does_not_see_it() -> None:
    page = (ROOT / "docs" / "gallery.md").read_text(encoding="utf-8")
    shown = re.findall(r"!\[([^\]]+)\]\(gallery/([^)]+)\)", page)
    assert sorted(name for _, name in shown) == [picture.name for picture in PICTURES]


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="needs pdftoppm (poppler-utils)")
def test_the_command_builds_the_cards_pictures(tmp_path: Path) -> None:
    from tests.gallery import build

    build(tmp_path, ["card"])
    built = {picture.name: picture for picture in tmp_path.glob("*.png")}
    assert set(built) == {picture.name for picture in PICTURES if picture.name.startswith("card-")}
    assert all(picture.read_bytes().startswith(b"\x89PNG") for picture in built.values())
