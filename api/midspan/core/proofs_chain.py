"""Published lengths of chains, centre distances, and chains that have worn."""

import math

from .drive import Drive, handbook_pitches, taut_centre_distance
from .elongation import elongation_from_length, length_of_elongation
from .gain_friction import pin_power
from .phase import angle_of_arc, degrees, radians
from .proofs import last_digit, published, recalled

_MOTT = "R. L. Mott, Machine Elements in Mechanical Design, 4th ed., Ex. 7-3, p. 295"
_MOTT_AT = "fliphtml5.com/eraqv/nlwf, p. 311"
_BHANDARI = "V. B. Bhandari, Design of Machine Elements, ch. 14, Ex. "
_FOSSEE = "github.com/FOSSEE/Scilab-TBC-Uploads, 764/CH14/"
_PAPER = "Chain design paper, values of its reference 8"
_PAPER_AT = "th4.ilovetranslation.com/y7KZH94d"
_DRIVE = (("pitch", "mm"), ("teeth", ""), ("teeth of the other", ""))
_AT_CENTRE = _DRIVE + (("centre distance", "mm"),)
_OF_LINKS = _DRIVE + (("links", ""),)
_SERIES = (
    "The book works by the series. The exact geometry lies closer by the first term that the "
    "series leaves out; that much, and half of the last digit, is allowed."
)
_OWNERS = "Owners' forum, 16 pitches"
_WHOLE = "A limit of a whole per cent: the length is what the source worked out."


def _pitches(pitch: float, z1: int, z2: int, centre: float) -> float:
    return handbook_pitches(Drive(pitch, z1, z2, centre, 0))


def _centre(pitch: float, z1: int, z2: int, links: int) -> float:
    found = taut_centre_distance(Drive(pitch, z1, z2, links * pitch / 3, links))
    return float("nan") if found is None else found


def _left_out(step: float) -> object:
    """Give what the series leaves out, and half of the last digit [mm], for a row of `_centre`."""

    def allowed(pitch: float, z1: int, z2: int, links: int) -> float:
        centre = _centre(pitch, z1, z2, links)
        x = (z2 - z1) * pitch / (2 * math.pi * centre)
        # To first order, and a tenth more for the terms after it.
        return 1.1 * centre * x**4 / 24 / math.sqrt(1 - x * x) + step / 2

    return allowed


def _percent(pitch: float, pitches: int, length: float) -> float:
    return 100 * elongation_from_length(pitch, pitches, length)


def _length(pitch: float, pitches: int, percent: float) -> float:
    return length_of_elongation(pitch, pitches, percent / 100)


def _f4(ratio: float) -> float:
    """Centre distance over 2 X - z1 - z2, for 20 and 60 teeth and a pitch of 1."""
    links = 20 + ratio * 40
    found = taut_centre_distance(Drive(1.0, 20, 60, links / 2, links))
    return float("nan") if found is None else found / (2 * links - 80)


def _efficiency(teeth: int) -> float:
    """Give what the joints leave of the power of a strand [%], at 1000 N and 50 turns a second."""
    power = 1000 * 9.525e-3 * teeth * 50
    return 100 * (1 - pin_power(0.1, 1000, 3.28, 50, 0.5) / 2 / power)


_LENGTHS = (
    (_MOTT, _MOTT_AT, (12.7, 17, 65, 381.0, "102.9")),
    (_BHANDARI + "14.3", _FOSSEE + "EX14.3.b/result14_3.txt", (12.7, 21, 63, 500, "121.875097")),
    (_BHANDARI + "14.4", _FOSSEE + "EX14.4.b/result14_4.txt", (19.05, 17, 34, 762.0, "105.683011")),
    (
        _BHANDARI + "14.6, first design", _FOSSEE + "EX14.6.b/result14_6.txt",
        (19.05, 21, 80, 762.0, "132.704369"),
    ),
    (
        _BHANDARI + "14.6, second design", _FOSSEE + "EX14.6.b/result14_6.txt",
        (12.7, 25, 96, 381.0, "124.756334"),
    ),
    (_PAPER, _PAPER_AT, (1, 20, 63, 36, "114.8")),
)  # fmt: skip
# Bhandari takes off 0.2 % for sag in Ex. 14.4; Mott prints pitches of 12.7 mm.
_CENTRES = (
    (_MOTT, _MOTT_AT, "pitches", 1 / 12.7, (12.7, 17, 65, 104, "30.54")),
    (
        _BHANDARI + "14.3", _FOSSEE + "EX14.3.b/result14_3.txt", "mm", 1.0,
        (12.7, 21, 63, 122, "500.804717"),
    ),
    (
        _BHANDARI + "14.4, 0.2 % taken off for sag", _FOSSEE + "EX14.4.b/result14_4.txt", "mm",
        0.998, (19.05, 17, 34, 106, "763.496160"),
    ),
    (
        _BHANDARI + "14.6, first design", _FOSSEE + "EX14.6.b/result14_6.txt", "mm", 1.0,
        (19.05, 21, 80, 132, "755.098993"),
    ),
    (
        _BHANDARI + "14.6, second design", _FOSSEE + "EX14.6.b/result14_6.txt", "mm", 1.0,
        (12.7, 25, 96, 124, "375.825124"),
    ),
    (_PAPER, _PAPER_AT, "pitches", 1.0, (1, 20, 63, 114, "35.6")),
)  # fmt: skip


def _scaled(of: object, factor: float) -> object:
    return lambda *given: factor * of(*given)  # type: ignore[operator]


