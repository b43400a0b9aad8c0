"""Limits as data: the figure, what it limits, where it applies, and where it comes from.

To add one, add a row; nothing else knows the figures. Sources that disagree all stay, side
by side. An address may name a maker; our own words do not.
"""

from collections import namedtuple

PUBLISHED = "published"
PRACTICE = "common practice, no source"
MEMORY = "from memory, unverified"
OWN = "maker's manual, entered by the user"
# Where a figure of the input comes from that names no source.
GIVEN = "given by the user"
ORIGINS = (PUBLISHED, PRACTICE, MEMORY, OWN)

# The international inch, exact.
MM_PER_INCH = 25.4

UNITS = {
    "elongation_percent": "%",
    "movement_mm": "mm",
    "crank_rock_deg": "deg",
    "sprocket_movement_mm": "mm",
    "movement_percent_of_centres": "% of centre distance",
    "reading_mm": "mm",
    "over_chain_mm": "mm",
    "valve_clearance_mm": "mm",
    "radial_clearance_mm": "mm",
}


class Limit(
    namedtuple(
        "Limit",
        (
            "id", "quantity", "lower", "upper", "upper_to", "over_cam_teeth", "where",
            "governs", "label", "origin", "source", "address", "note",
        ),
    )
):  # fmt: skip
    """One limit.

    `upper_to` ends a limit that its source prints as a range. `over_cam_teeth` is a numerator:
    the upper limit is it divided by the cam gear's teeth. `where` holds the conditions, all of
    which must be met: drive_kind, centres, pitch_mm, cam_teeth_above, cam_teeth_to, of a gear its
    teeth, of a clearance its valve. `governs` tells whether the verdict may rest on it, or it is
    only shown beside.
    """

    __slots__ = ()


def _row(
    id: str,
    quantity: str,
    label: str,
    *,
    lower: float | None = None,
    upper: float | None = None,
    upper_to: float | None = None,
    over_cam_teeth: float | None = None,
    where: dict[str, object] | None = None,
    governs: bool = False,
    origin: str = PUBLISHED,
    source: str = "",
    address: str = "",
    note: str = "",
) -> Limit:
    return Limit(
        id, quantity, lower, upper, upper_to, over_cam_teeth, where or {}, governs, label,
        origin, source, address, note,
    )  # fmt: skip


_CHAIN_MAKER = "Chain maker's technical answers, measuring wear of a roller chain"
_CHAIN_MAKER_AT = "diamondchain.com/faq/how-can-the-wear-in-a-roller-chain-be-accurately-measured"
_ISO_606 = "GOST 13568-97 (full text of ISO 606:1994 with national extras)"
_CAM: dict[str, object] = {"drive_kind": "cam"}
_GENERAL: dict[str, object] = {"drive_kind": "general"}
_OHC_8: dict[str, object] = {"drive_kind": "cam", "pitch_mm": 8.0}
_OHC_9: dict[str, object] = {"drive_kind": "cam", "pitch_mm": 9.525}
_INSIDE_16 = "Printed as an inside reading over 16 links; converted by us (derived), roller "

