"""The recipe of the generated briefs: `python -m tests.bench.recipe` writes tests/bench/instances anew."""

from __future__ import annotations

from pathlib import Path
from random import Random

FOLDER = Path(__file__).parent / "instances"
COUNT = 40
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


def main() -> None:
    """Write every brief as a file."""
    FOLDER.mkdir(exist_ok=True)
    for number in range(COUNT):
        (FOLDER / f"g{number + 1:02d}.toml").write_text(brief(number), "utf-8")


if __name__ == "__main__":
    main()
