"""A handout whose every free text is one hostile text, for the formats that must keep it inert."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from setwright.solver.sheets.common.labels import LABELS
from setwright.solver.sheets.handout.handout import CardLine, Handout, Session

MARKUP = "</script><script>alert(1)</script></style><img src=https://evil.example/x onerror=alert(2)>"
QUOTES = '"onmouseover="alert(3)" \' autofocus onfocus=\'alert(4)'
TEMPLATE = "{{ 7*7 }}{% raw %}${9*9}<%= 3 %>"
TURNED = "\u202eevil\u202d\u2066x"
LONG = "Wide-grip pulldown " + "m" * 281
CONTROLS = "a\x00b\x0bc\x1bd\ufffee\ud800f"
TEXTS = {
    "markup": MARKUP,
    "quotes": QUOTES,
    "template": TEMPLATE,
    "turned": TURNED,
    "long": LONG,
    "controls": CONTROLS,
}


def spoilt(handout: Handout, text: str, labels: bool = False) -> Handout:
    """The same week, every free text replaced; with `labels` the coach's words too."""
    words = MappingProxyType(dict.fromkeys(LABELS, text)) if labels else handout.coach.words
    return replace(
        handout,
        title=text,
        client=text,
        week=text,
        goal=text,
        sessions=tuple(_session(session, text) for session in handout.sessions),
        muscles=tuple(replace(muscle, name=text) for muscle in handout.muscles),
        why=(text, text, text),
        left_out=(text, text),
        caution=f"{handout.caution} {text}",
        coach=handout.coach.model_copy(update={"name": text, "lines": (text, text), "words": words}),
        made_by=text,
    )


def _session(session: Session, text: str) -> Session:
    lines = tuple(_line(line, text) for line in session.lines)
    return replace(session, title=f"{text} {session.number}", place=text, warm_up=text, lines=lines)


def _line(line: CardLine, text: str) -> CardLine:
    free = ("name", "setting", "cue", "link", "technique", "load", "ramp_up", "plates", "why", "partner")
    return replace(line, swaps=(text, text), **dict.fromkeys(free, text))  # type: ignore[arg-type]
