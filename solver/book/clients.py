"""The clients of a book: each by a code, with the versions of the brief that their weeks are planned by."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import did_you_mean
from setwright.solver.book.journal import left_out, note_row
from setwright.solver.book.opened import Book
from setwright.solver.brief.schema import PRIVATE, Unit

LONGEST_CODE: Final = 40


@dataclass(frozen=True)
class Client:
    """A client of the book, without health notes."""

    id: int
    code: str
    name: str
    """Empty unless the coach wants one written down."""
    added: str
    resting_since: date | None
    brief: Mapping[str, Any]
    """The version that holds, as a raw table without age, cautions and clearance."""
    version: int

    @property
    def unit(self) -> Unit:
        """The unit of all weights."""
        unit: Unit = self.brief["client"]["unit"]
        return unit


class UnknownClient(UsageFault):
    """Raised for a code of which no client is in the book."""


def add_client(book: Book, code: str, raw: Mapping[str, Any], name: str = "") -> Client:
    """The new client, written down with the first version of a brief; raises UsageFault for a code that is taken."""
    sound = _sound_code(code)
    with book.writing() as connection:
        if taken := connection.execute("SELECT code FROM client WHERE code = ?", (sound,)).fetchone():
            raise UsageFault(Fault("CODE", f"{taken['code']} is in the book already", "choose another code"))
        values = (sound, name.strip(), book.now)
        connection.execute("INSERT INTO client (code, name, added) VALUES (?, ?, ?)", values)
        _keep_version(book, _client_row(book, sound)["id"], raw)
    return client_of(book, sound)


def client_of(book: Book, code: str) -> Client:
    """The client of a code, with or without its @; raises UsageFault with the nearest code for an unknown one."""
    return _client(book, _client_row(book, code))


def brief_of(book: Book, client: Client) -> dict[str, Any]:
    """The newest version of a client's brief as a raw table, health notes included: for planning alone."""
    health = health_of(book, client)
    return {**client.brief, "client": {**client.brief.get("client", {}), **health}} if health else dict(client.brief)


def health_of(book: Book, client: Client) -> dict[str, Any]:
    """Age, cautions and clearance of the newest version of a client's brief: for planning alone."""
    query = "SELECT health.document FROM health JOIN brief ON brief.id = health.brief WHERE client = ? AND version = ?"
    found = book.rows(query, client.id, client.version)
    return dict(json.loads(found[0]["document"])) if found else {}


def health_versions(book: Book, client: Client) -> dict[str, Any]:
    """Version of the brief -> its health notes, of the versions that have some: for the client alone."""
    query = "SELECT version, health.document FROM health JOIN brief ON brief.id = health.brief WHERE client = ?"
    return {
        str(row["version"]): json.loads(row["document"]) for row in book.rows(f"{query} ORDER BY version", client.id)
    }


def without_health(raw: Mapping[str, Any]) -> dict[str, Any]:
    """A brief as a raw table without age, cautions and clearance."""
    return {**raw, "client": {k: v for k, v in raw.get("client", {}).items() if k not in PRIVATE}}


def keep_brief(book: Book, client: Client, raw: Mapping[str, Any], said: str) -> Client:
    """The client with a new version of the brief, and a note of what was changed; unchanged where it is the same."""
    if dict(raw) == brief_of(book, client):
        return client
    with book.writing():
        note_row(book, client.id, "brief", _keep_version(book, client.id, raw), said)
        note_change(book, client, said)
    return client_of(book, client.code)


def set_name(book: Book, client: Client, name: str) -> Client:
    """The client with another name, or with none."""
    with book.writing() as connection:
        connection.execute("UPDATE client SET name = ? WHERE id = ?", (name.strip(), client.id))
    return client_of(book, client.code)


def rest(book: Book, client: Client, since: date | None) -> Client:
    """The client at rest since a day, or back where it is None."""
    with book.writing() as connection:
        written = None if since is None else since.isoformat()
        connection.execute("UPDATE client SET resting_since = ? WHERE id = ?", (written, client.id))
        note_change(book, client, "back" if since is None else f"at rest since {since}")
    return client_of(book, client.code)


def note_change(book: Book, client: Client, said: str) -> None:
    """Write down what was changed for a client; inside `writing` alone, and never with a health note."""
    values = (client.id, book.now, said)
    book.connection.execute("INSERT INTO change (client, made, said) VALUES (?, ?, ?)", values)


def changes(book: Book, client: Client) -> tuple[tuple[str, str], ...]:
    """(moment, what was changed) of a client, the oldest first."""
    rows = book.rows("SELECT made, said FROM change WHERE client = ? ORDER BY id", client.id)
    return tuple((row["made"], row["said"]) for row in rows)


def _keep_version(book: Book, client: int, raw: Mapping[str, Any]) -> int:
    """The row of the next version of a client's (row's) brief, its health notes in their own table."""
    asked = without_health(raw)
    health = {k: v for k, v in raw.get("client", {}).items() if k in PRIVATE and v}
    newest = "SELECT coalesce(max(version), 0) + 1 FROM brief WHERE client = ?"
    version = book.connection.execute(newest, (client,)).fetchone()[0]
    written = book.connection.execute(
        "INSERT INTO brief (client, version, made, document) VALUES (?, ?, ?, ?)",
        (client, version, book.now, json.dumps(asked, sort_keys=True)),
    )
    if health:
        values = (written.lastrowid, json.dumps(health, sort_keys=True))
        book.connection.execute("INSERT INTO health (brief, document) VALUES (?, ?)", values)
    return written.lastrowid or 0


def _client_row(book: Book, code: str) -> Any:
    """A client's row; raises UsageFault with the nearest code."""
    sound = code.removeprefix("@")
    found = book.rows("SELECT * FROM client WHERE code = ?", sound)
    if not found:
        codes = [row["code"] for row in book.rows("SELECT code FROM client ORDER BY code")]
        near, said = did_you_mean(sound, codes), "no client of this code is in the book"
        remedy = near or "`setwright client list` shows all, `setwright client add` adds one"
        raise UnknownClient(Fault(f"@{sound}", said, remedy, near or "the page of clients shows all, and adds one"))
    return found[0]


def _client(book: Book, row: Any) -> Client:
    """A row as a client with the newest version of the brief that was not taken back."""
    query = f"SELECT * FROM brief WHERE client = ? AND id NOT IN ({left_out('brief')}) ORDER BY version DESC LIMIT 1"
    return client_of_rows(row, book.rows(query, row["id"])[0])


def client_of_rows(row: Any, brief: Any) -> Client:
    """A client of its own row and that of the version of its brief that holds."""
    resting = None if row["resting_since"] is None else date.fromisoformat(row["resting_since"])
    document = json.loads(brief["document"])
    return Client(row["id"], row["code"], row["name"], row["added"], resting, document, brief["version"])


def _sound_code(code: str) -> str:
    """A code as it is kept; raises UsageFault where it cannot be one."""
    sound = code.removeprefix("@").strip()
    allowed = all(letter.isalnum() or letter in "-_." for letter in sound)
    if not sound or len(sound) > LONGEST_CODE or not allowed or not sound[0].isalnum():
        said = f"got {code!r}, expected letters, digits, '-', '_' and '.', at most {LONGEST_CODE}"
        raise UsageFault(Fault("CODE", said, "a code that is no name keeps sheets and file names private"))
    return sound
