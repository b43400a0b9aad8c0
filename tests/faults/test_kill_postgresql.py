"""The service killed in the middle of 200 batches: each is done once. On one of the databases."""

from faults import kills


def test_a_killed_service_loses_nothing_and_does_nothing_twice(bench_of) -> None:
    print(kills.run(bench_of("postgresql")))
