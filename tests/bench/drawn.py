"""Random briefs by seed: any mix of days, kits, wishes, bands, pins, cautions and rules that the schema allows."""

from __future__ import annotations

from random import Random
from typing import Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.solver.brief.understand import Understood, understand
from setwright.solver.reckoning.rules import RULES

SMALL = 20
"""Seeds below this give briefs of one or two short days in a small kit, cheap enough for every test run."""
WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
SMALL_KITS = ("bands", "home-dumbbells", "bodyweight-and-bands", "bodyweight")
KITS = (*SMALL_KITS, "hotel-gym", "barbell-garage", "machine-gym", "home-barbell-and-dumbbells", "commercial-gym")
MUSCLES = (
    "chest", "front-delts", "side-delts", "rear-delts", "lats", "upper-back", "biceps", "triceps", "quads",
    "hamstrings", "glutes", "calves", "abs", "delts", "back", "arms", "legs", "core",
)  # fmt: skip
JOINTS = ("shoulder", "elbow", "wrist", "lower-back", "hip", "knee", "ankle", "neck", "pregnancy", "diabetes")
FOCUSES = ("full-body", "upper", "lower", "push", "pull", "arms")
MUSTS = ("hinge", "knee", "horizontal-push", "row", "vertical-pull", "vertical-push")
CLOCKS = (
    {"warm_up": 300}, {"warm_up": 120}, {"spare": 120}, {"seconds_per_rep": 4.5}, {"ramp_lower": 120, "ramp_push": 30},
    {"pair_change": 20},
)  # fmt: skip


def drawn(seed: int, catalogue: Catalogue) -> Understood:
    """The brief of a seed: the first draw that agrees with itself."""
    random = Random(f"cross {seed}")
    while True:
        try:
            return understand(raw(random, seed < SMALL, catalogue), catalogue, f"seed {seed}", tuple(RULES))
        except UsageFault:
            continue


def raw(random: Random, small: bool, catalogue: Catalogue) -> dict[str, Any]:
    """One draw as a raw table, which need not agree with itself."""
    count = random.randint(1, 2) if small else random.choice((1, 2, 2, 3, 3, 3, 4, 4, 5, 6, 7))
    found = {
        "days": days(random, count, small),
        "equipment": random.choice(SMALL_KITS if small else KITS),
        "goal": random.choice(("growth", "balanced", "efficiency")),
        "client": client(random),
    }
    for field, chance, draw in PARTS:
        if random.random() < chance:
            found[field] = draw(random, catalogue)
    if "pins" in found and random.random() < 0.4:
        found["pins"][0]["day"] = random.choice(found["days"])["weekday"]
    return found


def days(random: Random, count: int, small: bool) -> list[dict[str, Any]]:
    """Weekdays with their minutes, now and then a theme or a place of their own."""
    minutes = (15, 20, 25) if small else (15, 20, 30, 40, 45, 60)
    each, uneven, themed = random.choice(minutes), random.random() < 0.3, random.random() < 0.2
    found: list[dict[str, Any]] = []
    for weekday in sorted(random.sample(WEEKDAYS, count), key=WEEKDAYS.index):
        day: dict[str, Any] = {"weekday": weekday, "minutes": random.choice(minutes) if uneven else each}
        if themed and random.random() < 0.5:
            day["focus"] = random.choice(FOCUSES)
        if random.random() < 0.06:
            day["equipment"] = random.choice(SMALL_KITS)
        found.append(day)
    return found


def client(random: Random) -> dict[str, Any]:
    """Who trains."""
    cautions = random.sample(JOINTS, random.choice((0, 0, 0, 1, 2)))
    return {
        "experience": random.choice(("novice", "intermediate", "intermediate", "advanced")),
        "trains_alone": random.random() < 0.3,
        "cautions": [{"tag": tag} for tag in cautions],
        "unit": random.choice(("kg", "lb")),
    }


def muscles(random: Random, _: Catalogue) -> dict[str, Any]:
    """Emphases and exact bands of up to three muscles or groups."""
    return {name: emphasis(random) for name in random.sample(MUSCLES, random.randint(1, 3))}


def emphasis(random: Random) -> Any:
    word = random.choice(("priority", "priority", "hold", "none", "normal", "band"))
    if word != "band":
        return word
    low = float(random.randint(0, 3))
    return {"at_least": low, "at_most": low + random.randint(2, 8)} | ({"days_at_least": 1} if low else {})


def pins(random: Random, catalogue: Catalogue) -> list[dict[str, Any]]:
    pin: dict[str, Any] = {"exercise": exercises(random, catalogue)[0]}
    return [pin | ({"sets": random.randint(2, 4)} if random.random() < 0.3 else {})]


def exercises(random: Random, catalogue: Catalogue) -> list[str]:
    """One to four exercises of rank 1 to 3."""
    known = [e.id for e in catalogue.exercises.values() if e.rank <= 3]
    return random.sample(known, random.randint(1, 4))


def rules(random: Random, _: Catalogue) -> dict[str, Any]:
    """Up to three rules turned off, made hard or priced anew; hard ones can only be turned off."""
    found: dict[str, Any] = {}
    for name in random.sample([r.id for r in RULES.values() if r.kind != "data"], random.randint(1, 3)):
        scored = RULES[name].kind == "scored"
        found[name] = random.choice(("off", "off", "hard", 0.5, 2.0)) if scored else "off"
    return found


def other(random: Random, _: Catalogue) -> list[dict[str, Any]]:
    """Sport on a day, hard on one region."""
    return [{"weekday": random.choice(WEEKDAYS), "regions": [random.choice(("lower", "push"))]}]


PARTS = (
    ("muscles", 0.6, muscles),
    ("pairs", 0.4, lambda random, _: random.random() < 0.6),
    ("techniques", 0.3, lambda random, _: random.random() < 0.6),
    ("reps", 0.2, lambda random, _: random.choice(("lower", "higher"))),
    ("dose", 0.08, lambda random, _: "minimum"),
    ("keep_share", 0.1, lambda random, _: random.choice((0.8, 0.95, 1.0))),
    ("rules", 0.3, rules),
    ("must", 0.1, lambda random, _: [random.choice(MUSTS)]),
    ("pins", 0.25, pins),
    ("avoid", 0.2, exercises),
    ("dislike", 0.2, exercises),
    ("like", 0.2, exercises),
    ("without", 0.1, lambda random, _: [random.choice(("bench", "rack", "cable", "step"))]),
    ("other", 0.12, other),
    ("clock", 0.15, lambda random, _: dict(random.choice(CLOCKS))),
)  # fmt: skip
