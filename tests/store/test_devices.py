"""Codes and tokens in the store, on both databases."""

from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta

import pytest
from sqlalchemy import select
from sqlalchemy.exc import IntegrityError

from midspan.store import Device, Store, devices, tokens
from midspan.store.models import LOCAL_SHOP, PairingCode, Shop

OTHER_SHOP = tokens.new_id()


def open_code(store: Store, role: str = "member", shop=LOCAL_SHOP) -> str:
    with store.writing() as session:
        return str(tokens.tidy_code(devices.open_code(session, shop, role)[0]))


def pair(store: Store, code: str) -> tuple[str, Device] | None:
    with store.writing() as session:
        return devices.pair(session, code, "Phone")


def codes(store: Store) -> list[PairingCode]:
    with store.reading() as session:
        return list(session.scalars(select(PairingCode)))


def test_a_code_becomes_a_device_and_is_gone(store: Store) -> None:
    done = pair(store, open_code(store, "owner"))
    assert done is not None
    token, device = done
    assert codes(store) == []
    with store.reading() as session:
        found = devices.of_token(session, token)
    assert found is not None
    assert (found.id, found.shop_id, found.role) == (device.id, LOCAL_SHOP, "owner")
    assert found.token_hash not in token
    assert abs(found.created_at - datetime.now(UTC)) < timedelta(minutes=5)


def test_one_code_sent_many_times_at_once_pairs_one_device(store: Store) -> None:
    code = open_code(store)
    with ThreadPoolExecutor(8) as pool:
        done = list(pool.map(lambda _: pair(store, code), range(8)))
    assert sum(one is not None for one in done) == 1
    with store.reading() as session:
        assert len(devices.page(session, LOCAL_SHOP, None, 10)[0]) == 1


def test_wrong_tries_at_once_are_all_counted(store: Store) -> None:
    open_code(store)
    with ThreadPoolExecutor(8) as pool:
        list(pool.map(lambda _: pair(store, "0" * 10), range(devices.MOST_WRONG_TRIES - 1)))
    assert codes(store)[0].wrong_tries == devices.MOST_WRONG_TRIES - 1


def test_a_revoked_token_is_nobodys_and_its_device_is_not_forgotten(store: Store) -> None:
    done = pair(store, open_code(store))
    assert done is not None
    token, device = done
    with store.writing() as session:
        assert devices.revoke(session, LOCAL_SHOP, device.id) is not None
    with store.writing() as session:
        assert devices.revoke(session, LOCAL_SHOP, device.id) is None
        assert devices.of_token(session, token) is None
        assert session.get_one(Device, (LOCAL_SHOP, device.id)).revoked_at is not None
        assert not devices.any_paired(session, LOCAL_SHOP)


def test_shops_do_not_meet(store: Store) -> None:
    with store.writing() as session:
        session.add(Shop(id=OTHER_SHOP, name="Other", created_at=datetime.now(UTC)))
    done = pair(store, open_code(store, shop=OTHER_SHOP))
    assert done is not None
    with store.writing() as session:
        assert devices.page(session, LOCAL_SHOP, None, 10)[0] == []
        assert devices.revoke(session, LOCAL_SHOP, done[1].id) is None
        assert not devices.any_paired(session, LOCAL_SHOP)
        assert devices.any_paired(session, OTHER_SHOP)


def test_codes_that_are_too_old_go(store: Store) -> None:
    open_code(store)
    with store.writing() as session:
        session.scalars(select(PairingCode)).one().expires_at = datetime.now(UTC)
    open_code(store)
    assert len(codes(store)) == 1


def test_a_device_belongs_to_a_shop_that_there_is(store: Store) -> None:
    device = Device(
        shop_id=tokens.new_id(), id=tokens.new_id(), name="x", role="owner", token_hash="x",  # noqa: S106
        created_at=datetime.now(UTC),
    )  # fmt: skip
    with pytest.raises(IntegrityError), store.writing() as session:
        session.add(device)


def test_hashes_are_compared_whole() -> None:
    one = tokens.hash_secret(b"one")
    assert tokens.same(one, tokens.hash_secret(b"one"))
    assert not tokens.same(one, tokens.hash_secret(b"other"))
    assert not tokens.same(one, one[:-1])
