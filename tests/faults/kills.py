"""Killing the service at random instants while a phone sends."""

import random
import threading
import time
from typing import Any

from faults.sender import Sender

BATCHES = 200
KILLS = 20
# Of the kills, these take the whole service, as a power cut does; the others its workers, one
# of which answers. What is half written ends the same way, and new ones are there at once.
POWER_CUTS = 5


def run(bench: Any) -> str:
    """Send 200 batches, kill -9 the service or its workers in 20 of them; count what is there."""
    bench.start()
    sender: Sender = bench.sender()
    dice = random.Random()  # noqa: S311  (the instants are to be other ones in every run)
    fatal = dice.sample(range(BATCHES), KILLS)
    power_cuts = set(fatal[:POWER_CUTS])
    usual, killed, started_again = 0.02, 0, 0

    def again() -> None:
        nonlocal started_again
        if bench.process is None or bench.process.running.poll() is not None:
            bench.start()
            started_again += 1

    for number in range(BATCHES):
        start = time.perf_counter()
        if number in fatal:
            kill = bench.process.kill if number in power_cuts else bench.process.kill_workers
            # Before it arrives, in the middle of it, or just after: twice its usual time.
            killer = threading.Timer(dice.uniform(0, 2 * usual), kill)
            killer.start()
            sender.send(again)
            killer.join()
            again()
            killed += 1
        else:
            sender.send(again)
            usual = 0.8 * usual + 0.2 * (time.perf_counter() - start)
    assert (killed, started_again) == (KILLS, POWER_CUTS)
    return f"kill -9 {killed} times, {POWER_CUTS} of the whole service; {sender.check(bench.url)}"
