"""The table of cautions in docs/brief.md is the catalogue's."""

from __future__ import annotations

import sys
from pathlib import Path

from setwright.catalogue.load import load_catalogue

sys.path.insert(0, str(Path(__file__).parents[2]))
from tests.docs import cautions_table
from tests.docs.pages import ROOT, text_of


def test_the_table_of_cautions_is_current() -> None:
    assert cautions_table.table(load_catalogue()) in text_of(ROOT / "docs" / "brief.md")
