"""A second desk on a book, a port in use, a book of an older version, and a desk on a network."""

from __future__ import annotations

import json
import socket
import sqlite3
import stat
import threading
import time
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from at_desk import OnDemand
from click.testing import CliRunner

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.book.care import saved_before_migration
from setwright.solver.book.migrations import migrate, steps
from setwright.solver.book.opened import APPLICATION, open_book
from setwright.solver.cli.commands.desk import command
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry import passwords
from setwright.solver.desk.entry.access import Access, network_access
from setwright.solver.desk.entry.guard import Keys
from setwright.solver.desk.entry.passwords import MOST_TRIES, Entrance, Password
from setwright.solver.desk.open_desks import address_of_open_desk, noted
from setwright.solver.desk.server import serve

AS_SHIPPED = passwords.COST


@pytest.fixture(autouse=True)
def own_state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    monkeypatch.setattr(passwords, "COST", 2**10)


def test_a_password_costs_as_much_to_try_as_the_cheat_sheet_says() -> None:
    """OWASP's password storage cheat sheet, from memory: N of at least 2^17 where r is 8 and p is 1."""
    assert AS_SHIPPED >= 2**17


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[str, int, Path]]:
    """A desk that is served on a thread: its address, its port, its book."""
    desk = Desk(tmp_path / "book.db", load_catalogue(), OnDemand(1), Keys())
    told: list[Any] = []
    threading.Thread(target=serve, args=(desk, Access(), None, lambda *said: told.append(said)), daemon=True).start()
    while not told:
        time.sleep(0.01)
    yield (*told[0], desk.place)


def test_a_second_desk_on_a_book_opens_the_first(served: tuple[str, int, Path]) -> None:
    address, _, book = served
    assert address_of_open_desk(book) == address
    answer = CliRunner().invoke(command, ["--no-open", "--book", str(book)])
    assert answer.exit_code == 0 and address in answer.output and "already" in answer.output


def test_a_port_in_use_is_passed_over(served: tuple[str, int, Path], tmp_path: Path) -> None:
    _, port, _ = served
    other, told = Desk(tmp_path / "other.db", load_catalogue(), OnDemand(1), Keys()), []
    threading.Thread(target=serve, args=(other, Access(), port, lambda *said: told.append(said)), daemon=True).start()
    while not told:
        time.sleep(0.01)
    assert told[0][1] > port


def test_the_note_of_an_open_desk_is_for_its_owner_alone(tmp_path: Path) -> None:
    with noted(tmp_path / "book.db", "http://127.0.0.1:1/?token=x"):
        (note,) = (tmp_path / "state").rglob("*.json")
        assert stat.S_IMODE(note.stat().st_mode) == 0o600
        assert stat.S_IMODE(note.parent.stat().st_mode) == 0o700
        assert json.loads(note.read_text())["address"].endswith("token=x")
    assert not note.exists()


@pytest.mark.parametrize("left", ["", "{", "[]", '{"address": 3}', '{"address": "http://127.0.0.1:9/?token=x"}'])
def test_what_a_killed_desk_left_is_no_desk(tmp_path: Path, left: str) -> None:
    with noted(tmp_path / "book.db", "http://127.0.0.1:9/?token=x"):
        (note,) = (tmp_path / "state").rglob("*.json")
        note.write_text(left)
        assert address_of_open_desk(tmp_path / "book.db") is None


def test_a_host_that_is_not_here_is_refused(tmp_path: Path) -> None:
    desk = Desk(tmp_path / "book.db", load_catalogue(), OnDemand(1), Keys())
    with pytest.raises(SetwrightError, match="no address of this machine"):
        serve(desk, Access("no-such-host.invalid"), None, lambda *said: None)


def test_ports_that_are_all_in_use_are_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("setwright.solver.desk.server.TRIED", 1)
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        port = taken.getsockname()[1]
        desk = Desk(tmp_path / "book.db", load_catalogue(), OnDemand(1), Keys())
        with pytest.raises(SetwrightError, match="all in use"):
            serve(desk, Access(), port, lambda *said: None)


def older_book(path: Path, version: int) -> None:
    path.touch(0o600)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(f"PRAGMA application_id = {APPLICATION}")
        migrate(connection, version)
        connection.execute("INSERT INTO client (code, added) VALUES ('M', '2026-01-01')")


def test_an_older_book_is_kept_as_it_was_before_it_is_brought_up_to_date(tmp_path: Path) -> None:
    older_book(tmp_path / "book.db", 2)
    saved = saved_before_migration(tmp_path / "book.db")
    assert saved == tmp_path / "book-version-2.db" and stat.S_IMODE(saved.stat().st_mode) == 0o600
    with open_book(tmp_path / "book.db"):
        pass
    with closing(sqlite3.connect(saved)) as connection:
        assert connection.execute("PRAGMA user_version").fetchone()[0] == 2
        assert connection.execute("SELECT code FROM client").fetchall() == [("M",)]
    assert saved_before_migration(tmp_path / "book.db") is None


