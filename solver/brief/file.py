"""A brief read from where it stands: a file, standard input or the phrase itself."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, Literal, Protocol

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import nearest, suggestion
from setwright.catalogue.toml_text import decoded, toml_tables
from setwright.solver.brief.assumed import Assumption
from setwright.solver.brief.defaults import FILE_BYTES, PHRASE_LETTERS
from setwright.solver.brief.parsed_brief import ParsedBrief, parse_brief
from setwright.solver.brief.phrase.lexicon import lexicon_of
from setwright.solver.brief.phrase.parse import draft_phrase
from setwright.solver.brief.phrase.tokens import plain

_LIKE_A_PATH = re.compile(r"\.toml$|^[./~]\S*/\S*$|^\S+\.(json|txt|ya?ml|tml|tom|csv|md)$", re.IGNORECASE)
"""What is meant as a file's name, whether or not a file has it."""


class Input(Protocol):
    """Standard input, or anything else that can be read: bytes or text."""

    def read(self, size: int = -1, /) -> Any:
        """At most `size` bytes or characters; all of them where it is below 0."""


def read_brief(source: str, catalogue: Catalogue, stdin: Input, rule_ids: Sequence[str] | None = None) -> ParsedBrief:
    """The brief a source names: a TOML file, `-` for standard input, else the source itself as a phrase.

    Rules named in it are checked if `rule_ids` are given. Raises UsageFault with every fault found.
    """
    if source == "-":
        return _from_input(stdin, catalogue, rule_ids)
    if _LIKE_A_PATH.search(source) or _exists(source):
        path = Path(source)
        tables = toml_tables(_text(_bytes_of(path), source), source, UsageFault)
        return parse_brief(tables, catalogue, source, rule_ids)
    return parse_phrase(source, catalogue, rule_ids)


def parse_phrase(text: str, catalogue: Catalogue, rule_ids: Sequence[str] | None = None) -> ParsedBrief:
    """The brief of one line; raises UsageFault with every fault of its words and of what they say."""
    if not text.strip():
        raise UsageFault(Fault("brief", "is empty", "write for example '3 days x 40 min, grow delts'"))
    if len(text) > PHRASE_LETTERS:
        said = f"is {len(text)} letters long, at most {PHRASE_LETTERS} are read"
        raise UsageFault(Fault("phrase", said, "write a brief file"))
    if not text.isprintable() and not text.replace("\n", " ").replace("\r", " ").replace("\t", " ").isprintable():
        raise UsageFault(Fault("phrase", "is not text", "write words, or name a TOML file"))
    raw, faults = draft_phrase(text, catalogue)
    if not faults:
        return parse_brief(raw, catalogue, "phrase", rule_ids)
    if plainer := _in_plainer_words(text, catalogue, rule_ids):
        return plainer
    if "days" not in raw:
        raise UsageFault(faults)
    try:
        parse_brief(raw, catalogue, "phrase", rule_ids)
    except UsageFault as more:
        raise UsageFault(dict.fromkeys((*faults, *more.faults))) from None
    raise UsageFault(faults)


def _in_plainer_words(text: str, catalogue: Catalogue, rule_ids: Sequence[str] | None) -> ParsedBrief | None:
    """The brief of a natural sentence by its plainer wording, which is then told; None where that has faults too."""
    from setwright.solver.brief.phrase.wording.rewriting import plain_wording
    from setwright.solver.brief.phrase.wording.sayings import of_health

    lexicon = lexicon_of(catalogue)
    plainer, passed_over = plain_wording(plain(text), lexicon)
    # No near words are sought: where there are faults, those of the sentence as it was written are told.
    raw, faults = draft_phrase(plainer, catalogue, replace(lexicon, spellings=dict.fromkeys(lexicon.spellings, ())))
    if faults:
        return None
    try:
        found = parse_brief(raw, catalogue, "phrase", rule_ids)
    except UsageFault:
        return None
    private = found.brief.client.cautions or found.brief.client.age is not None or any(map(of_health, passed_over))
    told = [f"read as: {plainer}", *([f"passed over: {'; '.join(passed_over)}"] if passed_over else [])]
    kind: Literal["health", "plan"] = "health" if private else "plan"
    return replace(found, assumed=(*(Assumption(kind, text) for text in told), *found.assumed))


def _from_input(stdin: Input, catalogue: Catalogue, rule_ids: Sequence[str] | None) -> ParsedBrief:
    """Standard input as TOML if it is TOML, else as a phrase of one line."""
    reader = getattr(stdin, "buffer", stdin)
    data = reader.read(FILE_BYTES + 1)
    text = _text(data if isinstance(data, bytes) else str(data).encode(), "standard input")
    lines = [line for line in text.splitlines() if line.strip() and not line.lstrip().startswith("#")]
    if len(lines) == 1 and "=" not in lines[0] and not lines[0].lstrip().startswith("["):
        return parse_phrase(lines[0], catalogue, rule_ids)
    tables = toml_tables(text, "standard input", UsageFault)
    return parse_brief(tables, catalogue, "standard input", rule_ids)


def _exists(source: str) -> bool:
    """Whether a source names something on disk; a phrase too long for a name does not."""
    try:
        return Path(source).exists() if source.strip() else False
    except (OSError, ValueError):
        return False


def _bytes_of(path: Path) -> bytes:
    where = str(path)
    try:
        if path.is_dir():
            raise UsageFault(
                Fault(where, "is a folder, expected a TOML file", f"name a file in it: {where}/brief.toml")
            )
        if not path.exists():
            remedy = suggestion(_neighbour(path)) or "check the name, or write the brief as one line"
            raise UsageFault(Fault(where, "is not there", remedy))
        with path.open("rb") as file:
            return file.read(FILE_BYTES + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise UsageFault(Fault(where, f"cannot be read: {reason}", "check the name and its permissions")) from None


def _neighbour(path: Path) -> str | None:
    """The nearest TOML file beside a missing one."""
    folder = path.parent
    if not folder.is_dir():
        return None
    near = nearest(path.name, sorted(other.name for other in folder.glob("*.toml")))
    return str(folder / near) if near else None


def _text(data: bytes, where: str) -> str:
    """The bytes as text: neither empty, too large, binary nor in another encoding."""
    if len(data) > FILE_BYTES:
        raise UsageFault(Fault(where, "is larger than 1 MB, expected a brief of a page", "name the brief file"))
    text = decoded(data, where, UsageFault)
    if not text.strip():
        raise UsageFault(Fault(where, "is empty", "write at least days = [{ minutes = 40 }]"))
    return text
