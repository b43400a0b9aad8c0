"""What sync costs beside the bare database, and a list page beside a short list: ratios only.

Measured by what `midspan bench` measures with, but on less and held to less: it must not fail for
what else the machine does.
"""

from midspan.bench import sizes, stored
from midspan.store import Store

SIZES = sizes.QUICK
ROUNDS, PAGES = 2, 200
# Wanted is 0.30. The bare rows wait for the disk and the service for the processor, so on a busy
# machine this falls to a third; one round trip a record would be far below.
LEAST_OF_BARE = 0.05
# A page that read the whole list would cost a hundred times as much.
MOST_FOR_A_PAGE = 1.5


def test_sync_keeps_up_with_the_bare_database(store: Store) -> None:
    bare = stored.Bare(store, SIZES)
    synced = stored.Synced(store.engine.url.render_as_string(hide_password=False), SIZES)
    try:
        rates = [(synced.rate(), bare.rate()) for _ in range(ROUNDS)]
    finally:
        synced.close()
    # The best of each: others use the machine too.
    ours, theirs = (max(column) for column in zip(*rates, strict=True))
    print(f"{store.engine.name}: {SIZES.readings} readings at {ours / theirs:.2f} of the bare rate")
    assert ours / theirs >= LEAST_OF_BARE


def test_a_page_of_a_long_list_costs_what_one_of_a_short_list_does(store: Store) -> None:
    stored.fill(store, 1, SIZES.short)
    short = stored.page(store, SIZES.short // 2, PAGES)()
    stored.fill(store, SIZES.short + 1, SIZES.long - SIZES.short)
    long = stored.page(store, SIZES.long // 2, PAGES)()
    print(f"{store.engine.name}: a page of {SIZES.long} costs {long / short:.2f} of a short list's")
    assert long / short <= MOST_FOR_A_PAGE
