"""The network cut in every phase of a batch: the batch is sent again, and done once."""

import pytest

from databases import KINDS
from faults.proxy import PHASES, Proxy

ROUNDS = 10


@pytest.mark.parametrize("kind", KINDS)
def test_a_cut_line_loses_nothing_and_does_nothing_twice(bench_of, kind: str) -> None:
    bench = bench_of(kind)
    bench.start()
    sender = bench.sender()
    proxy = Proxy(sender.port)
    sender.port = proxy.port
    for phase in PHASES * ROUNDS:
        proxy.cuts.append(phase)
        sender.send(lambda: None)
        assert not proxy.cuts
    proxy.close()
    assert proxy.done == list(PHASES * ROUNDS)
    # Each batch came twice under its own key: cut, and again.
    assert [proxy.keys.count(name) for name in dict.fromkeys(proxy.keys)] == [2] * sender.sent
    print(f"network cut {len(proxy.done)} times, {sender.check(bench.url)}")
