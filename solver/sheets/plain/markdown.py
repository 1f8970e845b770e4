"""The week as Markdown (CommonMark with pipe tables): reads as plain text too."""

from __future__ import annotations

import re
from typing import Final

from setwright.solver.sheets.common.caution import SCREENING
from setwright.solver.sheets.common.sanitise import isolated, web_link
from setwright.solver.sheets.common.words import clock, span
from setwright.solver.sheets.handout.values import CardLine, Handout, MuscleRow, Session

_MARKS: Final = re.compile(r"([\\`*_\[\]<>|~&$]|://|(?<=www)\.|@)")
"""What starts emphasis, a link, HTML, a cell, an entity or a bare address (CommonMark; the common extensions)."""
SIDES: Final = {"l": "left", "r": "right"}
_LEADS: Final = re.compile(r"^(\d+)([.)])(?=\s|$)|^([#+\-=])")


def markdown_bytes(handout: Handout) -> bytes:
    """The week, its cards and its muscles in UTF-8."""
    parts = [
        _head(handout),
        *(_card(session, handout) for session in handout.sessions),
        _muscles(handout),
        _foot(handout),
    ]
    return ("\n\n".join("\n".join(lines) for lines in parts if lines) + "\n").encode()


def _inert(text: str) -> str:
    """Text that says what it says and marks nothing up."""
    line = _MARKS.sub(lambda found: f"\\{found[0]}", isolated(text))
    return _LEADS.sub(lambda found: f"{found[1]}\\{found[2]}" if found[1] else f"\\{found[3]}", line)


def _table(headings: list[str], rows: list[list[str]], sides: str) -> list[str]:
    """A pipe table padded so that its source lines up; `sides` has one l or r for each column."""
    from tabulate import tabulate

    text = tabulate(
        [[_inert(cell) for cell in row] for row in rows],
        [_inert(heading) for heading in headings],
        tablefmt="pipe",
        disable_numparse=True,
        colalign=[SIDES[side] for side in sides],
        preserve_whitespace=False,
    )
    return text.split("\n")


def _facts(rows: list[tuple[str, str]]) -> list[str]:
    """A list of named facts; those that say nothing are left out."""
    return [f"- **{_inert(name)}:** {_inert(said)}" for name, said in rows if said]


def _head(handout: Handout) -> list[str]:
    """Whose week it is, what it is for and why it is so."""
    words, low, high = handout.coach.words, *handout.interval
    letterhead = [_inert(line) for line in (handout.coach.name, *handout.coach.lines) if line]
    said = _facts(
        [
            (words["client"], handout.client),
            (words["goal"], handout.goal),
            (words["asked"], handout.asked),
            (words["days"], "; ".join(f"{s.title} {s.minutes} {words['min']}" for s in handout.sessions if s.lines)),
            (words["week_index"], f"{handout.index:.1f} ({words['interval'].lower()} {low} to {high})"),
            (words["review"], handout.review.isoformat() if handout.review else ""),
        ]
    )
    title = f"# {_inert(handout.title)}: {_inert(handout.week)}"
    why = [f"## {_inert(words['why_week'])}", "", *(f"- {_inert(sentence)}" for sentence in handout.why)]
    return [*([*"  \n".join(letterhead).split("\n"), ""] if letterhead else []), title, "", *said, "", *why]


def _card(session: Session, handout: Handout) -> list[str]:
    """One session: its lines, warm-up, ramp-up sets, how each is done and what may stand in."""
    words = handout.coach.words
    if not session.lines:
        return [f"## {_inert(session.title)}", "", _inert(words["nothing"])]
    titles = ["order", "exercise", "sets_reps", "rir", "rest", "technique"]
    loads = any(line.load for line in session.lines)
    titles, sides = ([*titles, "load"], "lllrrll") if loads else (titles, "lllrrl")
    return [
        f"## {_inert(session.title)}: {session.minutes} {_inert(words['min'])}",
        "",
        *_facts([(words["kit"], session.place), (words["warm_up"], session.warm_up)]),
        "",
        *_table([words[title] for title in titles], [_row(line, loads) for line in session.lines], sides),
        "",
        *(detail for line in session.lines for detail in _details(line, handout)),
    ]


