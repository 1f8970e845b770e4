"""The catalogue, and a short way from a phrase to what it says or to its faults."""

from __future__ import annotations

import io

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.file import read_brief
from setwright.solver.brief.parsed_brief import ParsedBrief


class Asker:
    """Understands a source, or gives the faults it raises as lines."""

    def __init__(self, catalogue: Catalogue) -> None:
        self.catalogue = catalogue
        self.rules = tuple(catalogue.rules)

    def of(self, source: str, stdin: bytes = b"") -> ParsedBrief:
        return read_brief(source, self.catalogue, io.BytesIO(stdin), self.rules)

    def faults(self, source: str, stdin: bytes = b"") -> list[str]:
        with pytest.raises(UsageFault) as caught:
            self.of(source, stdin)
        return [str(fault) for fault in caught.value.faults]


@pytest.fixture(scope="session")
def asker() -> Asker:
    return Asker(load_catalogue())
