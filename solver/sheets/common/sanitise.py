"""Words that others wrote, made inert: one line, no steering letters, no direction that runs on."""

from __future__ import annotations

import re
from typing import Final

_CONTROL: Final = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]+")
_STEERS: Final = re.compile(r"[\u202a-\u202e\u2066-\u2069]")
"""Embeddings, overrides and isolates (Unicode Standard Annex 9, section 2); plain marks stop by themselves."""
_WEB: Final = re.compile(r"https?://[^\s\x00-\x1f\x7f<>\"\\^`{|}]{1,2000}", re.IGNORECASE)
"""The letters an address may hold (RFC 3986, section 2), and more than any has."""
_OPEN, _CLOSE = "\u2068", "\u2069"


def one_line(text: str) -> str:
    """The text on one line: each run of control characters and line ends is one space."""
    return _CONTROL.sub(" ", text).strip()


def isolated(text: str) -> str:
    """One line whose change of direction ends with it: the text is set in an isolate when it holds any.

    Inner isolates are dropped with the overrides, since one that closes too early would let the rest run on.
    """
    line = one_line(text)
    if not _STEERS.search(line):
        return line
    return f"{_OPEN}{_STEERS.sub('', line)}{_CLOSE}"


def web_link(text: str | None) -> str | None:
    """The address when it leads to a page of the web (http or https, no blanks), else None."""
    return text if text is not None and _WEB.fullmatch(text) else None