def test_a_book_of_today_or_none_is_not_copied(tmp_path: Path) -> None:
    assert saved_before_migration(tmp_path / "none.db") is None
    older_book(tmp_path / "book.db", len(steps()))
    assert saved_before_migration(tmp_path / "book.db") is None
    assert len(list(tmp_path.glob("*.db"))) == 1


def test_a_desk_on_a_network_needs_a_certificate_a_key_a_password_and_one_address() -> None:
    with pytest.raises(UsageFault) as refused:
        network_access("0.0.0.0", None, None, "short")
    assert [fault.where for fault in refused.value.faults] == ["--certificate", "--key", "--host", "password"]


def test_a_file_that_is_no_certificate_is_refused(tmp_path: Path) -> None:
    for name in ("cert.pem", "key.pem"):
        (tmp_path / name).write_text("nothing")
    with pytest.raises(UsageFault, match="cannot be used"):
        network_access("127.0.0.1", tmp_path / "cert.pem", tmp_path / "key.pem", "a long enough password")


def test_a_password_is_not_kept_as_it_was_typed() -> None:
    kept = Password.of("a long enough password")
    assert kept.fits("a long enough password") and not kept.fits("another")
    assert "password" not in repr(kept).lower().replace("password(", "")


def test_a_code_lets_in_one_browser() -> None:
    entrance = Entrance(Password.of("a long enough password"))
    code = entrance.new_code()
    assert entrance.lets_in(code) and not entrance.lets_in(code)
    assert not Entrance(None).lets_in("")


def test_the_entrance_is_shut_for_a_while_after_wrong_tries() -> None:
    entrance = Entrance(Password.of("a long enough password"))
    code = entrance.new_code()
    for _ in range(MOST_TRIES):
        assert not entrance.lets_in("guess")
    assert entrance.shut_for() > 0
    assert not entrance.lets_in(code) and not entrance.lets_in("a long enough password")


def test_a_password_may_have_spaces_inside_and_those_at_its_ends_do_not_count() -> None:
    entrance = Entrance(Password.of(" correct horse battery "))
    assert entrance.lets_in("correct horse battery") and entrance.lets_in("correct horse battery ")
    assert not entrance.lets_in("correcthorsebattery")
    code = entrance.new_code()
    assert entrance.lets_in(f" {code[:4]} {code[4:]}")


def test_a_password_with_spaces_lets_in_by_the_page(tmp_path: Path) -> None:
    from at_desk import HOST
    from starlette.testclient import TestClient

    from setwright.solver.desk.application import application

    desk = Desk(
        tmp_path / "book.db", load_catalogue(), OnDemand(1), Keys(True), Entrance(Password.of("correct horse battery"))
    )
    with TestClient(application(desk, frozenset({HOST})), base_url=f"https://{HOST}", follow_redirects=False) as phone:
        headers = {"Origin": f"https://{HOST}"}
        assert phone.post("/enter", data={"said": "correct horse battery"}, headers=headers).status_code == 303
        assert phone.get("/").status_code == 200


def test_without_a_terminal_a_password_that_is_not_said_is_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("SETWRIGHT_DESK_PASSWORD", raising=False)
    answer = CliRunner().invoke(command, ["--host", "192.0.2.7"])
    assert isinstance(answer.exception, UsageFault)
    assert [fault.where for fault in answer.exception.faults] == ["--certificate", "--key", "password"]
    assert "SETWRIGHT_DESK_PASSWORD" in answer.exception.faults[-1].remedy


def test_on_a_terminal_the_password_is_asked_for_twice(monkeypatch: pytest.MonkeyPatch) -> None:
    from setwright.solver.cli.commands import desk as desk_command

    asked: list[tuple[str, dict[str, Any]]] = []

    def prompt(text: str, **how: Any) -> str:
        asked.append((text, how))
        return "too short"

    monkeypatch.delenv("SETWRIGHT_DESK_PASSWORD", raising=False)
    monkeypatch.setattr(desk_command, "_is_terminal", lambda: True)
    monkeypatch.setattr(desk_command.click, "prompt", prompt)
    answer = CliRunner().invoke(command, ["--host", "192.0.2.7"])
    assert isinstance(answer.exception, UsageFault) and "has 9 letters" in str(answer.exception)
    assert len(asked) == 1 and asked[0][1]["hide_input"] and asked[0][1]["confirmation_prompt"]