_F4 = (
    (13, "0.24991"), (12, "0.24990"), (11, "0.24988"), (10, "0.24986"), (9, "0.24983"),
    (8, "0.24978"), (7, "0.24970"), (6, "0.24958"), (5, "0.24937"), (4.8, "0.24931"),
    (4.6, "0.24925"), (4.4, "0.24917"), (4.2, "0.24907"), (4.0, "0.24896"), (3.8, "0.24883"),
    (3.6, "0.24868"), (3.4, "0.24849"), (3.2, "0.24825"), (3.0, "0.24795"), (2.9, "0.24778"),
    (2.8, "0.24758"), (2.7, "0.24735"), (2.6, "0.24708"), (2.5, "0.24678"), (2.4, "0.24643"),
    (2.3, "0.24602"), (2.2, "0.24552"), (2.1, "0.24493"), (2.0, "0.24421"), (1.95, "0.24380"),
    (1.90, "0.24333"), (1.8, "0.24222"), (1.7, "0.24081"), (1.6, "0.23897"),
)  # fmt: skip

PROOFS = (
    tuple(
        [
            published(
                "drive.handbook_pitches", "Chain length", "pitches", _AT_CENTRE, _pitches,
                source, address, (row,),
            )
            for source, address, row in _LENGTHS
        ]
    )
    + (
        recalled(
            "drive.handbook_pitches", "Chain length", "pitches", _AT_CENTRE, _pitches,
            "R. S. Khurmi, J. K. Gupta, Machine Design, Ex. 21.1",
            ((19.05, 25, 72, 568, "110"),),
        ),
    )
    + tuple(
        [
            published(
                "drive.taut_centre_distance", "Centre distance", unit, _OF_LINKS,
                _scaled(_centre, factor), source, address, (row,),
                _scaled(_left_out(last_digit(str(row[-1])) / factor), factor), _SERIES,
            )
            for source, address, unit, factor, row in _CENTRES
        ]
    )
    + (
        recalled(
            "drive.taut_centre_distance", "Factor f4: centre distance over p (2 X - z1 - z2)", "",
            (("(X - z1) / (z2 - z1)", ""),), _f4,
            "ISO 10823, as recalled; the text was not found", _F4, 1e-5,
            "Rows from memory: one step in the last digit is allowed.",
        ),
        published(
            "elongation.elongation_from_length", "Elongation", "%",
            (("pitch", "mm"), ("pitches", ""), ("length", "mm")), _percent,
            "Chain glossary: elongation", "jitetan.com/term/chain_nobiritu.html",
            ((12.7, 24, 307.2, "0.79"),),
        ),
        published(
            "elongation.elongation_from_length", "Elongation", "%",
            (("pitch", "mm"), ("pitches", ""), ("length", "mm")), _percent,
            "Old against new chain, p. 3", "mrbill.homeip.net, old_vs_new_chain",
            ((25.4, 12, 307.34, "0.83"),), None,
            "Printed as 12 in plus 2/20 in; any pitch of 12 in in all.",
        ),
        published(
            "elongation.elongation_from_length", "Elongation", "%",
            (("pitch", "mm"), ("pitches", ""), ("length", "mm")), _percent,
            "Cycling club, 21 pins", "roadragecycling.com/2015/01", ((12.7, 20, 255.0, "0.39"),),
        ),
        published(
            "elongation.length_of_elongation", "Length at the limit", "mm",
            (("pitch", "mm"), ("pitches", ""), ("elongation", "%")), _length,
            _OWNERS, "honda-board.de",
            (
                (15.88, 16, 1, "256.62"), (15.88, 16, 2, "259.16"),
                (12.7, 16, 1, "205.23"), (12.7, 16, 2, "207.26"),
            ), None,
            _WHOLE + " It uses 15.88 for a pitch that is 15.875.",
        ),
        published(
            "elongation.length_of_elongation", "Length at the limit", "mm",
            (("pitch", "mm"), ("pitches", ""), ("elongation", "%")), _length,
            "Two-stroke marine engine manual, plate 106-1, D06-19", "scribd.com/document/789621685",
            ((114.3, 10, 1, "1154.4"),), None, _WHOLE,
        ),
        published(
            "elongation.length_of_elongation", "Length at the limit", "mm",
            (("pitch", "mm"), ("pitches", ""), ("elongation", "%")), _length,
            "Kart forum, MsgID 515717", "karting.co.uk", ((7.774, 106, 1, "832.294"),), 0.01,
            "It adds 8.25 mm for 1 %, which is 8.24.",
        ),
        published(
            "phase.angle_of_arc", "Arc on the rim", "in", (("angle", "deg"), ("rim", "in")),
            lambda angle, rim: radians(angle) / angle_of_arc(1.0, rim),
            "Estimating timing chain wear", "crankshaftcoalition.com/wiki", ((10, 8, "0.7"),),
        ),
        published(
            "phase.angle_of_arc", "Angle of an arc", "deg",
            (("arc", "in"), ("round the rim", "in")),
            lambda arc, round_it: degrees(angle_of_arc(arc, round_it / math.pi)),
            "Car discussion, ds745331", "cargurus.ca/Cars/Discussion-c258_ds745331",
            ((1, 18, "20"),),
        ),
        published(
            "gain_friction.pin_power", "Efficiency of a chain, joints alone", "%", (("teeth", ""),),
            _efficiency, "Mechanics and Industry 23 (2022) 27", "doi.org/10.1051/meca/2022026",
            ((18, "99"), (22, "99")), None,
            "The source says about. The friction coefficient, 0.1, is from memory, unverified.",
        ),
    )
)  # fmt: skip
