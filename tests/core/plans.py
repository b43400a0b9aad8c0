"""Inputs of plans for the checks: every kind of engine, oil and chain."""

import itertools
from collections.abc import Iterator
from typing import Any

Payload = dict[str, Any]

PLAN: Payload = {
    "oil": {"kind": "running-in", "grade": "10W-40"},
    "follower": "flat",
    "rings": "new",
    "movement_mm": 5.5,
    "expanded_uncertainty_mm": 0.3,
    "distance_per_week_km": 200,
}
TIGHT = {"movement_mm": 2.0}
AT = "2026-02-03T10:00:00Z"


def every_plan() -> Iterator[Payload]:
    """Every engine with every oil, by every chain and use."""
    oils = ("mineral", "running-in", "conventional", "synthetic")
    chains: tuple[Payload, ...] = ({}, {"movement_mm": 2.0}, {"movement_mm": 5.5})
    uses: tuple[Payload, ...] = ({}, {"distance_per_week_km": 150}, {"running_per_week_h": 4.0})
    for oil, follower, rings, load, chain, use in itertools.product(
        oils, ("flat", "roller"), ("new", "kept"), (900, 1600), chains, uses
    ):
        made: Payload = {"oil": {"kind": oil}, "follower": follower, "rings": rings}
        yield made | {"spring_open_load_n": load} | chain | use


def event(kind: str, **more: Any) -> Payload:
    """Something that happened."""
    return {"kind": kind, "at": AT, **more}


def cut(step: str, minutes: float, reason: str = "temperature") -> Payload:
    """A timed step stopped before its time."""
    return event("cut-short", step=step, run_min=minutes, reason=reason)
