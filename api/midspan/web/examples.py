"""Examples for the reference. Requests are written here; the core makes their results.

Each stands once in the document, under its name, and is referred to.
"""

from typing import Any

from midspan.core import CALCS, run
from midspan.core.errors import Refused

from . import dyno_examples, lab_examples, labels, methods, problems
from .calc_examples import DRIVE, INPUTS, LOG, PLAN
from .nouns import NOUNS
from .schemas.records import ADDED

_REFUSED = {"drive": DRIVE | {"cam_teeth": 43}, "method": "total", "readings_mm": [5.5]}


def shortened(value: Any) -> Any:  # noqa: ANN401  (any JSON value)
    """Cut numbers to six digits and lists to three items: easy to read, and the same everywhere."""
    if isinstance(value, dict):
        return {name: shortened(inner) for name, inner in value.items()}
    if isinstance(value, list):
        return [shortened(inner) for inner in value[:3]]
    return float(f"{value:.6g}") if isinstance(value, float) else value


def problems_of(calc: str, payload: object) -> list[dict[str, object]]:
    """Give what the core says of input it refuses."""
    try:
        run(calc, payload)
    except Refused as refused:
        return refused.problems
    raise AssertionError("an example of refused input was accepted")


RESULTS = {name: shortened(run(name, INPUTS[name])) for name in CALCS}
LIMITS = {"limits": [RESULTS["slack"]["verdict"]["limit"]]}
MATERIALS = {"materials": run("materials", {})["materials"][:3]}  # type: ignore[index]
GLOSSARY = {
    "terms": {
        name: term
        for name, term in run("glossary", {})["terms"].items()  # type: ignore[attr-defined]
        if name in ("pitch_mm", "movement_mm")
    }
}
BATCH = {
    "items": [{"calc": "slack", "input": INPUTS["slack"]}, {"calc": "slack", "input": _REFUSED}]
}
# The form, on the phone's own figures: no library of the full posterior is loaded for an example.
LAB_FORECAST = RESULTS["forecast"] | {
    "history": {
        "engines_used": 0, "without_oil": 1, "of_other_kind": 0, "without_readings": 0,
        "prior": None,
    },
}  # fmt: skip
# Runs with peaks alone: there is nothing to draw, and each setting but one was fitted once.
LAB_COMPARE = {
    "calc": "compare-curves",
    "core_version": RESULTS["compare"]["core_version"],
    "compare": RESULTS["compare"],
    "curves": None,
    "curves_text": "No curves: some setting has none among its runs.",
    "refitting": None,
    "refitting_text": "Not told here.",
}
BATCH_RESULT = {
    "results": [
        {"ok": True, "result": RESULTS["slack"]},
        {"ok": False, "problems": problems_of("slack", _REFUSED)},
    ]
}
PROBLEM = problems.refused_body(problems_of("slack", _REFUSED), "/api/v1/calc/slack")

