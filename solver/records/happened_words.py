"""What a coach says happened, understood against a week: days, minutes, stations, muscles and lifts."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import TYPE_CHECKING, Final

from setwright.catalogue.fault_collector import FaultCollector
from setwright.catalogue.faults import Fault
from setwright.solver.brief.defaults import WEEKDAYS
from setwright.solver.brief.phrase.named import entry_named
from setwright.solver.brief.schema import Pin
from setwright.solver.sheets.common.words import listed
from setwright.solver.uses.replan.happened import DayChange, Happened, done_before

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.phrase.lexicon import Kind
    from setwright.solver.evaluation.resolved_brief import ResolvedBrief

FIELDS: Final = ("missed", "today", "taken", "kit", "sore", "pin", "avoid")
"""The fields of which one at least says that something happened."""
NONE: Final = "none"
"""The word for a week of which nothing is done yet."""


@dataclass(frozen=True)
class SaidHappened:
    """What is said, as it was written; `done` is None where nothing is said of it."""

    done: tuple[str, ...] | None = None
    missed: tuple[str, ...] = ()
    today: tuple[tuple[str | None, int], ...] = ()
    """(day, minutes) that it has now; a day that is not said is None."""
    taken: tuple[str, ...] = ()
    on: str | None = None
    dates: tuple[date, date] | None = None
    """The first and the last day that `taken`, `kit`, `sore` and `avoid` speak of, instead of `on`."""
    kit: str | None = None
    sore: tuple[str, ...] = ()
    pins: tuple[str, ...] = ()
    avoid: tuple[str, ...] = ()


def why_words(said: SaidHappened) -> str:
    """Why a week was planned again, in a few words; that a muscle is sore is no one's business later."""
    today = [f"{day or 'the next session'} {minutes} min" for day, minutes in said.today]
    parts = [*(f"missed {day}" for day in said.missed), *today, *(f"{name} taken" for name in said.taken)]
    parts += [said.kit] if said.kit else []
    parts += [f"{pin} pinned" for pin in said.pins] + [f"without {name}" for name in said.avoid]
    return ", ".join(parts) or "planned again"


def happened_of(
    said: SaidHappened, resolved: ResolvedBrief, faults: FaultCollector, named: Callable[[str], str]
) -> Happened:
    """What happened, days as their places in the week; what is amiss is added to `faults`, and left out.

    `named` gives a field of `said` the name by which the coach knows it: --missed, or the label of a form.
    """
    return _Reader(said, resolved, faults, named).read()