ELONGATION = (
    _row(
        "wear-fixed-centres", "elongation_percent", "Fixed centres: 1.5 %", upper=1.5,
        where={"centres": "fixed"}, governs=True, source=_CHAIN_MAKER, address=_CHAIN_MAKER_AT,
        note="For fixed centres, chains in parallel, or where smooth running counts.",
    ),
    _row(
        "wear-general", "elongation_percent", "General drives: 3 %", upper=3.0,
        where={"cam_teeth_to": 67}, governs=True, source=_CHAIN_MAKER, address=_CHAIN_MAKER_AT,
        note="Holds up to 67 teeth on the large gear.",
    ),
    _row(
        "wear-large-gear", "elongation_percent", "Above 67 teeth: 200 / z2 %",
        over_cam_teeth=200.0, where={"cam_teeth_above": 67}, governs=True, source=_CHAIN_MAKER,
        address=_CHAIN_MAKER_AT, note="A worn chain climbs the teeth of a large gear sooner.",
    ),
    _row(
        "wear-replace-early", "elongation_percent", "Replace at 1.5 %, never beyond 3 %",
        upper=1.5, upper_to=3.0, source="Chain supplier, Why measure chain wear",
        address="fbchain.com/roller-chain-maintenance/why-measure-chain-wear",
        note="Its own inch figure for 1.5 % is misprinted: 0.36 in per foot is 3 %.",
    ),
    _row(
        "wear-gears-too", "elongation_percent", "Change chain and gears: 2 %", upper=2.0,
        source="Chain maker, transmission maintenance",
        address="sedis.com/en/support/technical-support/chain-technique/transmission/maintenance",
    ),
    _row(
        "wear-large-marine", "elongation_percent", "Large marine camshaft chain: 1 %", upper=1.0,
        where=_CAM, source="Marine diesel notes, timing chains", address="marinediesels.info",
        note="Chains of over 100 mm pitch; shown for comparison.",
    ),
    _row(
        "wear-timing-critical", "elongation_percent", "Where timing counts: 0.5 to 1 %",
        upper=0.5, upper_to=1.0, where=_CAM, origin=MEMORY,
        note="Remembered from chain makers' advice; the text was not found again.",
    ),
    _row(
        "acceptance-8", "elongation_percent", "Acceptance test after its full life: 0.31 %",
        upper=100 * 1.2 / (49 * 8.0), where={"pitch_mm": 8.0},
        source=_ISO_606 + ": 1.2 mm over 49 links", address="Table B.1",
        note="What a new chain of this pitch may lengthen in the standard's life test.",
    ),
    _row(
        "acceptance-9", "elongation_percent", "Acceptance test after its full life: 0.30 %",
        upper=100 * 1.4 / (49 * 9.525), where={"pitch_mm": 9.525},
        source=_ISO_606 + ": 1.4 mm over 49 links", address="Table B.1",
        note="Roller chain; the same table allows timing-type bush chains 2.0 to 3.0 mm.",
    ),
    _row(
        "acceptance-12", "elongation_percent", "Acceptance test after its full life: 0.40 %",
        upper=100 * 2.5 / (49 * 12.7), where={"pitch_mm": 12.7},
        source=_ISO_606 + ": 2.5 mm over 49 links", address="Table B.1",
        note="What a new chain of this pitch may lengthen in the standard's life test.",
    ),
    _row(
        "service-8-1226", "elongation_percent", "Another engine's manual: 122.6 mm",
        upper=100 * (122.6 + 5.6 - 128) / 128, where=_OHC_8,
        source="Service manual, overhead-cam petrol engine, 16 links",
        address="workshop-manuals.com, page 1327 of the 2002 manual",
        note=_INSIDE_16 + "5.6 mm. For a drive with a tensioner.",
    ),
    _row(
        "service-8-1232", "elongation_percent", "Another engine's manual: 123.2 mm",
        upper=100 * (123.2 + 5.6 - 128) / 128, where=_OHC_8,
        source="Service manual, overhead-cam petrol engine, 16 links, 140 N pull",
        address="workshop-manuals.com, page 2027",
        note=_INSIDE_16 + "5.6 mm. For a drive with a tensioner.",
    ),
    _row(
        "service-8-1236", "elongation_percent", "Another engine's manual: 123.6 mm",
        upper=100 * (123.6 + 5.6 - 128) / 128, where=_OHC_8,
        source="Service manual, overhead-cam petrol engine, 16 links",
        address="charm.li, timing chain No. 2",
        note=_INSIDE_16 + "5.6 mm. For a drive with a tensioner.",
    ),
    _row(
        "service-9-1475", "elongation_percent", "Another engine's manual: 147.5 mm",
        upper=100 * (147.5 + 6.35 - 152.4) / 152.4, where=_OHC_9,
        source="Service manual, overhead-cam petrol engine, 16 links",
        address="charm.li, timing chain No. 1",
        note=_INSIDE_16 + "6.35 mm. For a drive with a tensioner.",
    ),
)  # fmt: skip