_ENGINE = "01923f5e-8c00-7000-8000-000000000001"
_BUILD = _ENGINE[:-1] + "5"
_AT = "2026-01-31T12:00:00Z"
WRITES: dict[str, dict[str, Any]] = {
    "engine": {"name": "Shop engine", "note": "On the stand.", "created_at": _AT},
    "drive": DRIVE | {"engine_id": _ENGINE, "label": "Cam drive", "created_at": _AT},
    "chain": {
        "engine_id": _ENGINE, "label": "From the shelf", "pitch_mm": 9.525, "links": 58,
        "roller_diameter_mm": 6.35, "tag": "C-07", "distance_run_km": 98000.0,
        "description": "Double row, bright side plates.", "created_at": _AT,
    },
    "gear-set": {
        "label": "Billet set", "tag": "G-02", "pitch_mm": 9.525, "crank_teeth": 22,
        "cam_teeth": 44, "adjuster": "multi-keyway",
        "keyway_offsets_crank_deg": [-4.0, 0.0, 4.0], "created_at": _AT,
    },
    "build": {
        "engine_id": _ENGINE, "label": "Second build", "started_at": _AT, "odometer_km": 98000.0,
        "note": "Block line bored.", "created_at": _AT,
    },
    "entry": {
        "build_id": _BUILD, "kind": "session", "at": _AT, "title": "First pulls",
        "text": "As observed, not corrected.", "created_at": _AT,
        "figures": [
            {"label": "Peak torque", "value": 402.0, "unit": "N m"},
            {"label": "at", "value": 4100.0, "unit": "1/min"},
        ],
    },
    "reading": {
        "engine_id": _ENGINE, "calc": "slack", "taken_at": _AT, "input": INPUTS["slack"],
        "result": RESULTS["slack"], "core_version": RESULTS["slack"]["core_version"],
        "limit": RESULTS["slack"]["verdict"]["limit"], "note": "Plugs out.",
        "distance_since_start_km": 1200.0,
    },
    "plan": {
        "engine_id": _ENGINE, "label": "Running in", "started_at": _AT, "input": PLAN,
        "result": RESULTS["plan"], "core_version": RESULTS["plan"]["core_version"], "log": LOG,
        "created_at": _AT,
    },
    **dyno_examples.writes(_AT, _ENGINE, _BUILD, _ENGINE[:-1] + "9"),
}  # fmt: skip
DEVICE = {
    "id": _ENGINE, "name": "Phone at the stand", "role": "member", "created_at": _AT,
    "last_seen_at": None, "revoked_at": None,
}  # fmt: skip
PAIRING: dict[str, Any] = {
    "pair": {"code": "ABCDE-23456", "device_name": "Phone at the stand"},
    "paired": {"token": "midspan_...", "shop_name": "This machine", "device": DEVICE},
    "new-code": {"role": "member"},
    "code": {"code": "ABCDE-23456", "role": "member", "expires_at": "2026-01-31T12:10:00Z"},
    "me": {"shop_name": "This machine", "device": DEVICE | {"last_seen_at": _AT}},
    "device": DEVICE | {"last_seen_at": _AT, "revoked_at": _AT},
    "device-page": {"items": [DEVICE], "next": None},
}
_KEPT = {"version": 1, "received_at": "2026-01-31T12:00:01Z", "deleted_at": None}
# What was left out comes back as null.
_FULL: dict[str, dict[str, Any]] = {
    "engine": {"invented": False},
    "drive": {"centre_distance_error_mm": None, "drive_kind": None, "centres": None},
    "chain": {"note": None},
    "gear-set": {"engine_id": None, "note": None},
    "build": {"drive_id": None, "chain_id": None, "gear_set_id": None},
    "entry": {"chain_id": None, "gear_set_id": None},
    "reading": {
        "drive_id": None,
        "chain_id": None,
        "gear_set_id": None,
        "build_id": None,
        "load_n": None,
        "running_since_start_h": None,
        "odometer_km": None,
    },
    "plan": {"build_id": None},
    "session": {"invented": True},
    "run": {},
}
RECORDS = {
    noun: {"id": f"{_ENGINE[:-1]}{i + 1:x}"} | sent | _FULL[noun] | _KEPT
    for i, (noun, sent) in enumerate(WRITES.items())
}
SYNC = {
    "changes": [
        {"kind": "engines", "id": _ENGINE, "base_version": 1, "record": WRITES["engine"]},
        {"kind": "readings", "id": _ENGINE[:-1] + "7", "base_version": 1, "deleted": True},
    ]
}
_DONE = {"status": 200, "version": 2, "problem": None, "theirs": None}
SYNC_ANSWER = {
    "results": [{"kind": one["kind"], "id": one["id"]} | _DONE for one in SYNC["changes"]]
}
CHANGES = {
    "items": [{"kind": "engines", "record": RECORDS["engine"]}],
    "next": "1923f5e8c000-1",
    "more": False,
}
_IN_FILE = {
    noun: {name: value for name, value in row.items() if name not in ADDED}
    for noun, row in RECORDS.items()
}
_KINDS = {noun.one: noun.many for noun in NOUNS}
EXPORT_FILE = {
    "format": "midspan-export",
    "version": 1,
    "exported_at": "2026-01-31T12:00:02Z",
    "core_version": RESULTS["drive"]["core_version"],
    "kinds": list(_KINDS.values()),
    "records": {kind: [_IN_FILE[noun]] for noun, kind in _KINDS.items()},
    "tombstones": [
        {
            "kind": "engines", "id": _ENGINE[:-1] + "b", "deleted_at": _AT,
            "record": _IN_FILE["engine"] | {"id": _ENGINE[:-1] + "b"},
        }
    ],
}  # fmt: skip
IMPORT_REPORT = {
    "added": 6,
    "same": 1,
    "taken": 0,
    "conflicts": [
        {
            "kind": "engines", "id": _ENGINE, "here": _IN_FILE["engine"],
            "there": _IN_FILE["engine"] | {"name": "Old engine"},
            "deleted_here": False, "deleted_there": False,
        }
    ],
    "refused": [
        {"kind": "drives", "place": 2, "id": _ENGINE[:-1] + "a", "errors": PROBLEM["errors"]}
    ],
}  # fmt: skip
EXPLANATION = {
    "stored": RECORDS["reading"],
    "recomputed": RESULTS["slack"],
    "problems": [],
    "same_verdict": True,
    "core_version_then": RESULTS["slack"]["core_version"],
    "core_version_now": RESULTS["slack"]["core_version"],
}

ALL: dict[str, Any] = {
    "limits": LIMITS,
    "materials": MATERIALS,
    "glossary": GLOSSARY,
    "methods": methods.example(),
    "batch": BATCH,
    "batch-result": BATCH_RESULT,
    "lab-forecast-result": LAB_FORECAST,
    "lab-compare-result": LAB_COMPARE,
    "torsion-input": lab_examples.TORSION_INPUT,
    "torsion-result": lab_examples.TORSION_RESULT,
    "gain-evidence": lab_examples.GAIN_EVIDENCE,
    "refused": PROBLEM,
    "explanation": EXPLANATION,
    "sync": SYNC,
    "sync-answer": SYNC_ANSWER,
    "changes": CHANGES,
    "export-file": EXPORT_FILE,
    "export-csv": f"id,taken at (UTC),engine\r\n{_ENGINE},{_AT},Shop engine\r\n",
    "import-report": IMPORT_REPORT,
    "dyno-table": dyno_examples.TABLE,
    "dyno-table-answer": dyno_examples.TABLE_ANSWER,
    "label": labels.draw("C-07"),
    "health": {"status": "up", "core_version": RESULTS["drive"]["core_version"]},
}
ALL |= PAIRING
ALL |= {f"{name}-input": example for name, example in INPUTS.items()}
ALL |= {f"{name}-result": example for name, example in RESULTS.items()}
ALL |= {f"{noun}-write": example for noun, example in WRITES.items()}
ALL |= {f"{noun}-record": example for noun, example in RECORDS.items()}
ALL |= {f"{noun}-page": {"items": [row], "next": None} for noun, row in RECORDS.items()}
