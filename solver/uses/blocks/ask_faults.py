"""What is wrong with what is asked of a block, all at once, and its names as the catalogue's ids."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from itertools import combinations

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.defaults import LIMITS, WEEKDAY_NAMES
from setwright.solver.brief.name_resolver import NameResolver
from setwright.solver.brief.phrase.lexicon import lexicon_of
from setwright.solver.log.mondays import monday_of
from setwright.solver.uses.blocks.ask import MOST_WEEKS, WEEK, BlockAsk, Sessions, Short, Span, Travel

MOST_LIGHTER_EVERY = 26
MOST_SETS_NOW = 60
MOST_BREAK = 520
"""Ten years."""


def checked(ask: BlockAsk, catalogue: Catalogue) -> BlockAsk:
    """The ask with kits and muscles as ids, groups taken apart; raises UsageFault with every fault found."""
    faults = [*_of_numbers(ask), *_of_dates(ask)]
    travel = tuple(_named(travel, catalogue, faults) for travel in ask.travel)
    now = _muscles(ask, catalogue, faults)
    if faults:
        raise UsageFault(faults)
    return replace(ask, travel=travel, now=now)


def shown_span(span: Span) -> str:
    """Its two days in ISO 8601."""
    return f"{span.first.isoformat()}..{span.last.isoformat()}"


def _of_numbers(ask: BlockAsk) -> Iterator[Fault]:
    if not 1 <= ask.weeks <= MOST_WEEKS:
        yield Fault("weeks", f"got {ask.weeks}, expected 1 to {MOST_WEEKS}", "plan a long time as several blocks")
    every = ask.lighter_every
    if every is not None and every != 0 and not 2 <= every <= MOST_LIGHTER_EVERY:
        yield Fault(
            "lighter-every",
            f"got {every}, expected 2 to {MOST_LIGHTER_EVERY}, or 0 for none",
            "a lighter week follows weeks that are not",
        )
    if not 0 <= ask.break_weeks_before <= MOST_BREAK:
        yield Fault("break", f"got {ask.break_weeks_before}, expected 0 to {MOST_BREAK} weeks", "count the weeks off")
    for name, sets in ask.now:
        if not 0 <= sets <= MOST_SETS_NOW:
            yield Fault(f"now {name}", f"got {sets:g}, expected 0 to {MOST_SETS_NOW} weekly sets", "count one week")
    for kind, span in ask.spans():
        if isinstance(span, Travel | Short) and span.sessions is not None:
            yield from _of_sessions(f"{kind} {shown_span(span)}", span.sessions)


def _of_sessions(where: str, sessions: Sessions) -> Iterator[Fault]:
    for what, field, got in (("sessions", "days", sessions.count), ("minutes", "minutes", sessions.minutes)):
        low, high = LIMITS[field]
        if not low <= got <= high:
            yield Fault(where, f"got {got} {what}, expected {low:g} to {high:g}", "write for example 2x30")


def _of_dates(ask: BlockAsk) -> Iterator[Fault]:
    spans = tuple(ask.spans())
    if ask.starts is None:
        if spans:
            kind, span = spans[0]
            where = f"{kind} {shown_span(span)}"
            yield Fault(where, "has dates, but the block has no first day", "say when the block starts: a Monday")
        return
    if ask.starts.weekday() != 0:
        monday = monday_of(ask.starts)
        weekday = WEEKDAY_NAMES[ask.starts.weekday()].capitalize()
        got = f"{ask.starts.isoformat()} is a {weekday}"
        yield Fault("starts", f"{got}, expected a Monday", f"say {monday.isoformat()} or {(monday + WEEK).isoformat()}")
    yield from _of_spans(ask, spans)


def _of_spans(ask: BlockAsk, spans: tuple[tuple[str, Span], ...]) -> Iterator[Fault]:
    assert ask.starts is not None
    end = ask.starts + ask.weeks * WEEK - timedelta(days=1)
    for kind, span in spans:
        where = f"{kind} {shown_span(span)}"
        if span.last < span.first:
            yield Fault(where, "ends before it begins", "write the first day before the last")
            continue
        beyond = span.first < ask.starts or (span.last > end and not ask.shifted)
        if beyond:
            block = f"the block, {ask.starts.isoformat()}..{end.isoformat()}"
            yield Fault(where, f"lies outside {block}", "name days of the block, or plan more weeks")
        if kind in ("short", "minimum") and (span.first.weekday(), span.last.weekday()) != (0, 6):
            yield Fault(where, "is not of whole weeks", "name a Monday and a Sunday")
    for (kind, one), (other_kind, other) in combinations(spans, 2):
        if one.first <= other.last and other.first <= one.last:
            where = f"{kind} {shown_span(one)}"
            yield Fault(where, f"overlaps {other_kind} {shown_span(other)}", "a day is of one kind only")


def _named(travel: Travel, catalogue: Catalogue, faults: list[Fault]) -> Travel:
    """The travel with its kit as ids; what is unknown is kept as a fault."""
    where = f"travel {shown_span(travel)}"
    if not travel.kit:
        faults.append(Fault(where, "names no kit", "say what is at hand there, such as hotel-gym"))
        return travel
    resolver = NameResolver(lexicon_of(catalogue), catalogue, None)
    said = travel.kit[0] if len(travel.kit) == 1 else list(travel.kit)
    found = resolver.resolve_brief({"equipment": said})["equipment"]
    faults += [fault.at(where) for fault in resolver.faults]
    return replace(travel, kit=(found,) if isinstance(found, str) else tuple(found))


def _muscles(ask: BlockAsk, catalogue: Catalogue, faults: list[Fault]) -> tuple[tuple[str, float], ...]:
    """The present sets by muscle, in the catalogue's order; a group stands for each of its muscles not named itself."""
    resolver = NameResolver(lexicon_of(catalogue), catalogue, None)
    found: dict[str, float] = {}
    for name, sets in ask.now:
        resolved = resolver.resolve_brief({"muscles": {name: sets}})["muscles"]
        for muscle in resolved:
            if muscle in found:
                faults.append(Fault(f"now {name}", f"is {muscle!r} a second time", "keep one of the two"))
            found[muscle] = sets
    faults += [fault.at(f"now {fault.where.removeprefix('muscles.')}") for fault in resolver.faults]
    parts = {
        muscle: sets
        for name, sets in found.items()
        if name in catalogue.groups and name not in catalogue.muscles
        for muscle in catalogue.groups[name].otherwise
    }
    named = {muscle: sets for muscle, sets in found.items() if muscle in catalogue.muscles}
    whole = parts | named
    return tuple((muscle, whole[muscle]) for muscle in catalogue.muscles if muscle in whole)
