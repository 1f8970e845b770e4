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
_LEADS: Final = re.compile(r"^(\d+)([.)])(?=\s|$)|^([#+\-=])")


def markdown(handout: Handout) -> bytes:
    """The week, its cards and its muscles in UTF-8."""
    parts = [
        head(handout),
        *(card(session, handout) for session in handout.sessions),
        muscles(handout),
        foot(handout),
    ]
    return ("\n\n".join("\n".join(lines) for lines in parts if lines) + "\n").encode()


def inert(text: str) -> str:
    """Text that says what it says and marks nothing up."""
    line = _MARKS.sub(lambda found: f"\\{found[0]}", isolated(text))
    return _LEADS.sub(lambda found: f"{found[1]}\\{found[2]}" if found[1] else f"\\{found[3]}", line)


def table(headings: list[str], rows: list[list[str]], sides: str) -> list[str]:
    """A pipe table padded so that its source lines up; `sides` has one l or r for each column."""
    cells = [[inert(cell) for cell in row] for row in (headings, *rows)]
    widths = [max(3, *(len(row[column]) for row in cells)) for column in range(len(headings))]
    pads = [str.rjust if side == "r" else str.ljust for side in sides]
    lines = [f"| {' | '.join(p(c, w) for p, c, w in zip(pads, row, widths, strict=True))} |" for row in cells]
    rules = ["-" * (w - 1) + ":" if side == "r" else "-" * w for w, side in zip(widths, sides, strict=True)]
    return [lines[0], f"| {' | '.join(rules)} |", *lines[1:]]


def facts(rows: list[tuple[str, str]]) -> list[str]:
    """A list of named facts; those that say nothing are left out."""
    return [f"- **{inert(name)}:** {inert(said)}" for name, said in rows if said]


def head(handout: Handout) -> list[str]:
    """Whose week it is, what it is for and why it is so."""
    words, low, high = handout.coach.words, *handout.interval
    letterhead = [inert(line) for line in (handout.coach.name, *handout.coach.lines) if line]
    said = facts(
        [
            (words["client"], handout.client),
            (words["goal"], handout.goal),
            (words["asked"], handout.asked),
            (words["days"], "; ".join(f"{s.title} {s.minutes} {words['min']}" for s in handout.sessions if s.lines)),
            (words["week_index"], f"{handout.index:.1f} ({words['interval'].lower()} {low} to {high})"),
            (words["review"], handout.review.isoformat() if handout.review else ""),
        ]
    )
    title = f"# {inert(handout.title)}: {inert(handout.week)}"
    why = [f"## {inert(words['why_week'])}", "", *(f"- {inert(sentence)}" for sentence in handout.why)]
    return [*([*"  \n".join(letterhead).split("\n"), ""] if letterhead else []), title, "", *said, "", *why]


def card(session: Session, handout: Handout) -> list[str]:
    """One session: its lines, warm-up, ramp-up sets, how each is done and what may stand in."""
    words = handout.coach.words
    if not session.lines:
        return [f"## {inert(session.title)}", "", inert(words["nothing"])]
    titles = ["order", "exercise", "sets_reps", "rir", "rest", "technique"]
    loads = any(line.load for line in session.lines)
    titles, sides = ([*titles, "load"], "lllrrll") if loads else (titles, "lllrrl")
    return [
        f"## {inert(session.title)}: {session.minutes} {inert(words['min'])}",
        "",
        *facts([(words["kit"], session.place), (words["warm_up"], session.warm_up)]),
        "",
        *table([words[title] for title in titles], [row(line, loads) for line in session.lines], sides),
        "",
        *(detail for line in session.lines for detail in details(line, handout)),
    ]


def row(line: CardLine, loads: bool) -> list[str]:
    cells = [line.label, line.name, f"{line.sets} x {line.reps}", str(line.rir), line.rest, line.technique]
    return [*cells, line.load or ""] if loads else cells


def details(line: CardLine, handout: Handout) -> list[str]:
    """What the table has no room for, one paragraph in a list."""
    words = handout.coach.words
    said = [
        (words["setting"], line.setting),
        (words["cue"], line.cue),
        (words["ramp_up"], line.ramp_up),
        (words["swap"], f" {words['or']} ".join(line.swaps)),
    ]
    text = ". ".join(f"{inert(name)}: {inert(words_said)}" for name, words_said in said if words_said)
    to = web_link(line.link)
    link = f" [{inert(words['link'])}](<{address(to)}>)" if to else ""
    return [f"- **{inert(line.label)} {inert(line.name)}.** {text}{'.' if text else ''}{link}"]


def address(link: str) -> str:
    """A link's address, with whatever would end it escaped (RFC 3986, section 2.1)."""
    return re.sub(r"[\s<>\\\"'()\[\]`|]", lambda found: "".join(f"%{b:02X}" for b in found[0].encode()), link)


def muscles(handout: Handout) -> list[str]:
    """Weekly sets, band and index of every muscle."""
    words = handout.coach.words
    titles = ["muscle", "emphasis", "sets", "days", "band", "index", "interval"]
    rows = [muscle_row(m, handout) for m in handout.muscles]
    headings = [words[title] for title in titles]
    heading = f"## {inert(words['weekly_sets'])}"
    return [heading, "", *table(headings, rows, "llrrrrr"), "", inert(words["index_meaning"])]


def muscle_row(m: MuscleRow, handout: Handout) -> list[str]:
    emphasis = handout.coach.words.get(m.emphasis, m.emphasis)
    low, high = m.interval
    return [m.name, emphasis, f"{m.sets:g}", str(m.days), band_words(m), str(m.index), f"{low} to {high}"]


def band_words(m: MuscleRow) -> str:
    """4-15, from 4, or nothing."""
    if m.band is None:
        return ""
    low, high = m.band
    return f"from {low:g}" if high is None else span(low, high)


def foot(handout: Handout) -> list[str]:
    """Time, what was left out, RIR in words, the caution and what made the sheet."""
    words = handout.coach.words
    return [
        *time_lines(handout),
        "",
        f"{inert(words['rir_meaning'])}.",
        "",
        *([f"**{inert(words['left_out'])}:** {inert('; '.join(handout.left_out))}.", ""] if handout.left_out else []),
        f"**{inert(words['caution'])}:** {inert(handout.caution).replace(inert(SCREENING), f'<{SCREENING}>')}",
        "",
        f"{inert(words['made_by'])} {inert(handout.made_by)}.",
    ]


def time_lines(handout: Handout) -> list[str]:
    """Where each session's minutes go."""
    words = handout.coach.words
    busy = [session for session in handout.sessions if session.lines]
    kinds = [kind for kind, _ in busy[0].seconds_by_kind] if busy else []
    rows = [[s.title, *(clock(seconds) for _, seconds in s.seconds_by_kind), clock(s.seconds)] for s in busy]
    headings = [words["session"], *(words[kind] for kind in kinds), words["minutes"]]
    return [f"## {inert(words['time'])}", "", *table(headings, rows, "l" + "r" * (len(kinds) + 1))]
