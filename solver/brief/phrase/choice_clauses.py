"""The clauses about exercises, movements, cautions and the smaller choices."""

from __future__ import annotations

from typing import Any

from setwright.solver.brief.phrase.draft import Said
from setwright.solver.brief.phrase.durations import take_duration
from setwright.solver.brief.phrase.lexicon import KIND_NAMES, Kind
from setwright.solver.brief.phrase.muscle_clauses import MUSCLES, names
from setwright.solver.brief.phrase.reader import Reader

EXERCISES: tuple[Kind, ...] = ("exercise",)
_NO: tuple[Kind, ...] = (*MUSCLES, "item", "exercise")
_LIKED: tuple[Kind, ...] = ("item", "exercise")
_CAUTIONS: tuple[Kind, ...] = ("caution",)


def no_clause(r: Reader, said: Said, word: str) -> None:
    """`no X`: none for a muscle, absent for an item, avoided for an exercise."""
    for met in names(r, _NO, word, "a muscle, an item of equipment or an exercise"):
        if met.kind in MUSCLES:
            said.muscle(met.id, emphasis="none")
        else:
            said.add("without" if met.kind == "item" else "avoid", met.id)


def list_clause(r: Reader, said: Said, word: str) -> None:
    """`avoid`, `without`, `like` and `dislike`, each with its list."""
    field, kinds = {
        "without": ("without", ("item",)),
        "avoid": ("avoid", EXERCISES),
        "like": ("like", _LIKED),
        "dislike": ("dislike", _LIKED),
        "single": ("owned.single", ("item",)),
    }[word]
    wanted = " or ".join(KIND_NAMES[kind] for kind in kinds)
    for met in names(r, kinds, word, wanted):
        said.add(field, met.id)


def must_clause(r: Reader, said: Said, word: str) -> None:
    """`must hinge`: what is not a movement is told by the check of names."""
    r.take_any(("have", "include", "a"))
    if r.done or r.separator():
        r.fault(f"'{word}' names nothing, expected a movement after it")
        return
    while True:
        met = r.take_met(("movement",))
        said.add("must", met.id if met else r.unknown())
        start = r.at
        if not (r.skip_separators() and r.met(("movement",))):
            r.at = start
            return


def pin_clause(r: Reader, said: Said, word: str) -> None:
    """`pin X on wed 3 sets with Y`; what follows an unknown exercise still belongs to it."""
    before = len(r.faults)
    for met in names(r, EXERCISES, word, "an exercise"):
        pin: dict[str, Any] = {"exercise": met.id}
        while _pin_part(r, pin):
            pass
        said.add("pins", pin)
    if len(r.faults) > before:
        while _pin_part(r, {}):
            pass


def _pin_part(r: Reader, pin: dict[str, Any]) -> bool:
    """One more thing said of a pin."""
    ahead = 1 if r.sees("on") else 0
    if "day" not in pin and (day := r.weekday(ahead)):
        r.at += ahead + 1
        pin["day"] = day
        return True
    number = r.number()
    if "sets" not in pin and number is not None and r.peek(1).text in ("sets", "set", "x"):
        r.at += 2
        pin["sets"] = int(number) if number == int(number) else number
        return True
    for words in (("paired", "with"), ("beside",), ("with",)):
        if "pair_with" not in pin and r.sees(*words) and (met := r.met(EXERCISES, len(words))):
            r.at += len(words) + met.length
            pin["pair_with"] = met.id
            return True
    return False


def caution_clause(r: Reader, said: Said, word: str) -> None:
    """`caution knee`, `bad knee`: who said so and when a phrase cannot say."""
    if word == "bad":
        r.at -= 1
        if not r.met(_CAUTIONS):
            r.at += 1
    for met in names(r, _CAUTIONS, word, "a caution"):
        said.add("client.cautions", {"tag": met.id})


def bare_caution(r: Reader, said: Said) -> bool:
    """Read a condition said by itself: `pregnant`, `knee pain`; a joint alone says too little."""
    met = r.met(_CAUTIONS)
    if met is None or (met.length == 1 and met.text == met.id and met.id in JOINTS):
        return False
    other = r.met((*MUSCLES, "exercise", "item", "kit"))
    if other and other.length >= met.length:
        return False
    r.at += met.length
    said.add("client.cautions", {"tag": met.id})
    return True


JOINTS = ("shoulder", "elbow", "wrist", "hip", "knee", "ankle", "neck")


def sport_clause(r: Reader, said: Said, word: str) -> None:
    """`sport football on tue lower`: the words up to the weekday are its name."""
    start = r.at
    while not r.done and not r.separator() and not r.weekday() and not r.sees("on"):
        r.at += 1
    name = r.written(start)
    found = False
    regions: list[str] = []
    r.take("on")
    days: list[str] = []
    while day := r.weekday():
        r.at += 1
        days.append(day)
        found = True
        if r.sees("and") and r.weekday(1):
            r.at += 1
    while region := r.take_any(("lower", "push", "pull")):
        regions.append(region)
        if r.peek(1).text in ("lower", "push", "pull"):
            r.take("and")
    if not found or not name:
        r.fault(
            f"'{word} {name}'".replace(" '", "'") + " does not say on which day",
            "write sport football on tue lower",
        )
    for day in days if name else []:
        said.add("other", {"weekday": day, "name": name, **({"regions": regions} if regions else {})})


def keep_clause(r: Reader, said: Said, word: str) -> None:
    """`keep 90 %`: the share of the stimulus kept when minutes are cut."""
    number = r.number()
    if number is None or r.peek(1).text not in ("%", "percent"):
        r.fault(f"'{word}' takes a share", "write for example keep 90 %")
        return
    r.at += 2
    said.set("keep_share", number / 100)


def time_clause(r: Reader, said: Said, word: str) -> None:
    """`warm up 5 min` and `spare 3 min`, kept in seconds."""
    if word == "warm":
        r.take("up")
    minutes = take_duration(r)
    field = {"warm": "warm_up", "spare": "spare"}[word]
    if minutes is None:
        r.fault(f"'{field.replace('_', ' ')}' takes minutes", f"write for example {field.replace('_', ' ')} 5 min")
        return
    said.set(f"clock.{field}", round(60 * minutes))


def rule_clause(r: Reader, said: Said, word: str) -> None:
    """`rule spacing off`: an id with off, hard or a cost."""
    start = r.at
    while r.peek().sort == "word" and r.peek().text not in ("off", "hard") and not r.separator():
        r.at += 1
    name = "-".join(token.text for token in r.tokens[start : r.at])
    value: str | float | None = r.take_any(("off", "hard"))
    if value is None and (number := r.number()) is not None:
        r.at += 1
        value = number
    if not name or value is None:
        r.fault(f"'{word}' takes a rule's id and off, hard or a cost", "write for example rule third-day off")
        return
    said.set(f"rules.{name}", value)
