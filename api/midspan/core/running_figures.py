"""Figures for running in, as data: each with its origin. Sources that disagree all stay.

To add one, add a row; a step names the rows it rests on (`running_steps`). An address may name a
maker; our own words do not.
"""

from collections import namedtuple

from .limits import MEMORY, PRACTICE, PUBLISHED

DERIVED = "derived from published figures"

UNITS = {
    "speed": "1/min",
    "time": "min",
    "running": "h",
    "distance": "km",
    "road speed": "km/h",
    "temperature": "degC",
    "length": "mm",
    "load": "N",
    "content": "mg/kg",
    "share": "%",
    "count": "",
    "word": "",
}

Figure = namedtuple(
    "Figure", ("id", "quantity", "lower", "upper", "label", "origin", "source", "address", "note")
)


def _row(
    id: str,
    quantity: str,
    label: str,
    lower: float | None = None,
    upper: float | None = None,
    *,
    origin: str = PUBLISHED,
    source: str = "",
    address: str = "",
    note: str = "",
) -> Figure:
    return Figure(id, quantity, lower, upper, label, origin, source, address, note)


# Exact: the international mile of 5280 feet, the international pound at standard gravity.
MILE_KM = 1.609344
POUND_N = 4.4482216152605
_LEAFLETS = ("A builder on a forum, quoting cam makers' leaflets", "lfgss.com/comments/11803050")
_SHOP = ("An engine shop's page on oil", "kirks-auto.com/Oil_101_byRobertKirk.html")
_LOST = ("A forum of engine builders", "reddit.com/r/EngineBuilding (1jelike)")
_STUDY = ("A machine shop's page on oil", "lockhartmachine.ca/oil_study.html")
_OWNER = ("An owner's collected notes on oil", "gregraven.org/hotwater/oil/oil-8")
_LINER = (
    "Ma et al., Break-in liner wear and piston ring assembly friction, Tribology Trans. 41(4) 1998",
    "acemap.info/paper/339587667",
)
_MYTH = (
    "A lubricants engineer's text on oil myths",
    "forabodiesonly.com/mopar/threads/engine-oil-mythology.367369",
)
_GUIDE = (
    "The complete guide to chain, 2.2.4",
    "chain-guide.com/basics/2-2-4-wear-of-working-parts.html",
)
_FITTING = ("Rules of camshaft installation", "britishautoparts.com.au/camshaft_kits____v8")

# fmt: off
CAM = (
    _row("cam-speed-leaflets", "speed", "Not below 2000", 2000.0, source=_LEAFLETS[0],
         address=_LEAFLETS[1], note="A forum's word: weak. For the first 20 minutes."),
    _row("cam-speed-shop", "speed", "1500 to 2000", 1500.0, 2000.0, source=_SHOP[0],
         address=_SHOP[1]),
    _row("cam-speed-forum", "speed", "2000 to 3000", 2000.0, 3000.0, source=_LOST[0],
         address=_LOST[1], note="A forum's word: weak. A lobe was lost all the same."),
    _row("cam-speed-trade", "speed", "1500 to 2500, or 2000 to 3000, varied", 1500.0, 3000.0,
         origin=MEMORY, note="Never at idle."),
    _row("cam-time-leaflets", "time", "First 20 minutes", 20.0, 20.0, source=_LEAFLETS[0],
         address=_LEAFLETS[1], note="A forum's word: weak."),
    _row("cam-time-list", "time", "First 20 minutes are the most crucial", 20.0, 20.0,
         source="Owners' mailing list, 1999",
         address="ftp.team.net/html/triumphs/1999-06/msg00503.html"),
    _row("cam-time-shop", "time", "Half an hour", 30.0, 30.0, source=_SHOP[0], address=_SHOP[1]),
    _row("cam-time-forum", "time", "30 minutes", 30.0, 30.0, source=_LOST[0], address=_LOST[1],
         note="A forum's word: weak. A lobe was lost all the same."),
    _row("cam-time-trade", "time", "20 to 30 minutes", 20.0, 30.0, origin=MEMORY),
    _row("springs-light", "load", "Outer springs alone above about 300 to 320 lbf open",
         300 * POUND_N, 320 * POUND_N, origin=MEMORY),
    _row("coil-gap", "length", "Between coils at full lift: 0.030 in", 0.762, source=_FITTING[0],
         address=_FITTING[1]),
    _row("valve-gap", "length", "Valve to piston or block: 0.060 in", 1.524, source=_FITTING[0],
         address=_FITTING[1]),
    _row("roller-travel", "length", "Spring travel beyond lift, roller cam: 0.060 in", 1.524,
         source="Camshaft installation rules, trade magazine",
         address="moparconnectionmagazine.com/hughes-engines-tech-center"
                 "-camshaft-installation-commandments/"),
    _row("roller-speed", "speed", "Fast idle, varied", 1200.0, 2000.0, origin=MEMORY),
    _row("roller-time", "time", "Until pressure and temperature stand still", 10.0, 15.0,
         origin=MEMORY),
)

RINGS = (
    _row("ring-hour", "time", "Wear of liner and rings falls sharply in the first hour",
         60.0, 60.0, source=_LINER[0], address=_LINER[1],
         note="A petrol engine run 28 h. Its friction went on falling for about 20 h."),
    _row("ring-friction", "running", "Friction falls in three stages: 1, 2.5 and about 20 h",
         1.0, 20.0, source=_LINER[0], address=_LINER[1]),
    _row("ring-pulls", "count", "Pulls, each followed by a coast", 10.0, 10.0, origin=MEMORY),
    _row("ring-road-speed", "road speed", "Each pull from 30 to 50 mph", 30 * MILE_KM, 50 * MILE_KM,
         origin=MEMORY),
    _row("oil-before-load", "temperature", "Oil before load: 160 to 180 F",
         (160 - 32) / 1.8, (180 - 32) / 1.8,
         origin=MEMORY),
    _row("oil-at-load", "temperature", "Oil during pulls: 200 to 230 F",
         (200 - 32) / 1.8, (230 - 32) / 1.8,
         origin=MEMORY),
)

