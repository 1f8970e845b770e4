"""The card's values: all that its template prints, in the order it is read, as plain JSON."""

from __future__ import annotations

from typing import Any

from setwright.solver.sheets.charts.charts import ChartStyle, bands_chart, muscle_said
from setwright.solver.sheets.charts.client_words import chart_words
from setwright.solver.sheets.charts.hatching import drawn_out
from setwright.solver.sheets.common.words import listed
from setwright.solver.sheets.handout.dates import first_day, free
from setwright.solver.sheets.handout.values import CardLine, Handout, Session

TYPEFACE = "Setwright Sans"
CHART_WIDTH = 350.0
"""Units of the chart's view box; set at about 0.85 pt each, its letters stand near 10 pt."""


def card_values(handout: Handout) -> dict[str, Any]:
    """Everything a card says, resolved to text, numbers and one chart."""
    busy = tuple(session for session in handout.sessions if session.lines)
    return {
        "paper": handout.coach.paper,
        **language(handout.coach.language),
        "words": dict(handout.coach.words),
        "title": _document_title(handout),
        "client": handout.client,
        "coach": {"name": handout.coach.name, "lines": list(handout.coach.lines)},
        "cover": _cover(handout),
        "sessions": [_page(handout, session, number + 1, len(busy)) for number, session in enumerate(busy)],
        "goal": _capital(handout.goal),
        "load_label": _load_label(handout),
        "review": handout.review.isoformat() if handout.review else "",
        "caution": handout.caution,
        "made_by": f"{handout.coach.words['made_by']} {handout.made_by}",
    }


def _document_title(handout: Handout) -> str:
    """What a reader's window shows: the week's title, the week, the client's code."""
    return ", ".join(part for part in (handout.title, handout.week, handout.client) if part)


def _capital(text: str) -> str:
    """Text that begins a line, its first letter large and the rest untouched."""
    return text[:1].upper() + text[1:]


def language(tag: str) -> dict[str, str | None]:
    """A language tag as typst takes it: the language, and the region where one is said."""
    parts = tag.split("-")
    regions = [part.lower() for part in parts[1:] if len(part) == 2 and part.isalpha()]
    return {"lang": parts[0].lower(), "region": regions[0] if regions else None}


def _load_label(handout: Handout) -> str:
    """The heading of the load column, with the client's unit."""
    unit = handout.document.get("brief", {}).get("client", {}).get("unit", "")
    return f"{handout.coach.words['load']} ({unit})" if unit else handout.coach.words["load"]


# ---- the cover


def _cover(handout: Handout) -> dict[str, Any]:
    """The week on one page: days, weekly sets against bands, index, why it is so, what was left out."""
    low, high = handout.interval
    return {
        "title": handout.title,
        "week": " · ".join(part for part in (handout.week, handout.start.isoformat() if handout.start else "") if part),
        "asked": handout.asked,
        "days": [_day(handout, session) for session in handout.sessions],
        "order": handout.coach.words["any_order"] if handout.any_order else "",
        "chart": chart(handout),
        "chart_said": _chart_said(handout),
        "index": f"{handout.index:.0f}",
        "interval": f"{handout.coach.words['interval']} {low}-{high}",
        "why": list(handout.why),
        "left_out": listed(handout.left_out),
        "on_loads": list(handout.on_loads),
    }


def _day(handout: Handout, session: Session) -> dict[str, Any]:
    """A day's row: its title, minutes, kit and exercises."""
    names = " · ".join(line.name for line in session.lines)
    minutes = f"{session.minutes} {handout.coach.words['min']}" if session.lines else ""
    return {
        "title": session.title,
        "date": _date_of(handout, session),
        "minutes": minutes,
        "place": session.place,
        "exercises": names or handout.coach.words["nothing"],
    }


def chart_style(handout: Handout) -> ChartStyle:
    """How the chart is drawn on paper: black, in the card's typeface, in the client's words."""
    words = chart_words(handout.coach.words)
    return ChartStyle(ink="#000000", family=TYPEFACE, width=CHART_WIDTH, key="bands", words=words)


def chart(handout: Handout) -> str:
    """Weekly sets of each muscle against its band, as SVG."""
    return drawn_out(bands_chart(handout.muscles, chart_style(handout)))


def _chart_said(handout: Handout) -> str:
    """What the chart shows, for a reader who does not see it."""
    said = "; ".join(muscle_said(chart_style(handout), muscle) for muscle in handout.muscles)
    return f"{handout.coach.words['weekly_sets']}: {said}"


# ---- a session's page


def _page(handout: Handout, session: Session, number: int, of: int) -> dict[str, Any]:
    """One session's page."""
    words = handout.coach.words
    return {
        "title": session.title,
        "of": f"{handout.week} · {words['session']} {number}/{of}",
        "minutes": f"{session.minutes} {words['min']}",
        "place": _capital(session.place),
        "date": _date_of(handout, session),
        "warm_up": session.warm_up,
        "rows": [_row(handout, line) for line in session.lines],
    }


def _row(handout: Handout, line: CardLine) -> dict[str, Any]:
    """One line of the card: what is printed in words, and how many boxes stand beside it."""
    return {
        "label": line.label,
        "name": line.name,
        "details": _details(handout, line),
        "link": line.link,
        "dose": f"{line.sets} x {line.reps}",
        "sets": line.sets,
        "rir": line.rir,
        "rest": line.rest,
        "load": line.load,
        "paired": bool(line.partner),
        "joined": bool(line.partner) and line.label.endswith("2"),
    }


def _details(handout: Handout, line: CardLine) -> list[dict[str, Any]]:
    """What stands under an exercise's name, with a label where the card needs one; what is empty is left out."""
    words = handout.coach.words
    swaps = listed(line.swaps, words["or"])
    said = (
        ("setting", "", line.setting),
        ("cue", "", line.cue),
        ("technique", "", _capital(line.technique)),
        ("pair", words["pair"], line.partner),
        ("plates", words["plates"], line.plates),
        ("ramp_up", words["ramp_up"], line.ramp_up),
        ("swap", words["swap"], swaps),
    )
    return [{"what": what, "label": label, "text": text} for what, label, text in said if text]


def _date_of(handout: Handout, session: Session) -> str:
    """The day a session falls on; left to be written where the card serves more than one day, or the day is free."""
    if handout.start is None or session.weekday is None or handout.coach.weeks > 1:
        return ""
    day = first_day(session, handout, handout.start)
    return "" if free(day, handout.coach) else day.isoformat()
