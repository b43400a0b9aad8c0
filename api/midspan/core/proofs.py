"""Published values beside ours: how a check value is kept, and how it is held against the core.

The values stand in `proofs_gears.py`, `proofs_chain.py`, `proofs_timing.py`, `proofs_air.py` and
`proofs_statistics.py`. Ours is worked out anew whenever it is asked for. A value is as printed, so
that its digits tell how close ours has to come: half of the last one, unless the source gives
reason for more, and then that reason is told.
"""

from collections import namedtuple

from .limits import MEMORY, PUBLISHED

# What rounding to and from binary may add, in parts of what is allowed.
_HAIR = 1e-9


class Proof(
    namedtuple(
        "Proof",
        ("relation", "what", "unit", "given", "of", "origin", "source", "address", "within",
         "because", "rows"),
    )
):  # fmt: skip
    """Values of one source that one relation must give.

    `relation` : module and function of the core, as "drive.pitch_radius"
    `what`, `unit` : the quantity printed, and its unit
    `given` : name and unit of each input, in the order in which `of` takes them
    `of` : works out our value from a row's inputs
    `within` : largest difference, or a function of the inputs that gives it; None for half of the
    last printed digit
    `because` : why it is not that half digit, or what else to know
    `rows` : of each value its inputs and, last, the text printed
    """

    __slots__ = ()


def published(
    relation: str,
    what: str,
    unit: str,
    given: tuple[tuple[str, str], ...],
    of: object,
    source: str,
    address: str,
    rows: tuple[tuple[object, ...], ...],
    within: object = None,
    because: str = "",
) -> Proof:
    """Make the proof of values that are in print, the address or page beside them."""
    return Proof(
        relation, what, unit, given, of, PUBLISHED, source, address, within, because, rows
    )  # fmt: skip


def recalled(
    relation: str,
    what: str,
    unit: str,
    given: tuple[tuple[str, str], ...],
    of: object,
    source: str,
    rows: tuple[tuple[object, ...], ...],
    within: object = None,
    because: str = "",
) -> Proof:
    """Make the proof of values from memory, or whose address was not kept."""
    return Proof(relation, what, unit, given, of, MEMORY, source, "", within, because, rows)


def last_digit(printed: str) -> float:
    """Worth of one step in the last digit of a printed number, in its unit.

    10^-d, d the decimals printed

    Parameters
    ----------
    printed : a decimal number as printed, such as "0.79" or "-4.0621"

    Returns
    -------
    one step [its unit]

    Raises
    ------
    none

    Validity
    --------
    Plain decimals. Zeros before the point are taken as printed digits: "100" is good to one.

    Reference
    ---------
    Rounding to nearest leaves half a step either way: JCGM 100:2008 (GUM), F.2.2.1.
    """
    point = printed.find(".")
    return 10.0 ** -(len(printed) - point - 1) if point >= 0 else 1.0


def worked(proof: Proof) -> dict[str, object]:
    """Hold every value of a proof against ours.

    difference = ours - published; it holds where |difference| is not larger than what is allowed

    Parameters
    ----------
    proof : values of one source, each [its unit]

    Returns
    -------
    dict, units by field name or named in it: the proof, and of each row its inputs, the text
    printed, published_value, computed_value, difference_found, difference_allowed and whether it
    holds

    Raises
    ------
    whatever the relation raises for a row's inputs

    Validity
    --------
    That a value holds says that formula, code and transcription agree with the source, no more: the
    source can be wrong, and other inputs are not covered.

    Reference
    ---------
    Half of the last printed digit: JCGM 100:2008 (GUM), F.2.2.1.
    """
    rows = []
    for row in proof.rows:
        given, printed = list(row[:-1]), row[-1]
        value = float(printed)
        ours = float(proof.of(*given))
        allowed = proof.within
        if allowed is None:
            allowed = last_digit(printed) / 2
        elif not isinstance(allowed, float):
            allowed = float(allowed(*given))
        off = ours - value
        rows.append(
            {
                "given": given,
                "printed": printed,
                "published_value": value,
                "computed_value": ours,
                "difference_found": off,
                "difference_allowed": allowed,
                "holds": abs(off) <= allowed * (1 + _HAIR),
            }
        )
    return {
        "relation": proof.relation,
        "what": proof.what,
        "unit": proof.unit,
        "given": [{"name": name, "unit": unit} for name, unit in proof.given],
        "origin": proof.origin,
        "source": proof.source,
        "address": proof.address,
        "because": proof.because,
        "rows": rows,
    }
