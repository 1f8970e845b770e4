"""Names that try to be more than names, and a handout that carries one everywhere."""

from __future__ import annotations

from dataclasses import replace

from handed import handed

from setwright.solver.sheets.handout.handout import Handout

NAMES = {
    "formula": "=1+1",
    "command": "=cmd|' /C calc'!A0",
    "plus": "+1",
    "minus": "-2+3",
    "at": "@SUM(A1:A9)",
    "space before formula": "  \t=1+1",
    "tab": "\t=1",
    "line end": "a\r\n=1+1",
    "guarded already": "'=1+1",
    "full-width": "\uff1d1+1",
    "html": "<script>alert(1)</script>",
    "image": "![x](http://127.0.0.1/x.png)",
    "link": "[x](javascript:alert(1)) <http://127.0.0.1/> http://127.0.0.1/ www.example.com",
    "code": "`#let x = 1` $x$ #eval",
    "table": "a | b | c",
    "heading": "# A",
    "attendee": "x\r\nATTENDEE:mailto:a@example.com",
    "event": "x\nEND:VEVENT\nBEGIN:VEVENT",
    "lone return": "x\rATTENDEE:mailto:a@example.com",
    "separators": "x\u2028ATTENDEE:y\u2029z\u0085w\x0bv",
    "control": "x\x00\x07\x1b[31my",
    "right to left": "\u202egnp.exe\u2066 x",
    "marks": "a\u200fb\u200ec",
    "arabic": "\u0633\u0643\u0648\u0627\u062a",
    "long": "long name " * 30,
    "longer than a line": "w" * 300,
    "entity": "&lt;b&gt; &amp; &#60;",
    "quotes": "\"quoted\", 'and' ; semi: colon \\ back \\n slash",
    "footer code": "&R&D &A",
    "sheet name": "[a]:*?/\\b'",
    "braces": "{0} {name} %s",
}


def hostile(name: str) -> Handout:
    """The fixed handout with a name in each place that words of others can reach."""
    h = handed()
    sessions = tuple(
        replace(
            session,
            title=name,
            place=name,
            lines=tuple(
                replace(x, name=name, setting=name, cue=name, technique=name, load=name, swaps=(name, name), link=name)
                for x in session.lines
            ),
        )
        for session in h.sessions
    )
    words = {**h.coach.words, "rest": name, "muscles": name, "week": name}
    coach = h.coach.model_copy(update={"name": name, "lines": (name, name), "caution": name, "words": words})
    muscles = tuple(replace(m, name=name) for m in h.muscles)
    return replace(
        h,
        title=name,
        client=name,
        week=name,
        goal=name,
        sessions=sessions,
        muscles=muscles,
        coach=coach,
        left_out=(name,),
        why=(name, name, name),
    )