_WINDOW_NOTE = "Chain pushed by hand, total movement in and out; short pushrod-engine drives."

# The trade speaks in inches, so the boundaries are the inch figures exactly.
TOO_TIGHT_MM, WANTED_FROM_MM, WANTED_TO_MM, TOO_LOOSE_MM = 1.5875, 4.7625, 6.35, 12.7

MOVEMENT = (
    _row(
        "slack-window", "movement_mm", "Wanted on a fresh chain: 3/16 to 1/4 in",
        lower=WANTED_FROM_MM, upper=WANTED_TO_MM, where=_CAM, governs=True, origin=PRACTICE,
        note=_WINDOW_NOTE,
    ),
    _row(
        "slack-too-tight", "movement_mm", "Too tight: about 1/16 in, under effort",
        lower=TOO_TIGHT_MM, where=_CAM, origin=PRACTICE, note=_WINDOW_NOTE,
    ),
    _row(
        "slack-too-loose", "movement_mm", "Too loose: about 1/2 in, timing scatters",
        upper=TOO_LOOSE_MM, where=_CAM, origin=PRACTICE, note=_WINDOW_NOTE,
    ),
    _row(
        "slack-factory-new", "movement_mm", "A factory manual, new chain: 12.7 mm", upper=12.7,
        where=_CAM, source="Factory manual text, side deflection of the timing chain, 1997",
        address="gm.saturn.team, 1997 truck manual",
        note="Does not say whether one way or in and out; it conflicts with the trade's window.",
    ),
    _row(
        "slack-factory-used", "movement_mm", "A factory manual, used chain: 20.3 mm", upper=20.3,
        where=_CAM, source="Factory manual text, side deflection of the timing chain, 1997",
        address="gm.saturn.team, 1997 truck manual",
        note="Does not say whether one way or in and out; it conflicts with the trade's window.",
    ),
    _row(
        "slack-plus-minus-5", "movement_mm", "One overhead-cam engine: 5 mm each way",
        upper=10.0, where=_CAM, source="Owners' forum, timing chain slack at mid-run",
        address="forum.viva-lancia.com t=5957", note="A forum's word: weak.",
    ),
    _row(
        "slack-general", "movement_percent_of_centres", "General drives: 4 to 6 % of centres",
        lower=4.0, upper=6.0, where=_GENERAL, governs=True,
        source="Chain maker's technical answers, proper chain tension",
        address="diamondchain.com/faq/how-is-proper-chain-tension-measured",
        note="Slow and medium speed.",
    ),
    _row(
        "slack-fast", "movement_percent_of_centres", "Fast or reversing: 2 to 3 % of centres",
        lower=2.0, upper=3.0,
        source="Chain maker's technical answers, proper chain tension",
        address="diamondchain.com/faq/how-is-proper-chain-tension-measured",
        note="High speed, shock, reversing or vertical drives in general, not cam drives.",
    ),
)  # fmt: skip

ROCK = (
    _row(
        "rock-good-3-5", "crank_rock_deg", "A good chain: up to 3 to 5 degrees",
        upper=3.0, upper_to=5.0, where=_CAM, governs=True,
        source="Motoring guide, check a timing chain",
        address="itstillruns.com/check-timing-chain-7521157.html",
    ),
    _row(
        "rock-replace-10", "crank_rock_deg", "Replace at 10 degrees", upper=10.0,
        where=_CAM, governs=True, source="Motoring guide, check a timing chain",
        address="itstillruns.com/check-timing-chain-7521157.html",
    ),
    _row(
        "rock-loose-10-15", "crank_rock_deg", "Too loose beyond 10 to 15 degrees",
        upper=10.0, upper_to=15.0, where=_CAM, governs=True,
        source="Motoring guide, signs of a stretched timing chain",
        address="itstillruns.com/signs-stretched-timing-chain-7447803.html",
    ),
    _row(
        "rock-factory-movement", "sprocket_movement_mm", "A factory manual: 3.175 mm at the gear",
        upper=3.175, where=_CAM, governs=True,
        source="Factory manual text, measuring timing chain wear, 3.3 litre V6",
        address="myvehicle.help, 2007 V6",
        note="Cam bolt pulled both ways with 41 N m, 20 N m with the heads off; 1/8 in.",
    ),
    _row(
        "rock-renew-3-4", "crank_rock_deg", "Renew at 3 to 4 degrees", upper=3.0, upper_to=4.0,
        where=_CAM, governs=True, source="Owners' forum, worn timing chain",
        address="forabodiesonly.com/mopar/threads/worn-timing-chain.295382",
        note="A forum's word: weak.",
    ),
)  # fmt: skip