DRAINS = (
    _row("drain-30-min", "time", "First drain after about 30 minutes", 30.0, 30.0,
         source=_STUDY[0], address=_STUDY[1]),
    _row("drain-1-h", "time", "First drain after about the first hour", 60.0, 60.0,
         source="A garage's advice after a rebuild",
         address="willandservicecentre.co.uk/how-soon-to-change-oil-after-engine-rebuild/"),
    _row("drain-20-min", "time", "Non-detergent oil: 20 minutes at the least", 20.0,
         source=_OWNER[0], address=_OWNER[1]),
    _row("drain-miles", "distance", "Non-detergent oil: a couple of hundred miles at the most",
         upper=200 * MILE_KM, source=_OWNER[0], address=_OWNER[1]),
    _row("drain-never-over", "distance", "Never over 1,000 miles", upper=1000 * MILE_KM,
         source=_OWNER[0], address=_OWNER[1]),
    _row("drain-running-in-oil", "word", "Running-in oil: for the first running only, then oil "
         "and filter", source="Trade magazine, break-in oils, October 2014",
         address="enginebuildermag.com/2014/10/break-in-oils-and-assembly-lube-needs/"),
    _row("synthetic-later", "word", "Petroleum oil to the first normal drain; racing may start "
         "on synthetic", source="A seller of synthetic oils",
         address="allsyntheticsgroup.com/articles/break-in.html"),
    _row("synthetic-myth", "word", "That engines do not run in on synthetic is a myth",
         source=_MYTH[0], address=_MYTH[1], note="Cites cars filled so at the factory."),
    _row("drain-aircraft", "running", "Aircraft engines: straight mineral oil 50 h, or until "
         "its use is steady", 50.0, 50.0, source="Aircraft engine maker's text, as reprinted",
         address="newlangsyne.com/doc/breakin.htm", note="Another trade, for comparison."),
    _row("drain-diesel", "running", "Rebuilt industrial diesels: the first oil matters for 200 "
         "to 500 h", 200.0, 500.0, source="Diesel supplier's tech tip 184",
         address="foleyengines.com/tech-tip-184-how-break-remanufactured-deutz-or-perkins-engine/",
         note="Another trade, for comparison."),
    _row("drain-normal", "distance", "A normal drain: 5,000 miles", 5000 * MILE_KM,
         5000 * MILE_KM, origin=MEMORY, note="The maker's manual decides; enter its figure."),
)

CHAIN = (
    _row("chain-20-h", "running", "A roller chain's first wear usually ceases within 20 h",
         upper=20.0, source=_GUIDE[0], address=_GUIDE[1],
         note="General drives, running without a stop; no timing chain was measured."),
    _row("chain-0-1-percent", "share", "First wear: less than 0.1 % of length", upper=0.1,
         source=_GUIDE[0], address=_GUIDE[1], note="General drives; no timing chain."),
    _row("chain-10000-miles", "distance", "With today's oils a tight chain may need some 10,000 "
         "miles to bed in", 10000 * MILE_KM, 10000 * MILE_KM, origin=PRACTICE),
)

ADDITIVES = (
    _row("zddp-break-in", "content", "ZDDP for running in: 1500 ppm, 1000 ppm after", 1000.0,
         1500.0, source=_STUDY[0], address=_STUDY[1],
         note="Does not say whether zinc or phosphorus is meant; warns of overdosing."),
    _row("zddp-older", "content", "ZDDP for cars before 1995: 1200 ppm", 1200.0, source=_SHOP[0],
         address=_SHOP[1], note="Does not say whether zinc or phosphorus is meant."),
    _row("zddp-myth", "word", "That little ZDDP harms flat tappets is a myth", source=_MYTH[0],
         address=_MYTH[1]),
    _row("zddp-no-myth", "word", "Rebuts that it is a myth", source="A seller of additives",
         address="zddplus.com/zddplus-tech-brief-2-zddp-and-cam-wear-just-another-engine-oil-myth/",
         note="An interested party."),
    _row("zinc-chain", "content", "Zinc from ZDDP below about 350 ppm wears a timing chain less",
         upper=350.0, source="WO2016/179168 A1, claims",
         address="sumobrain.com/patents/wipo/Lubricant-additive-reducing-timing-chain/"
                 "WO2016179168A1.html",
         note="An additive maker's patent, tried on direct-injection engines."),
    _row("phosphorus-of-zinc", "share", "Phosphorus is 75 to 90 % of zinc", 75.0, 90.0,
         source="ZDDP and older automobile engines",
         address="online.documentine.com", note="Its author is no lubricants specialist."),
    _row("phosphorus-1000", "content", "More valvetrain wear in some oils under 1,000 ppm P",
         1000.0, source="Trade magazine, on heavy-duty oils",
         address="lubesngreases.com/magazine/23_1/automotive-11"),
)
# fmt: on

FIGURES = CAM + RINGS + DRAINS + CHAIN + ADDITIVES
BY_ID = {figure.id: figure for figure in FIGURES}


def as_dict(figure: Figure) -> dict[str, object]:
    """Give a figure as the API and the screen show it."""
    return {
        "id": figure.id,
        "quantity": figure.quantity,
        "lower": figure.lower,
        "upper": figure.upper,
        "unit": UNITS[figure.quantity],
        "label": figure.label,
        "origin": figure.origin,
        "source": figure.source,
        "address": figure.address,
        "note": figure.note,
    }
