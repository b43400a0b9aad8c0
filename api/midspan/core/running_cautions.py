"""Cautions for running an engine in, as data: what to mind, and who says so."""

from collections import namedtuple

from .limits import PRACTICE, PUBLISHED
from .warnings import CAUTIONS

Caution = namedtuple("Caution", ("code", "text", "origin", "source", "address"))


def _usual(code: str) -> Caution:
    return Caution(code, CAUTIONS[code], PRACTICE, "", "")


_ALL = (
    _usual("manual-first"),
    _usual("turn-by-hand"),
    _usual("valve-contact"),
    Caution(
        "carbon-monoxide",
        "Exhaust gas kills. Lead it outdoors by a hose at the tailpipe: an open door is not "
        "enough. A 5 hp engine, worked out from a real case, passed 1,200 ppm within a minute in a "
        "room of 1,000 cubic feet. Over 200 ppm at any time: stop, and leave.",
        PUBLISHED, "NIOSHTIC 00239662; OSHA chemical data (ceiling 200 ppm, immediate danger "
        "1,200 ppm); IMC 502.14", "www.cdc.gov/niosh/nioshtic-2/00239662.html",
    ),
    Caution(
        "fire",
        "Fuel vapour runs along the floor to any spark. Look for leaks before and after the start; "
        "keep an extinguisher for fuel and electrics within reach, and know how to cut fuel and "
        "ignition.",
        PUBLISHED, "HSE, motor vehicle repair: fire and explosion (leaks and draining)",
        "www.hse.gov.uk/mvr/topics/fire.htm",
    ),
    Caution(
        "rotating",
        "Belts, fan and pulleys take hands, hair, sleeves and cords. Guards on; stand clear of "
        "their plane above idle.",
        PUBLISHED, "ASTM D6618, section 8",
        "www.dgaequipment.com/astm-d6618-standard-test-method-for-evaluation-of-engine-oils-in-"
        "diesel-four-str-8170.html",
    ),
    Caution(
        "electric-fan", "An electric fan may start with the engine stopped.",
        PUBLISHED, "Emission tester's manual, p. 19", "manualslib.es/manual/111854/",
    ),
    Caution(
        "eyes-ears",
        "Safety glasses always. Ear protection: 85 dB(A) is the limit over 8 hours, and every "
        "3 dB more halves the time.",
        PUBLISHED, "ASTM D6618, section 8 (glasses); NIOSH criteria (noise), as repeated",
        "www.riskmanagement365.com/2015/06/08/avoid-hearing-loss/",
    ),
    Caution(
        "hot-oil",
        "Oil, coolant, exhaust and metal burn. Let the engine cool before you drain it; never open "
        "a hot radiator.",
        PUBLISHED, "EPA 530-F-94-008 (draining)",
        "nepis.epa.gov/Exe/ZyPURL.cgi?Dockey=10000L5O.txt",
    ),
    Caution(
        "used-oil",
        "Used oil on the skin can cause dermatitis and, more rarely, skin cancer: gloves on, wash "
        "with soap, no oily rags in pockets. Take it to collection: a gallon can spoil up to a "
        "million gallons of drinking water.",
        PUBLISHED, "HSE, skin at work, motor vehicle repair; EPA 530-F-94-008",
        "www.hse.gov.uk/skin/employ/highrisk/mvr.htm",
    ),
    Caution(
        "road", "Brake and steering proven first; another person reads the gauges; keep the law.",
        PRACTICE, "", "",
    ),
)  # fmt: skip
BY_CODE = {caution.code: caution for caution in _ALL}


def as_dict(code: str) -> dict[str, object]:
    """Give a caution as the API and the screen show it."""
    caution = BY_CODE[code]
    return {
        "code": code,
        "text": caution.text,
        "origin": caution.origin,
        "source": caution.source,
        "address": caution.address,
    }
