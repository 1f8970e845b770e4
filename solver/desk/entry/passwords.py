"""A password kept as what it gives under scrypt, and the short codes by which a phone is let in once."""

from __future__ import annotations

import hashlib
import hmac
import secrets
import threading
from dataclasses import dataclass, field
from typing import Final
from unicodedata import normalize

from setwright.solver.desk.clock import seconds

CODE_DIGITS: Final = 8
CODE_SECONDS: Final = 300.0
"""How long a code holds."""
MOST_TRIES: Final = 5
"""Wrong answers after which the entrance is shut for a while."""
SHUT_SECONDS: Final = 60.0
COST = 2**17
"""scrypt's N, with r 8 and p 1 as OWASP's password storage cheat sheet gives it, from memory."""


@dataclass(frozen=True)
class Password:
    """What a password gives under scrypt with its salt; the password itself is not kept."""

    salt: bytes = field(repr=False)
    digest: bytes = field(repr=False)

    @staticmethod
    def of(text: str) -> Password:
        """A password kept; spaces at its ends do not count, those inside do."""
        salt = secrets.token_bytes(16)
        return Password(salt, _digest(text, salt))

    def fits(self, text: str) -> bool:
        """Whether a text is the password."""
        return hmac.compare_digest(_digest(text, self.salt), self.digest)


class Entrance:
    """Lets in by the password, or by a code that holds for five minutes and for one browser; shut after wrong tries."""

    def __init__(self, password: Password | None) -> None:
        self._password, self._lock = password, threading.Lock()
        self._code, self._until = "", 0.0
        self._wrong, self._shut_until = 0, 0.0

    @property
    def open(self) -> bool:
        """Whether any but the token lets in here: only where there is a password."""
        return self._password is not None

    def new_code(self) -> str:
        """A new code; the one before it no longer holds."""
        with self._lock:
            self._code = "".join(secrets.choice("0123456789") for _ in range(CODE_DIGITS))
            self._until = seconds() + CODE_SECONDS
            return self._code

    def shut_for(self) -> int:
        """Whole seconds until it may be tried again; 0 where it may be now."""
        return max(0, -int(-(self._shut_until - seconds()) // 1))

    def lets_in(self, said: str) -> bool:
        """Whether a text is the password or the code of now, which then is used up; never while it is shut.

        Spaces in a code do not count.
        """
        with self._lock:
            if self._password is None or self.shut_for():
                return False
            typed = "".join(said.split())
            holds = self._code and seconds() < self._until
            code = holds and hmac.compare_digest(typed.encode(), self._code.encode())
            if code:
                self._code = ""
            if code or self._password.fits(said):
                self._wrong = 0
                return True
            self._wrong += 1
            if self._wrong >= MOST_TRIES:
                self._wrong, self._code = 0, ""
                self._shut_until = seconds() + SHUT_SECONDS
            return False


def as_typed(text: str) -> str:
    """A password as it counts: without spaces at its ends, which a phone's keyboard adds, its accents composed."""
    return normalize("NFC", text.strip())


def _digest(text: str, salt: bytes) -> bytes:
    """What a password gives under scrypt with a salt."""
    return hashlib.scrypt(as_typed(text).encode(), salt=salt, n=COST, r=8, p=1, maxmem=2**28)
