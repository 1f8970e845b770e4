"""The week that README.md shows, kept as a document beside this file.

- `python -m tests.docs.readme_week` puts the stored week's text into README.md: after a change of words or numbers.
- `python -m tests.docs.readme_week solve` plans the week anew and stores it first: about 40 seconds of processor time.
- `python -m tests.docs.readme_week shown` prints what README.md shows: .ci/run compares it with what README's first
  command prints, so the week itself cannot go stale either.
"""

from __future__ import annotations

import json
import re
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parents[2] / ".names"))

from setwright.catalogue.load import load_catalogue
from setwright.solver.batch.stored_weeks import solved_again
from setwright.solver.brief.file import read_brief
from setwright.solver.planning import Solved, plan
from setwright.solver.rulebook import RULES
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.screen.week_table import week_text

README = Path(__file__).parents[2] / "README.md"
STORED = Path(__file__).with_name("readme_week.json")
BLOCK = re.compile(r"(?<=<!-- week -->\n```text\n).*?(?=```\n<!-- /week -->)", flags=re.S)
BRIEF = re.compile(r'^python3 -m venv .*/setwright week "(.+)"$', flags=re.M)
WIDTH = 100
"""Columns of the text where standard output is no terminal."""


def brief() -> str:
    """The brief of README's first command."""
    found = BRIEF.search(README.read_text(encoding="utf-8"))
    if found is None:
        raise ValueError("README.md has no command that plans a week")
    return found[1]


def stored() -> dict[str, Any]:
    """The stored week's document."""
    document: dict[str, Any] = json.loads(STORED.read_text(encoding="utf-8"))
    return document


def text_of_stored() -> str:
    """The stored week as `setwright week` prints it, audited anew."""
    return week_text(solved_again(stored(), load_catalogue(), STORED.name), WIDTH)


def shown() -> str:
    """The week that README.md shows; raises ValueError where its marks are gone."""
    found = BLOCK.search(README.read_text(encoding="utf-8"))
    if found is None:
        raise ValueError("README.md has no week between its marks")
    return found[0]


def solve() -> None:
    """Plan the week by the search that the command uses unless told otherwise, and store it."""
    catalogue = load_catalogue()
    end = plan(read_brief(brief(), catalogue, sys.stdin, tuple(RULES)), catalogue)
    if not isinstance(end, Solved):
        raise ValueError(f"no week was found for {brief()!r}")
    STORED.write_text(dumped(week_document(end, False)), encoding="utf-8")


def put() -> None:
    """Put the stored week's text into README.md."""
    text = text_of_stored()
    README.write_text(BLOCK.sub(lambda _: text, README.read_text(encoding="utf-8")), encoding="utf-8")


def main(act: str = "put") -> int:
    if act == "shown":
        sys.stdout.write(shown())
        return 0
    if act == "solve":
        solve()
    put()
    return 0


if __name__ == "__main__":
    raise SystemExit(main(*sys.argv[1:]))
