"""What is kept. Every key leads with the shop, so that shops can share a database or be split.

A record's id is a UUIDv7 made where the record was made, so ids sort by time and never clash.
`deleted_at` marks a record as gone without losing it; `version` counts its changes; `seq` is the
place of its last change among all changes of its shop, which `Shop.seq` counts.
"""

from datetime import UTC, datetime
from typing import Any, ClassVar
from uuid import UUID, uuid4

from sqlalchemy import (
    JSON,
    BigInteger,
    DateTime,
    Dialect,
    Double,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    LargeBinary,
    MetaData,
    TypeDecorator,
    Uuid,
)  # fmt: skip
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

# The one shop of a service that is not shared; the first migration enters it.
LOCAL_SHOP = UUID("00000000-0000-7000-8000-000000000001")


class Moment(TypeDecorator[datetime]):
    """A point in time, kept in UTC; SQLite itself forgets the zone."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Bring it to UTC."""
        return None if value is None else value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Give the zone back."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class Base(DeclarativeBase):
    """Names every constraint, so that a migration can find it."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(column_0_N_label)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s",
            "pk": "pk_%(table_name)s",
        }
    )
    type_annotation_map = {  # noqa: RUF012
        UUID: Uuid(),
        datetime: Moment(),
        bytes: LargeBinary(),
        float: Double(),
        dict[str, Any]: JSON(none_as_null=True),
        list[float]: JSON(none_as_null=True),
        list[dict[str, Any]]: JSON(none_as_null=True),
    }


def _count() -> Mapped[int]:
    return mapped_column(BigInteger, default=0, server_default="0")


class Shop(Base):
    """Whose records they are, how many changes they have had, and in which history."""

    __tablename__ = "shop"
    id: Mapped[UUID] = mapped_column(primary_key=True)
    name: Mapped[str]
    created_at: Mapped[datetime]
    seq: Mapped[int] = _count()
    # Another one after a restore: the counting starts again from what was restored.
    history: Mapped[UUID | None] = mapped_column(default=uuid4)


class SentBatch(Base):
    """A batch that was done, and what was answered, for a phone that missed the answer."""

    __tablename__ = "sent_batch"
    __table_args__ = (Index("ix_sent_batch_shop_id_created_at", "shop_id", "created_at"),)
    shop_id: Mapped[UUID] = mapped_column(ForeignKey("shop.id"), primary_key=True)
    key: Mapped[str] = mapped_column(primary_key=True)
    fingerprint: Mapped[bytes]
    answer: Mapped[bytes]
    created_at: Mapped[datetime]


class Device(Base):
    """A phone or browser that was paired with the shop. Of its token only a hash is kept."""

    __tablename__ = "device"
    shop_id: Mapped[UUID] = mapped_column(ForeignKey("shop.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    name: Mapped[str]
    role: Mapped[str]
    token_hash: Mapped[str]
    created_at: Mapped[datetime]
    last_seen_at: Mapped[datetime | None]
    revoked_at: Mapped[datetime | None]


class PairingCode(Base):
    """A code that pairs one device, once; gone when used. Only a hash of it is kept."""

    __tablename__ = "pairing_code"
    shop_id: Mapped[UUID] = mapped_column(ForeignKey("shop.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    role: Mapped[str]
    code_hash: Mapped[str]
    created_at: Mapped[datetime]
    expires_at: Mapped[datetime]
    # Wrong codes sent while this one could be used: too many, and it no longer can.
    wrong_tries: Mapped[int] = mapped_column(default=0)


class Record(Base):
    """What every record has. A model of one is known to sync and to the pull by being defined."""

    __abstract__ = True
    # Every kind of record, parents before children: a table must be there to be referred to.
    kinds: ClassVar[list[type["Record"]]] = []
    # Evidence: set aside and brought back, but never changed.
    append_only: ClassVar[bool] = False
    shop_id: Mapped[UUID] = mapped_column(ForeignKey("shop.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    version: Mapped[int] = mapped_column(default=1)
    received_at: Mapped[datetime]
    deleted_at: Mapped[datetime | None]
    seq: Mapped[int] = _count()

    def __init_subclass__(cls, **kwargs: Any) -> None:  # noqa: ANN401
        """Add the index that the pull goes by."""
        super().__init_subclass__(**kwargs)
        columns = cls.__table__.columns
        name = f"ix_{cls.__tablename__}_shop_id_seq"
        Index(name, columns.shop_id, columns.seq, unique=True)
        Record.kinds.append(cls)


def _same_shop(column: str, table: str) -> ForeignKeyConstraint:
    """Refer to a record of the same shop only."""
    return ForeignKeyConstraint(["shop_id", column], [f"{table}.shop_id", f"{table}.id"])


class Engine(Record):
    """An engine."""

    __tablename__ = "engine"
    name: Mapped[str]
    note: Mapped[str | None]
    invented: Mapped[bool] = mapped_column(default=False)
    created_at: Mapped[datetime]


class Drive(Record):
    """A chain drive of an engine, as it is built."""

    __tablename__ = "drive"
    __table_args__ = (
        _same_shop("engine_id", "engine"),
        Index("ix_drive_shop_id_engine_id", "shop_id", "engine_id"),
    )
    engine_id: Mapped[UUID]
    label: Mapped[str]
    pitch_mm: Mapped[float]
    crank_teeth: Mapped[int]
    cam_teeth: Mapped[int]
    centre_distance_mm: Mapped[float]
    links: Mapped[int]
    roller_diameter_mm: Mapped[float | None]
    centre_distance_error_mm: Mapped[float | None]
    drive_kind: Mapped[str | None]
    centres: Mapped[str | None]
    created_at: Mapped[datetime]


class Chain(Record):
    """A chain; it may lie on the shelf."""

    __tablename__ = "chain"
    __table_args__ = (
        _same_shop("engine_id", "engine"),
        Index("ix_chain_shop_id_engine_id", "shop_id", "engine_id"),
    )
    engine_id: Mapped[UUID | None]
    label: Mapped[str]
    pitch_mm: Mapped[float]
    links: Mapped[int]
    roller_diameter_mm: Mapped[float | None]
    note: Mapped[str | None]
    created_at: Mapped[datetime]
    tag: Mapped[str | None]
    distance_run_km: Mapped[float | None]
    description: Mapped[str | None]


class GearSet(Record):
    """A crank gear and a cam gear that belong together; they may lie on the shelf."""

    __tablename__ = "gear_set"
    __table_args__ = (
        _same_shop("engine_id", "engine"),
        Index("ix_gear_set_shop_id_engine_id", "shop_id", "engine_id"),
    )
    engine_id: Mapped[UUID | None]
    label: Mapped[str]
    tag: Mapped[str | None]
    pitch_mm: Mapped[float]
    crank_teeth: Mapped[int]
    cam_teeth: Mapped[int]
    adjuster: Mapped[str | None]
    keyway_offsets_crank_deg: Mapped[list[float] | None]
    note: Mapped[str | None]
    created_at: Mapped[datetime]


class Build(Record):
    """One build of an engine: from one start to the next, with what is in it at the start."""

    __tablename__ = "build"
    __table_args__ = (
        _same_shop("engine_id", "engine"),
        _same_shop("drive_id", "drive"),
        _same_shop("chain_id", "chain"),
        _same_shop("gear_set_id", "gear_set"),
        Index("ix_build_shop_id_engine_id", "shop_id", "engine_id"),
    )
    engine_id: Mapped[UUID]
    drive_id: Mapped[UUID | None]
    chain_id: Mapped[UUID | None]
    gear_set_id: Mapped[UUID | None]
    label: Mapped[str]
    started_at: Mapped[datetime]
    odometer_km: Mapped[float | None]
    note: Mapped[str | None]
    created_at: Mapped[datetime]


class Entry(Record):
    """Something of a build that is no reading: a part, a setting, a plan, a session, a note."""

    __tablename__ = "entry"
    __table_args__ = (
        _same_shop("build_id", "build"),
        _same_shop("chain_id", "chain"),
        _same_shop("gear_set_id", "gear_set"),
        Index("ix_entry_shop_id_build_id", "shop_id", "build_id"),
    )
    build_id: Mapped[UUID]
    chain_id: Mapped[UUID | None]
    gear_set_id: Mapped[UUID | None]
    kind: Mapped[str]
    at: Mapped[datetime]
    title: Mapped[str]
    text: Mapped[str | None]
    figures: Mapped[list[dict[str, Any]] | None]
    created_at: Mapped[datetime]


class Plan(Record):
    """A plan of running in: what was asked, the plan as answered, and the log of following it."""

    __tablename__ = "plan"
    __table_args__ = (
        _same_shop("engine_id", "engine"),
        _same_shop("build_id", "build"),
        Index("ix_plan_shop_id_engine_id", "shop_id", "engine_id"),
        Index("ix_plan_shop_id_build_id", "shop_id", "build_id"),
    )
    engine_id: Mapped[UUID | None]
    build_id: Mapped[UUID | None]
    label: Mapped[str]
    started_at: Mapped[datetime | None]
    input: Mapped[dict[str, Any]]
    result: Mapped[dict[str, Any]]
    core_version: Mapped[str]
    log: Mapped[list[dict[str, Any]]]
    created_at: Mapped[datetime]


class Reading(Record):
    """A reading and what was made of it: never changed, so that it can be explained later."""

    __tablename__ = "reading"
    append_only = True
    __table_args__ = (
        _same_shop("engine_id", "engine"),
        _same_shop("drive_id", "drive"),
        _same_shop("chain_id", "chain"),
        _same_shop("gear_set_id", "gear_set"),
        _same_shop("build_id", "build"),
        Index("ix_reading_shop_id_engine_id", "shop_id", "engine_id"),
        Index("ix_reading_shop_id_drive_id", "shop_id", "drive_id"),
        Index("ix_reading_shop_id_chain_id", "shop_id", "chain_id"),
        Index("ix_reading_shop_id_gear_set_id", "shop_id", "gear_set_id"),
        Index("ix_reading_shop_id_build_id", "shop_id", "build_id"),
    )
    engine_id: Mapped[UUID | None]
    drive_id: Mapped[UUID | None]
    chain_id: Mapped[UUID | None]
    calc: Mapped[str]
    taken_at: Mapped[datetime]
    input: Mapped[dict[str, Any]]
    result: Mapped[dict[str, Any]]
    core_version: Mapped[str]
    limit: Mapped[dict[str, Any] | None]
    note: Mapped[str | None]
    gear_set_id: Mapped[UUID | None]
    load_n: Mapped[float | None]
    build_id: Mapped[UUID | None]
    # How far or how long the chain had run then; an odometer counts from that of its build.
    distance_since_start_km: Mapped[float | None]
    running_since_start_h: Mapped[float | None]
    odometer_km: Mapped[float | None]


class DynoSession(Record):
    """A session at a dynamometer: its settings, and the standard it is corrected by."""

    __tablename__ = "dyno_session"
    __table_args__ = (
        _same_shop("engine_id", "engine"),
        _same_shop("build_id", "build"),
        Index("ix_dyno_session_shop_id_engine_id", "shop_id", "engine_id"),
        Index("ix_dyno_session_shop_id_build_id", "shop_id", "build_id"),
    )
    engine_id: Mapped[UUID | None]
    build_id: Mapped[UUID | None]
    label: Mapped[str]
    at: Mapped[datetime]
    standard: Mapped[str | None]
    settings: Mapped[list[dict[str, Any]]]
    note: Mapped[str | None]
    invented: Mapped[bool] = mapped_column(default=False)
    created_at: Mapped[datetime]


class DynoRun(Record):
    """A run of a session, as it was read: never changed."""

    __tablename__ = "dyno_run"
    append_only = True
    __table_args__ = (
        _same_shop("session_id", "dyno_session"),
        Index("ix_dyno_run_shop_id_session_id", "shop_id", "session_id"),
    )
    session_id: Mapped[UUID]
    setting: Mapped[str]
    place: Mapped[int]
    taken_at: Mapped[datetime]
    conditions: Mapped[dict[str, Any] | None]
    figures_are: Mapped[str]
    peaks: Mapped[dict[str, Any]]
    curve: Mapped[dict[str, Any] | None]
    source: Mapped[dict[str, Any] | None]
    core_version: Mapped[str]
    note: Mapped[str | None]
    created_at: Mapped[datetime]
