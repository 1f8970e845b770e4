"""The recipe of the generated briefs: `python -m tests.bench.recipe` writes tests/bench/instances anew."""

from __future__ import annotations

from pathlib import Path
from random import Random

FOLDER = Path(__file__).parent / "instances"
COUNT = 40
"""Briefs drawn by `brief`; those of `SHORT`, `SEVEN` and `UNEVEN` follow them."""
SEED = 2026
MINUTES = (20, 25, 30, 35, 40, 45, 50, 60, 60, 75, 90)
KITS = (
    "commercial-gym", "commercial-gym", "machine-gym", "barbell-garage", "home-dumbbells", "hotel-gym",
    "bands", "bodyweight-and-bands",
)  # fmt: skip
WISHES = ((), (), ("delts",), ("arms",), ("back",), ("glutes",), ("chest", "biceps"), ("quads", "calves"))
WEEKS = ("mon", "mon thu", "mon wed fri", "mon tue thu fri", "mon tue wed fri sat", "mon tue wed thu fri sat",
         "mon tue wed thu fri sat sun")  # fmt: skip


def brief(number: int) -> str:
    """One brief as TOML: days and goals by turns, the rest drawn."""
    random = Random(SEED + number)
    days = WEEKS[(1, 2, 2, 3, 3, 4, 5, 6, 1, 2)[number % 10]].split()
    goal = ("balanced", "growth", "efficiency", "balanced")[number % 4]
    minutes = random.choice([m for m in MINUTES if m * len(days) <= 450])
    lines = [f'title = "Generated brief {number + 1}"', f'goal = "{goal}"', f'equipment = "{random.choice(KITS)}"']
    if goal == "balanced" and number % 3 == 0:
        lines.append("pairs = true")
    lines += ["[client]", f'code = "G{number + 1:02d}"']
    lines.append(f'experience = "{random.choice(("novice", "intermediate", "intermediate", "advanced"))}"')
    wishes = random.choice(WISHES)
    if wishes:
        lines += ["[muscles]", *(f'{muscle} = "priority"' for muscle in wishes)]
    for day in days:
        lines += ["[[days]]", f'weekday = "{day}"', f"minutes = {minutes}"]
    return "\n".join(lines) + "\n"


SHORT = (
    ("mon wed fri", 10, "efficiency", "commercial-gym"), ("mon wed fri", 10, "balanced", "home-dumbbells"),
    ("mon thu", 15, "efficiency", "bands"), ("mon thu", 15, "growth", "commercial-gym"),
    ("mon tue thu fri", 12, "efficiency", "hotel-gym"), ("mon wed fri", 20, "efficiency", "home-dumbbells"),
    ("mon", 20, "balanced", "machine-gym"), ("mon wed fri", 20, "growth", "barbell-garage"),
)  # fmt: skip
"""Weekdays, minutes, goal and kit of days of 10 to 20 minutes: every goal, most kits."""
SEVEN = (
    (30, "balanced", "commercial-gym", ("arms",)), (20, "efficiency", "home-dumbbells", ()),
    (45, "growth", "machine-gym", ("back",)), (15, "balanced", "bands", ()),
    (60, "growth", "commercial-gym", ("glutes",)),
)  # fmt: skip
"""Minutes, goal, kit and priorities of weeks of seven like days."""
UNEVEN = (
    (("mon", 30, "home-dumbbells"), ("thu", 75, "commercial-gym")),
    (("tue", 20, "bands"), ("wed", 45, "machine-gym"), ("sat", 90, "barbell-garage")),
    (("mon", 40, "commercial-gym"), ("wed", 25, "hotel-gym"), ("fri", 55, "commercial-gym")),
    (("mon", 45, "commercial-gym"), ("tue", 30, "home-dumbbells"), ("thu", 45, "commercial-gym"),
     ("sun", 60, "home-dumbbells")),
    (("mon", 15, "bodyweight-and-bands"), ("tue", 60, "barbell-garage"), ("wed", 15, "bodyweight-and-bands"),
     ("fri", 60, "barbell-garage"), ("sat", 35, "home-dumbbells")),
)  # fmt: skip
"""Weeks whose days differ in minutes and place."""


def briefs() -> list[str]:
    """Every brief as TOML, in the order of their numbers."""
    found = [brief(number) for number in range(COUNT)]
    for weekdays, minutes, goal, kit in SHORT:
        found.append(told(len(found), goal, (), [(day, minutes, kit) for day in weekdays.split()]))
    for minutes, goal, kit, wishes in SEVEN:
        found.append(told(len(found), goal, wishes, [(day, minutes, kit) for day in WEEKS[-1].split()]))
    for number, days in enumerate(UNEVEN):
        found.append(told(len(found), ("balanced", "growth", "efficiency")[number % 3], (), list(days)))
    return found


def told(number: int, goal: str, wishes: tuple[str, ...], days: list[tuple[str, int, str]]) -> str:
    """A brief that is written down and not drawn."""
    lines = [f'title = "Generated brief {number + 1}"', f'goal = "{goal}"', "[client]", f'code = "G{number + 1:02d}"']
    if wishes:
        lines += ["[muscles]", *(f'{muscle} = "priority"' for muscle in wishes)]
    for weekday, minutes, kit in days:
        lines += ["[[days]]", f'weekday = "{weekday}"', f"minutes = {minutes}", f'equipment = "{kit}"']
    return "\n".join(lines) + "\n"


def main() -> None:
    """Write every brief as a file."""
    FOLDER.mkdir(exist_ok=True)
    for number, text in enumerate(briefs(), 1):
        (FOLDER / f"g{number:02d}.toml").write_text(text, "utf-8")


if __name__ == "__main__":
    main()
