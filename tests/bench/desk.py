"""The desk measured: `python -m tests.bench.desk [--no-browser]` prints the table that docs/desk.md speaks of.

A desk on an empty book in a process of its own: when the first page is painted, when the first week is in view, how
long a changed line takes, what memory it takes, and fifty requests at once while two searches run. Paint and week are
looked at in Chromium by playwright (see `.ci/browser`), all else is asked for by plain requests. Alone on the machine.
"""

from __future__ import annotations

import asyncio
import shutil
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from typing import Any

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / ".names"), str(ROOT / "tests" / "helpers")]

from running_desk import RunningDesk, running_desk  # noqa: E402

BRIEF = "3 days x 40 min, grow delts"
"""README's."""
LONG = "6 days x 90 min, growth, advanced, commercial gym"
AT_ONCE, ROUNDS, CHANGES = 50, 5, 6
PAINTED = "performance.getEntriesByName('first-contentful-paint')[0]?.startTime"
SETTLED = 4.0
"""Seconds after which the search processes have read what they need, and two searches are well under way."""


def main(words: list[str]) -> None:
    """Print a row for each thing as it is measured."""
    print("| measured | median | worst |\n|---|---|---|", flush=True)
    with tempfile.TemporaryDirectory() as folder, running_desk(Path(folder) / "book.db") as desk:
        time.sleep(SETTLED)
        for name, found, unit in [
            *([] if "--no-browser" in words else _seen(desk)),
            ("a line changed", list(_changed(desk)), "s"),
            ("memory of the server", [_megabytes(desk.process.pid)], "MB"),
            ("memory of a search process", [_megabytes(pid) for pid in _searching(desk.process.pid)], "MB"),
            *_at_once(desk),
        ]:
            digits = 0 if unit == "MB" else 3
            print(f"| {name} | {median(found):.{digits}f} {unit} | {max(found):.{digits}f} {unit} |", flush=True)


def _seen(desk: RunningDesk) -> Iterator[tuple[str, list[float], str]]:
    """The first paint and the first week, as a browser has them."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as driver:
        chromium = driver.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        paints, weeks = [], []
        for round_ in range(ROUNDS):
            page = chromium.new_context(bypass_csp=True).new_page()
            page.goto(desk.address)
            page.goto(desk.origin)
            paints.append(page.wait_for_function(PAINTED).json_value() / 1000)
            weeks.append(_first_week(desk, page, f"W{round_}"))
        chromium.close()
    yield "the first page painted", paints, "s"
    yield "the first week in view", weeks, "s"


def _first_week(desk: RunningDesk, page: Any, code: str) -> float:
    """Seconds from the button to the first week in view; the search is stopped then."""
    with desk.browser() as browser:
        browser.post("/clients", data={"code": code, "phrase": BRIEF})
    page.goto(f"{desk.origin}/clients/{code}")
    begun = time.monotonic()
    page.get_by_role("button", name="Find a week").first.click()
    page.locator("#standing .session").first.wait_for(timeout=120_000)
    seconds = time.monotonic() - begun
    page.get_by_role("button", name="Good enough, stop").click()
    page.get_by_role("button", name="Keep this week").wait_for(timeout=120_000)
    return seconds


def _changed(desk: RunningDesk) -> Iterator[float]:
    """Seconds until the page of a week has the answer to a change of one of its lines."""
    with desk.browser() as browser:
        browser.post("/clients", data={"code": "C", "phrase": BRIEF})
        search = browser.post("/clients/C/find", data={"search": "quick"}).json()["address"]
        while browser.get(search).json()["state"] in ("waiting", "running"):
            time.sleep(0.2)
        week = browser.post("/clients/C/keep", data={"found": search.rsplit("/", 1)[-1]}).json()["address"]
        day = browser.get(week).json()["days"][0]
        entry, sets = f"{day['weekday'] or 1}:{day['entries'][0]['exercise']}", day["entries"][0]["sets"]
        shown = {"Accept": "text/html", "HX-Request": "true"}
        for change in range(CHANGES):
            value = sets - 1 if change % 2 == 0 else sets
            begun = time.monotonic()
            answer = browser.post(f"{week}/line", data={"entry": entry, "act": "sets", "value": value}, headers=shown)
            yield time.monotonic() - begun
            assert answer.status_code == 200, answer.text


def _at_once(desk: RunningDesk) -> Iterator[tuple[str, list[float], str]]:
    """Fifty requests at once, each on a connection of its own, while two searches run; the median and worst of all."""
    with desk.browser() as browser:
        for code in ("A", "B"):
            browser.post("/clients", data={"code": code, "phrase": LONG})
            browser.post(f"/clients/{code}/find", data={"search": "thorough"})
        cookie = "; ".join(f"{name}={value}" for name, value in browser.cookies.items())
    time.sleep(SETTLED)
    for address in ("/", "/clients/A"):
        found = [seconds for _ in range(ROUNDS) for seconds in asyncio.run(_fifty(desk.origin, address, cookie))]
        yield f"fifty requests at once, {address}", found, "s"


async def _fifty(origin: str, address: str, cookie: str) -> list[float]:
    """Seconds until each answer is there in full."""
    host = origin.removeprefix("http://")
    name, _, port = host.partition(":")
    asked = f"GET {address} HTTP/1.1\r\nHost: {host}\r\nCookie: {cookie}\r\nConnection: close\r\n\r\n".encode()
    open_ = [await asyncio.open_connection(name, int(port)) for _ in range(AT_ONCE)]
    begun = time.monotonic()

    async def answered(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> float:
        writer.write(asked)
        answer = await reader.read()
        seconds = time.monotonic() - begun
        writer.close()
        assert answer.startswith(b"HTTP/1.1 200"), answer[:200]
        return seconds

    return await asyncio.gather(*(answered(*pair) for pair in open_))


def _searching(desk: int) -> list[int]:
    """The search processes of a desk."""
    parents = {
        int(path.parent.name): int(path.read_text().rpartition(") ")[2].split()[1])
        for path in Path("/proc").glob("[0-9]*/stat")
    }
    return [pid for pid, parent in parents.items() if parent == desk and _megabytes(pid) > 50]


def _megabytes(pid: int) -> float:
    """What a process has in memory."""
    status = Path(f"/proc/{pid}/status").read_text()
    return int(status.partition("VmRSS:")[2].split()[0]) / 1024


if __name__ == "__main__":
    main(sys.argv[1:])
