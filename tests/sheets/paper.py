"""A PDF read back by another library: its text without white space, and its tree of tags."""

from __future__ import annotations

import io
from collections.abc import Iterator
from functools import lru_cache
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ArrayObject, DictionaryObject

UNINKED = dict.fromkeys(map(ord, " \n\t\r\u00a0\u200b"))


@lru_cache(maxsize=16)
def opened(data: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(data), strict=True)


def pressed(text: str) -> str:
    """Text without white space and break points, so that where a line was broken does not matter."""
    return text.translate(UNINKED)


@lru_cache(maxsize=16)
def texts(data: bytes) -> tuple[str, ...]:
    """Each page's text, pressed."""
    return tuple(pressed(page.extract_text()) for page in opened(data).pages)


def tags(data: bytes) -> Iterator[DictionaryObject]:
    """Every element of the structure tree, parents first, in reading order."""
    root: Any = opened(data).trailer["/Root"]
    yield from below(root["/StructTreeRoot"].get("/K"))


def below(kids: Any) -> Iterator[DictionaryObject]:
    held = kids.get_object() if kids is not None else None
    if isinstance(held, ArrayObject):
        for kid in held:
            yield from below(kid)
    elif isinstance(held, DictionaryObject) and "/S" in held:
        yield held
        yield from below(held.get("/K"))


def fonts(data: bytes) -> set[str]:
    """The names of all fonts that the pages use, without the prefix of a subset."""
    found = set()
    for page in opened(data).pages:
        resources: Any = page["/Resources"]
        held = [resources, *(x.get_object().get("/Resources", {}) for x in resources.get("/XObject", {}).values())]
        for one in held:
            found |= {str(font.get_object()["/BaseFont"]).split("+")[-1] for font in one.get("/Font", {}).values()}
    return found
