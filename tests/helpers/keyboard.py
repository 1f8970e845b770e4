"""A page used by keyboard alone: Tab until what is wanted has the focus, then type or press."""

from __future__ import annotations

from typing import Any

MOST_TABS = 200
FOCUSED = """() => {
  const it = document.activeElement;
  const labels = it.labels ? [...it.labels].map((label) => label.textContent) : [];
  const said = it.getAttribute("aria-label") || labels.join(" ") || it.textContent || "";
  return said.replace(/\\s+/g, " ").trim();
}"""


class Keyboard:
    """Does acts on a page by keys, and counts them; Tabs that lead to a thing are not acts."""

    def __init__(self, page: Any) -> None:
        self.page, self.acts = page, 0

    def reach(self, name: str) -> None:
        """Tab until the thing of a name has the focus; fails where none comes to have it."""
        seen = []
        for _ in range(MOST_TABS):
            said = self.page.evaluate(FOCUSED)
            if said.startswith(name):
                return
            seen.append(said[:40])
            self.page.keyboard.press("Tab")
        raise AssertionError(f"no key leads to {name!r}; on the way were {seen}")

    def type(self, name: str, text: str) -> None:
        """Fill a field."""
        self.reach(name)
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)
        self.acts += 1

    def press(self, name: str, key: str = "Enter") -> None:
        """Press a button or follow a link."""
        self.reach(name)
        self.page.keyboard.press(key)
        self.acts += 1
