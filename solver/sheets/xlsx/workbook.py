"""The week as a workbook: a sheet for the week, one a session with boxes to log in, one of muscles with a chart."""

from __future__ import annotations

import io
import re
from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any, Final

from setwright.solver.sheets.handout.values import Handout, Session
from setwright.solver.sheets.xlsx.muscle_sheet import write_muscle_sheet
from setwright.solver.sheets.xlsx.session_sheet import write_session_sheet
from setwright.solver.sheets.xlsx.week_sheet import write_week_sheet

CREATED: Final = datetime(2020, 1, 1, tzinfo=UTC)
"""Not when it was made: the same week gives the same bytes."""
OPTIONS: Final = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
    "default_date_format": "yyyy-mm-dd",
}
MOST_LETTERS: Final = 31
"""The longest name that a sheet may have (ECMA-376 readers)."""
FORMATS: Final[Mapping[str, Mapping[str, Any]]] = {
    "title": {"bold": True, "font_size": 16},
    "heading": {"bold": True, "font_size": 12},
    "text": {"text_wrap": True, "valign": "top"},
    "strong": {"bold": True, "text_wrap": True, "valign": "top"},
    "beside": {"bold": True, "text_wrap": True, "valign": "vcenter", "align": "right", "indent": 1},
    "small": {"text_wrap": True, "valign": "top", "font_size": 9},
    "name": {"bold": True},
    "plain": {"font_size": 11},
    "under": {"font_size": 9},
    "head": {"bold": True, "border": 1, "text_wrap": True, "valign": "vcenter", "align": "center", "pattern": 1},
    "cell": {"border": 1, "text_wrap": True, "valign": "vcenter", "indent": 1, "quote_prefix": True},
    "middle": {"border": 1, "text_wrap": True, "valign": "vcenter", "align": "center"},
    "number": {"border": 1, "valign": "vcenter", "align": "center"},
    "load": {"border": 1, "valign": "vcenter", "align": "center", "num_format": "0.##"},
    "reps": {"border": 1, "valign": "vcenter", "align": "center", "num_format": "0"},
    "date": {"border": 1, "align": "center", "num_format": "yyyy-mm-dd"},
    "closed": {"border": 1, "pattern": 14, "fg_color": "#999999", "bg_color": "#FFFFFF"},
    "key": {"font_size": 8, "font_color": "#808080"},
}


def xlsx_bytes(handout: Handout) -> bytes:
    """The handout as an xlsx file without macros or links, the same bytes for the same week."""
    import xlsxwriter

    data = io.BytesIO()
    book = xlsxwriter.Workbook(data, dict(OPTIONS))
    book.set_properties({"title": handout.week, "created": CREATED})
    formats = {name: book.add_format(_shaded(name, said)) for name, said in FORMATS.items()}
    names = _sheet_names(handout)
    write_week_sheet(book.add_worksheet(next(names)), handout, formats)
    for session in handout.sessions:
        if session.lines:
            write_session_sheet(book.add_worksheet(next(names)), session, handout, formats)
    write_muscle_sheet(book, book.add_worksheet(next(names)), handout, formats)
    book.close()
    return data.getvalue()


def _shaded(name: str, said: Mapping[str, Any]) -> dict[str, Any]:
    """A format's properties; headings lie on light grey."""
    return {**said, "bg_color": "#E6E6E6"} if name == "head" else dict(said)


def _sheet_names(handout: Handout) -> Any:
    """The sheets' names: week, sessions, muscles; free of what a sheet's name may not hold, each only once."""
    busy: list[Session] = [session for session in handout.sessions if session.lines]
    wanted = [handout.week, *(session.title for session in busy), handout.coach.words["muscles"]]
    taken: set[str] = set()
    for place, name in enumerate(wanted, 1):
        plain = re.sub(r"[\[\]:*?/\\\x00-\x1f]", " ", name).strip(" '")[:MOST_LETTERS].strip(" '") or str(place)
        if plain.lower() in taken or plain.lower() == "history":
            plain = f"{plain[: MOST_LETTERS - 4]} ({place})"
        taken.add(plain.lower())
        yield plain