def _row(line: CardLine, loads: bool) -> list[str]:
    cells = [line.label, line.name, f"{line.sets} x {line.reps}", str(line.rir), line.rest, line.technique]
    return [*cells, line.load or ""] if loads else cells


def _details(line: CardLine, handout: Handout) -> list[str]:
    """What the table has no room for, one paragraph in a list."""
    words = handout.coach.words
    said = [
        (words["setting"], line.setting),
        (words["cue"], line.cue),
        (words["plates"], line.plates),
        (words["ramp_up"], line.ramp_up),
        (words["swap"], f" {words['or']} ".join(line.swaps)),
    ]
    text = ". ".join(f"{_inert(name)}: {_inert(words_said)}" for name, words_said in said if words_said)
    to = web_link(line.link)
    link = f" [{_inert(words['link'])}](<{_address(to)}>)" if to else ""
    return [f"- **{_inert(line.label)} {_inert(line.name)}.** {text}{'.' if text else ''}{link}"]


def _address(link: str) -> str:
    """A link's address, with whatever would end it escaped (RFC 3986, section 2.1)."""
    return re.sub(r"[\s<>\\\"'()\[\]`|]", lambda found: "".join(f"%{b:02X}" for b in found[0].encode()), link)


def _muscles(handout: Handout) -> list[str]:
    """Weekly sets, band and index of every muscle."""
    words = handout.coach.words
    titles = ["muscle", "emphasis", "sets", "days", "band", "index", "interval"]
    rows = [_muscle_row(m, handout) for m in handout.muscles]
    headings = [words[title] for title in titles]
    heading = f"## {_inert(words['weekly_sets'])}"
    return [heading, "", *_table(headings, rows, "llrrrrr"), "", _inert(words["index_meaning"])]


def _muscle_row(m: MuscleRow, handout: Handout) -> list[str]:
    emphasis = handout.coach.words.get(m.emphasis, m.emphasis)
    low, high = m.interval
    return [m.name, emphasis, f"{m.sets:g}", str(m.days), _band_words(m), str(m.index), f"{low} to {high}"]


def _band_words(m: MuscleRow) -> str:
    """4-15, from 4, or nothing."""
    if m.band is None:
        return ""
    low, high = m.band
    return f"from {low:g}" if high is None else span(low, high)


def _foot(handout: Handout) -> list[str]:
    """Time, what was left out, RIR in words, the caution and what made the sheet."""
    words = handout.coach.words
    return [
        *_time_lines(handout),
        "",
        f"{_inert(words['rir_meaning'])}.",
        "",
        *(part for said in handout.on_loads for part in (f"**{_inert(words['load'])}:** {_inert(said)}", "")),
        *([f"**{_inert(words['left_out'])}:** {_inert('; '.join(handout.left_out))}.", ""] if handout.left_out else []),
        f"**{_inert(words['caution'])}:** {_inert(handout.caution).replace(_inert(SCREENING), f'<{SCREENING}>')}",
        "",
        f"{_inert(words['made_by'])} {_inert(handout.made_by)}.",
    ]


def _time_lines(handout: Handout) -> list[str]:
    """Where each session's minutes go."""
    words = handout.coach.words
    busy = [session for session in handout.sessions if session.lines]
    kinds = [kind for kind, _ in busy[0].seconds_by_kind] if busy else []
    rows = [[s.title, *(clock(seconds) for _, seconds in s.seconds_by_kind), clock(s.seconds)] for s in busy]
    headings = [words["session"], *(words[kind] for kind in kinds), words["minutes"]]
    return [f"## {_inert(words['time'])}", "", *_table(headings, rows, "l" + "r" * (len(kinds) + 1))]
