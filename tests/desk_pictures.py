"""Draws the desk's pictures of docs/gallery: `python -m tests.desk_pictures [NAME ...]`, all of them or those named.

It needs chromium, playwright and Pillow, and searches for nothing: see tests/helpers/filled_desk.py.
"""

from __future__ import annotations

import io
import shutil
import sys
import tempfile
from pathlib import Path
from typing import Any, Final

ROOT = Path(__file__).parents[1]
sys.path[:0] = [str(ROOT / ".names"), str(ROOT / "tests" / "helpers")]
TARGET: Final = ROOT / "docs" / "gallery"
WIDTH, MOST_HIGH, PHONE = 1000, 1240, 360
COLOURS: Final = 24
"""Of a picture: the pages are ink on paper, and so few make the files a third as large."""
SHOWN: Final = (
    *("clients", "client", "brief", "week", "line", "settle", "why", "others", "clash", "compare", "minutes"),
    *("season", "block", "next", "happened", "replan", "log", "sheets", "variants", "check"),
)
"""The pages that are drawn as on a desk; the gym is drawn as on a phone."""
UNSEEN: Final = """() => {
  if (document.activeElement) document.activeElement.blur();
  const place = document.querySelector(".card code");
  if (place) place.textContent = "~/.local/share/setwright/book.db";
}"""
"""No focus, and the usual place of a book in that of the scratch one."""
PASTED: Final = """day,exercise,sets,reps,RIR,rest
mon,Barbell bench press,4,6-10,1,150
mon,Incline dumbbell press,4,8-12,1,90
mon,Chest-supported dumbbell row,3,8-12,1,90
mon,Dumbbell curl,3,10-15,1,60
thu,Barbell back squat,4,6-10,2,180
thu,Barbell Romanian deadlift,3,6-10,2,150
thu,Leg press,3,10-15,1,120
thu,Hanging knee raise,3,8-12,1,60
sat,Pull-up,4,6-10,1,120
sat,Barbell overhead press,4,6-10,1,120
sat,Dumbbell side raise,4,12-15,1,60
"""


def draw(names: tuple[str, ...]) -> None:
    """The pages of some names as pictures."""
    from filled_desk import filled_desk
    from playwright.sync_api import sync_playwright
    from served_desk import served

    with tempfile.TemporaryDirectory() as folder:
        filled = filled_desk(Path(folder))
        with served(filled.desk) as (origin, address), sync_playwright() as driver:
            browser = driver.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
            for name in names:
                wide = PHONE if name == "gym" else WIDTH
                page = browser.new_page(viewport={"width": wide, "height": 700}, locale="en-GB")
                page.goto(address)
                page.goto(origin + filled.pages[name])
                if name == "check":
                    check(page)
                if name == "line":
                    page.goto(origin + filled.pages["week"])
                    page.locator("#change-thu-heel-raised-goblet-squat").click()
                    page.wait_for_selector(".panel")
                page.evaluate(UNSEEN)
                page.wait_for_timeout(300)
                high = min(MOST_HIGH, page.evaluate("() => document.body.scrollHeight"))
                page.set_viewport_size({"width": wide, "height": high})
                (TARGET / f"desk-{name}.png").write_bytes(small(page.screenshot()))
                page.close()
            browser.close()


def check(page: Any) -> None:
    """A week made elsewhere, checked."""
    page.fill("#paste", PASTED)
    page.get_by_role("button", name="Check it").click()
    page.wait_for_selector("text=Week index")


def small(data: bytes) -> bytes:
    """A picture with few colours."""
    from PIL import Image

    target = io.BytesIO()
    picture = Image.open(io.BytesIO(data)).convert("RGB").quantize(COLOURS, dither=Image.Dither.NONE)
    picture.save(target, "PNG", optimize=True)
    return target.getvalue()


if __name__ == "__main__":
    draw(tuple(sys.argv[1:]) or (*SHOWN, "gym"))
