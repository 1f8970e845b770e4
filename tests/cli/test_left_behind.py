"""A search in a thread of its own: its result, its fault, and its end where it goes on after Ctrl-C."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from setwright.solver.cli.console import left_behind
from setwright.solver.cli.console.left_behind import LeftBehind, done_or_left
from setwright.solver.cli.console.stopping import Stopping

ROOT = Path(__file__).parents[2]


def test_the_work_s_result_and_its_fault_come_back() -> None:
    assert done_or_left(lambda: 7, lambda: False) == 7

    def late() -> None:
        raise TimeoutError("of the work")

    with pytest.raises(TimeoutError, match="of the work"):
        done_or_left(late, lambda: False)


def test_work_that_ends_by_itself_after_ctrl_c_gives_its_result() -> None:
    with Stopping() as stopping:
        seen = threading.Event()

        def work() -> str:
            os.kill(os.getpid(), signal.SIGINT)
            while not stopping():
                seen.wait(0.01)
            return "the best so far"

        assert done_or_left(work, stopping) == "the best so far"


@pytest.mark.parametrize("signals", [1, 2])
def test_work_that_goes_on_is_left(signals: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """With a second Ctrl-C at once, whatever the grace is."""
    monkeypatch.setattr(left_behind, "GRACE", 0.01 if signals == 1 else 1e9)
    ended = threading.Event()
    with Stopping() as stopping:

        def work() -> None:
            for count in range(signals):
                os.kill(os.getpid(), signal.SIGINT)
                while count == 0 and not stopping():
                    ended.wait(0.01)
            ended.wait()

        with pytest.raises(LeftBehind):
            done_or_left(work, stopping)
    ended.set()


def test_the_process_ends_with_what_it_printed_though_a_thread_is_at_work() -> None:
    code = (
        "import threading\n"
        "from setwright.solver.cli.console.left_behind import end_process\n"
        "from setwright.solver.cli.exit_codes import ExitCode\n"
        "threading.Thread(target=threading.Event().wait).start()\n"
        "print('printed')\n"
        "end_process(ExitCode.STOPPED)\n"
    )
    env = {**os.environ, "PYTHONPATH": str(ROOT / ".names")}
    ended = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, env=env)
    assert (ended.returncode, ended.stdout) == (130, "printed\n")
