"""The templates of a desk: TOML files in a folder beside the book, each with the folder of its results.

A text is known by its digest: a change says which text it changes, a run holds the text that it is of.
"""

from __future__ import annotations

import hashlib
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Final
from unicodedata import normalize

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.catalogue.near import did_you_mean
from setwright.solver.atomic import write_file
from setwright.solver.batch.planned_matrix import matrix_of_text
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.variants.file_names import ENDING, RUN_OF
from setwright.solver.uses.variants.matrix import VariantMatrix
from setwright.solver.uses.variants.result_store import ResultStore

MOST_LETTERS: Final = 60
"""Of a template's name."""


@dataclass(frozen=True)
class Shelf:
    """The folder of a desk's templates."""

    folder: Path
    catalogue: Catalogue

    def names(self) -> tuple[str, ...]:
        """The templates that are kept, in order."""
        return tuple(sorted(path.stem for path in self.folder.glob(f"*{ENDING}")))

    def text(self, name: str) -> str:
        """A template as it was written; raises UsageFault where there is none of that name."""
        self._check(name)
        try:
            return self.path(name).read_text(encoding="utf-8")
        except UnicodeDecodeError:
            said = "its file is not text in UTF-8"
            raise UsageFault(Fault(f"template {name}", said, "save the file as UTF-8, or take it out")) from None

    def path(self, name: str) -> Path:
        """A template's file."""
        return self.folder / f"{name}{ENDING}"

    def results(self, name: str) -> ResultStore:
        """Where the results of a template are kept, or will be; raises UsageFault."""
        self._check(name)
        return ResultStore(self.folder / name)

    def matrix(self, name: str, search: str) -> VariantMatrix:
        """The variants of a template; raises UsageFault with every fault."""
        return self.matrix_of_text(self.text(name), search, name)

    def matrix_of_text(self, text: str, search: str, where: str = "template") -> VariantMatrix:
        """The variants that a text makes; raises UsageFault with every fault."""
        return matrix_of_text(text, self.catalogue, search, where)

    def add(self, name: str, text: str) -> None:
        """Write a new template down, whole or not at all; raises UsageFault where one of its name is kept."""
        try:
            self._write(name, text, replace=False)
        except FileExistsError:
            remedy = "change it on its own page, or write another name"
            raise UsageFault(Fault("name", f"{name!r} is kept already", remedy)) from None

    def change(self, name: str, shown: str, text: str) -> None:
        """Write another text of a template down; raises UsageFault where the page showed a text that is kept no more.

        `shown` is the digest of what the page showed, empty where a program looked at no page.
        """
        self.check_shown(name, shown)
        self._write(name, text, replace=True)

    def check_shown(self, name: str, shown: str) -> str:
        """A template's text; raises UsageFault where it was changed after a page showed that of the digest `shown`."""
        text = self.text(name)
        if shown and shown != digest_of(text):
            said = "was changed after this page was shown, and nothing of yours was written"
            raise UsageFault(Fault(f"template {name}", said, "open its page anew, and make your change there"))
        return text

    def run_of(self, name: str) -> str:
        """The digest of the text that a template's folder was run with last; empty before the first run."""
        try:
            return digest_of((self.folder / name / RUN_OF).read_text(encoding="utf-8"))
        except OSError:
            return ""

    def _write(self, name: str, text: str, replace: bool) -> None:
        """Write a template's file; raises FileExistsError where it may not replace one, SetwrightError."""
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            write_file(self.path(name), text.encode(), replace=replace, durable=True)
        except FileExistsError:
            raise
        except OSError as error:
            said = f"cannot be written: {error.strerror or error}"
            raise SetwrightError(Fault(str(self.folder), said, "mend its permissions")) from None

    def _check(self, name: str) -> None:
        if name not in self.names():
            remedy = did_you_mean(name, self.names()) or "write it down on the page of templates"
            raise UsageFault(Fault(f"template {name!r}", "is not kept here", remedy))


def digest_of(text: str) -> str:
    """By what a text is known."""
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def shelf_of(desk: Desk) -> Shelf:
    """The templates beside a desk's book."""
    return Shelf(desk.place.with_suffix(".templates"), desk.catalogue)


def usual_name(text: str) -> str:
    """A name for a template's file by its title; `template` where it has none that can be read."""
    try:
        title = tomllib.loads(text).get("title", "")
    except tomllib.TOMLDecodeError:
        title = ""
    return safe_name(title if isinstance(title, str) else "") or "template"


def safe_name(said: str) -> str:
    """A name as a file and an address take it: small Latin letters, digits and hyphens; empty where none is left."""
    plain = normalize("NFKD", said).casefold().encode("ascii", "ignore").decode()
    words = "".join(letter if letter.isalnum() else " " for letter in plain).split()
    return "-".join(words)[:MOST_LETTERS].strip("-")
