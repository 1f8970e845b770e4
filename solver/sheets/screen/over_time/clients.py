"""The clients of a book on screen and as documents; no health note is among what they are given."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any, Final

from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import counted, page_width, wrapped
from setwright.solver.sheets.screen.over_time.due import Due

SCHEMA: Final = "setwright.clients/1"


@dataclass(frozen=True)
class Standing:
    """How a client stands; the brief as kept, without age, cautions and clearance."""

    code: str
    name: str
    resting_since: date | None
    brief: Mapping[str, Any]
    version: int
    blocks: tuple[tuple[date, date], ...]
    """(first day, last day) of each block that holds."""
    weeks: tuple[tuple[date, str], ...]
    """(Monday, why) of each week kept outside a block."""
    sessions: int
    last: date | None
    changes: tuple[tuple[str, str], ...]
    due: Due


def clients_text(found: Sequence[Standing], width: int = 100) -> str:
    """One line for each client."""
    if not found:
        return 'No client is in the book; `setwright client add M "3 days x 40 min"` writes one down.\n'
    rows = [[f"@{s.code}", asked(s.brief), _block(s), str(s.last or "-"), _rest(s)] for s in found]
    headings = ["Client", "Days", "Block", "Last session", ""]
    return "\n".join([*grid(headings, rows, "lllll"), counted(len(found), "client")]) + "\n"


def client_text(s: Standing, width: int = 100) -> str:
    """One client: what is asked, what is planned, what was done, what was changed."""
    lines = [
        f"@{s.code}{f', {s.name}' if s.name else ''}",
        f"Asked: {asked(s.brief)} (version {s.version} of the brief)",
    ]
    client = s.brief.get("client", {})
    lines.append(f"{str(client.get('experience', 'intermediate')).capitalize()}, {client.get('unit', 'kg')}")
    if title := s.brief.get("title"):
        lines.append(f"Title: {title}")
    lines += [f"At rest since {s.resting_since}"] if s.resting_since else []
    lines += [f"Block: {first} to {last}" for first, last in s.blocks]
    lines += [f"Week of {monday}{f': {why}' if why else ''}" for monday, why in s.weeks]
    lines.append(f"Sessions logged: {s.sessions}{f', the last on {s.last}' if s.last else ''}")
    lines += [f"{made[:10]}: {said}" for made, said in s.changes]
    return "\n".join(part for line in lines for part in wrapped(line, page_width(width))) + "\n"


def clients_document(found: Sequence[Standing]) -> dict[str, Any]:
    """The clients as one document."""
    return {"schema": SCHEMA, "clients": [_plain(s) for s in found]}


def client_document(s: Standing) -> dict[str, Any]:
    """One client as a document."""
    return {"schema": "setwright.client-shown/1", **_plain(s)}


def asked(brief: Mapping[str, Any]) -> str:
    """The days and minutes of a brief in a few words: 3 days x 40 min, or mon 60, thu 30 min."""
    days = brief["days"]
    minutes = {day["minutes"] for day in days}
    if len(minutes) == 1:
        return f"{counted(len(days), 'day')} x {minutes.pop()} min"
    return ", ".join(f"{day.get('weekday') or number} {day['minutes']}" for number, day in enumerate(days, 1)) + " min"


def _block(s: Standing) -> str:
    """The last block's days."""
    return f"{s.blocks[-1][0]} to {s.blocks[-1][1]}" if s.blocks else "-"


def _rest(s: Standing) -> str:
    return f"at rest since {s.resting_since}" if s.resting_since else ""


def _plain(s: Standing) -> dict[str, Any]:
    """As JSON writes it: dates in ISO form."""
    table = asdict(s)
    return {key: _written(value) for key, value in table.items()}


def _written(value: Any) -> Any:
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, dict):
        return {key: _written(part) for key, part in value.items()}
    if isinstance(value, list | tuple):
        return [_written(part) for part in value]
    return value