class _Reader:
    """Understands what is said; each fault is led by the name of its field."""

    def __init__(
        self, said: SaidHappened, resolved: ResolvedBrief, faults: FaultCollector, named: Callable[[str], str]
    ) -> None:
        self._said, self._resolved, self._faults, self._named = said, resolved, faults, named
        self._changes: dict[int, DayChange] = {}

    @property
    def _catalogue(self) -> Catalogue:
        return self._resolved.catalogue

    def read(self) -> Happened:
        """All of it; the order is that of the help."""
        said = self._said
        missed = self._days(self._named("missed"), _words(said.missed)) | self._missed_before()
        named = [(self._day(self._named("today"), day) if day else None, minutes) for day, minutes in said.today]
        done = self._done(missed, frozenset(day for day, _ in named if day is not None))
        self._check_apart(done, missed)
        left = Happened(done, missed).left(len(self._resolved.days))
        on = self._day_left(self._named("on"), said.on, left)
        self._minutes(named, on, left)
        dated = None if self._said.dates is None else self._between(*self._said.dates, left)
        where = dated or (left if on is None else (on,))
        pins = self._pins(left)
        self._check_pins_open(pins)
        self._add_closed(where, where[:1] if on is None and dated is None else where)
        self._check_something(done, missed, left)
        return Happened(done, missed, self._changes, pins)

    # ---- days

    def _day(self, option: str, word: str) -> int | None:
        from setwright.solver.sheets.screen.addresses import day_at

        found = self._faults.result_of(lambda: day_at(self._resolved, word, option))
        return None if found is None else found.index

    def _days(self, option: str, words: Iterable[str]) -> frozenset[int]:
        found = [self._day(option, word) for word in words]
        return frozenset(day for day in found if day is not None)

    def _missed_before(self) -> frozenset[int]:
        """The sessions that the week's own brief says are missed."""
        return frozenset(day.index for day in self._resolved.days if day.missed)

    def _name(self, day: int) -> str:
        return self._resolved.days[day].weekday or str(day + 1)

    def _done(self, missed: frozenset[int], today: frozenset[int]) -> frozenset[int]:
        """The sessions said to be done, else those before the day that is named."""
        if self._said.done is None:
            return done_before(len(self._resolved.days), missed, today)
        words = _words(self._said.done)
        return self._days(self._named("done"), () if words == (NONE,) else words)

    def _check_apart(self, done: frozenset[int], missed: frozenset[int]) -> None:
        for day in sorted(done & missed):
            before = " in the week already" if day in self._missed_before() else ""
            self._fault(
                self._named("done"), f"{self._name(day)} is missed{before}", "name it as done or as missed, not as both"
            )

    def _day_left(self, option: str, word: str | None, left: tuple[int, ...]) -> int | None:
        """A day that must be left to plan; None where nothing is said or it is amiss."""
        day = self._day(option, word) if word else None
        if day is None or day in left:
            return day
        self._fault(option, f"{self._name(day)} is done or missed", self._left_words(left))
        return None

    def _between(self, first: date, last: date, left: tuple[int, ...]) -> tuple[int, ...]:
        """The days left whose weekday lies between two dates; a fault where there is none, or the dates are amiss."""
        if self._said.on is not None:
            self._fault(self._named("from"), f"{self._named('on')} names the day already", "drop one of the two")
        if last < first:
            self._fault(self._named("from"), f"{first} comes after {last}", "write the first day before the last")
        weekdays = {
            WEEKDAYS[(first + timedelta(days=n)).weekday()] for n in range(max(0, min(7, (last - first).days + 1)))
        }
        found = tuple(day for day in left if self._resolved.days[day].weekday in weekdays)
        if weekdays and not found:
            self._fault(
                self._named("from"), f"no session that is left lies from {first} to {last}", self._left_words(left)
            )
        return found

    def _left_words(self, left: tuple[int, ...]) -> str:
        return f"name a day that is left: {', '.join(map(self._name, left))}" if left else "no day is left"

    def _minutes(self, named: list[tuple[int | None, int]], on: int | None, left: tuple[int, ...]) -> None:
        """The minutes that days have now; an unnamed one is that of `on`, or the next after what is done or missed."""
        known = self._said.done is not None or bool(self._said.missed)  # else nobody says where the week stands
        for (word, minutes), (day, _) in zip(self._said.today, named, strict=True):
            if word and day is not None and day not in left:
                self._fault(self._named("today"), f"{self._name(day)} is done or missed", self._left_words(left))
            elif word is None and on is None and not (known and left):
                said = f"which day has {minutes} minutes is not said"
                self._fault(
                    self._named("today"), said, f"write DAY={minutes}, or say with {self._named('done')} what is done"
                )
            elif word is None or day is not None:
                self._change(day if day is not None else on if on is not None else left[0], minutes=minutes)

    # ---- what is closed, and what must stand

    def _add_closed(self, days: tuple[int, ...], sore_days: tuple[int, ...]) -> None:
        """Stations, places and exercises on all days asked, sore muscles on the next."""
        said = self._said
        for word in said.taken:
            kind, found = self._entry(self._named("taken"), word, ("item", "exercise"))
            stations = self._stations(found) if kind == "exercise" else (found,) if kind else ()
            self._close(days, without=stations, avoid=(found,) if kind == "exercise" and not stations else ())
        if said.kit is not None and (kit := self._entry(self._named("kit"), said.kit, ("kit",))[1]):
            for day in days:
                self._change(day, kit=kit)
        for word in said.sore:
            if muscle := self._entry(self._named("sore"), word, ("muscle", "group"))[1]:
                self._close(sore_days, rested=(muscle,))
        for word in said.avoid:
            if exercise := self._entry(self._named("avoid"), word, ("exercise",))[1]:
                self._close(days, avoid=(exercise,))

    def _stations(self, exercise: str) -> tuple[str, ...]:
        """The stations that an exercise stands at; none where what it needs can be carried."""
        needs, items = self._catalogue.exercises[exercise].needs, self._catalogue.items
        return tuple(sorted(item for item in needs if item in items and items[item].place == "fixed"))

    def _entry(self, option: str, word: str, kinds: tuple[Kind, ...]) -> tuple[str, str]:
        """The kind and the id of a word, or two empty texts where it is not known."""
        return self._faults.result_of(lambda: entry_named(word, option, kinds, self._catalogue)) or ("", "")

    def _close(self, days: Iterable[int], **more: tuple[str, ...]) -> None:
        """Add to the lists of what is closed on some days."""
        for day in days:
            now = self._changes.get(day, DayChange())
            self._change(day, **{name: (*getattr(now, name), *ids) for name, ids in more.items()})

    def _change(self, day: int, **fields: object) -> None:
        self._changes[day] = replace(self._changes.get(day, DayChange()), **fields)  # type: ignore[arg-type]

    def _pins(self, left: tuple[int, ...]) -> tuple[Pin, ...]:
        """The pins, EXERCISE or EXERCISE@DAY."""
        found = [self._pin(text, left) for text in self._said.pins]
        return tuple(pin for pin in found if pin is not None)

    def _pin(self, text: str, left: tuple[int, ...]) -> Pin | None:
        word, _, day_word = text.partition("@")
        exercise = self._entry(self._named("pin"), word.strip(), ("exercise",))[1]
        if not day_word:
            return Pin(exercise=exercise) if exercise else None
        day = self._day_left(self._named("pin"), day_word.strip(), left)
        if day is None or not exercise:
            return None
        weekday = self._resolved.brief.days[day].weekday
        if weekday is None:
            self._fault(self._named("pin"), "the sessions of this week have no weekdays", f"drop @{day_word}")
            return None
        return Pin(exercise=exercise, day=weekday)

    def _check_pins_open(self, pins: tuple[Pin, ...]) -> None:
        avoided = {found for word in self._said.avoid if (found := self._known(word))}
        for pin in pins:
            name = self._catalogue.exercises[pin.exercise].name
            if pin.exercise in avoided:
                self._fault(self._named("pin"), f"{name} is under {self._named('avoid')} too", "drop one of the two")
            elif pin.exercise in self._resolved.brief.avoid:
                self._fault(self._named("pin"), f"the brief avoids {name}", "name another exercise")

    def _known(self, word: str) -> str | None:
        """The id of an exercise, or None without a word about it."""
        from setwright.solver.brief.phrase.lexicon import lexicon_of

        found = lexicon_of(self._catalogue).resolve(word, ("exercise",))
        return found[1] if found else None

    # ---- whether there is anything to do

    def _check_something(self, done: frozenset[int], missed: frozenset[int], left: tuple[int, ...]) -> None:
        said, count = self._said, len(self._resolved.days)
        others = any((said.today, said.taken, said.kit, said.sore, said.pins, said.avoid))
        if len(missed) == count:
            self._fault(self._named("missed"), "every session is missed: nothing is left to plan", "plan a new week")
        elif not left and (others or not missed):
            self._fault(
                self._named("done"), "every session is done or missed: nothing is left to plan", "plan the next week"
            )
        elif not others and not said.missed:
            remedy = f"say it with {listed(map(self._named, FIELDS), 'or')}"
            self._fault("replan", "nothing has happened", remedy)

    def _fault(self, where: str, said: str, remedy: str) -> None:
        self._faults.add([Fault(where, said, remedy)])


def _words(texts: Iterable[str]) -> tuple[str, ...]:
    """The words between commas of some texts, each once."""
    return tuple(dict.fromkeys(word.strip().lower() for text in texts for word in text.split(",") if word.strip()))
