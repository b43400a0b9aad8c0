"""Killing the service at random instants while a phone sends."""

import random
import threading
import time
from typing import Any

from faults.sender import Sender

BATCHES = 200
KILLS = 20


def run(bench: Any) -> str:
    """Send 200 batches, kill -9 the whole service in 20 of them; count what is there."""
    bench.start()
    sender: Sender = bench.sender()
    dice = random.Random()  # noqa: S311  (the instants are to be other ones in every run)
    fatal = set(dice.sample(range(BATCHES), KILLS))
    usual, killed = 0.02, 0

    def again() -> None:
        if bench.process is None or bench.process.running.poll() is not None:
            bench.start()

    for number in range(BATCHES):
        start = time.perf_counter()
        if number in fatal:
            # Before it arrives, in the middle of it, or just after: twice its usual time.
            killer = threading.Timer(dice.uniform(0, 2 * usual), bench.process.kill)
            killer.start()
            sender.send(again)
            killer.join()
            again()
            killed += 1
        else:
            sender.send(again)
            usual = 0.8 * usual + 0.2 * (time.perf_counter() - start)
    assert killed == KILLS
    return f"kill -9 of the service {killed} times, {sender.check(bench.url)}"