GEAR = (
    _row(
        "gear-8-36-973", "over_chain_mm", "Another engine's manual, cam gear: 97.3 mm", lower=97.3,
        where={"pitch_mm": 8.0, "teeth": 36},
        source="Service manual, overhead-cam petrol engine, gear with chain wrapped round",
        address="workshop-manuals.com, page 1327 of the 2002 manual",
    ),
    _row(
        "gear-8-36-962", "over_chain_mm", "Another engine's manual, cam gear: 96.2 mm", lower=96.2,
        where={"pitch_mm": 8.0, "teeth": 36},
        source="Service manual, overhead-cam petrol engine, new 97.4 mm",
        address="zatonevkredit.ru, timing chain inspection",
    ),
    _row(
        "gear-8-18-516", "over_chain_mm", "Another engine's manual, crank gear: 51.6 mm",
        lower=51.6, where={"pitch_mm": 8.0, "teeth": 18},
        source="Service manual, overhead-cam petrol engine, gear with chain wrapped round",
        address="workshop-manuals.com, page 1327 of the 2002 manual",
    ),
)  # fmt: skip

LIMITS = ELONGATION + MOVEMENT + ROCK + GEAR


def applies(limit: Limit, facts: dict[str, object]) -> bool:
    """Tell whether a limit's conditions are met.

    Parameters
    ----------
    limit : the limit
    facts : drive_kind, centres, pitch_mm [mm], cam_teeth (None when not known); of a gear pitch_mm
        and teeth

    Returns
    -------
    True or False; a condition on something not known is not met

    Raises
    ------
    none

    Validity
    --------
    A pitch counts as equal within 0.01 mm.

    Reference
    ---------
    none
    """
    for condition, wanted in limit.where.items():
        if condition == "cam_teeth_to":
            # Without a drive the teeth are not known; the general figure is then the one to show.
            teeth = facts.get("cam_teeth")
            met = not isinstance(teeth, int) or teeth <= wanted
        elif condition == "cam_teeth_above":
            teeth = facts.get("cam_teeth")
            met = isinstance(teeth, int) and teeth > wanted
        elif condition == "pitch_mm":
            pitch = facts.get("pitch_mm")
            met = isinstance(pitch, float) and abs(pitch - wanted) < 0.01
        else:
            met = facts.get(condition) == wanted
        if not met:
            return False
    return True


def upper_of(limit: Limit, cam_teeth: int | None) -> float | None:
    """Give a limit's upper value, worked out where it depends on the cam gear's teeth."""
    if limit.over_cam_teeth is not None and cam_teeth:
        return float(limit.over_cam_teeth / cam_teeth)
    return None if limit.upper is None else float(limit.upper)


def own_limit(quantity: str, lower: float | None, upper: float | None, source: str) -> Limit:
    """Make the limit that the user typed in from a maker's manual; it governs."""
    return _row(
        "own", quantity, "Your limit: " + source, lower=lower, upper=upper, governs=True,
        origin=OWN, source=source,
    )  # fmt: skip


def as_dict(limit: Limit, cam_teeth: int | None = None) -> dict[str, object]:
    """Give a limit as the API and the screen show it, its upper value worked out."""
    return {
        "id": limit.id,
        "quantity": limit.quantity,
        "lower": limit.lower,
        "upper": upper_of(limit, cam_teeth),
        "upper_to": limit.upper_to,
        "unit": UNITS[limit.quantity],
        "label": limit.label,
        "origin": limit.origin,
        "source": limit.source,
        "address": limit.address,
        "note": limit.note,
    }
