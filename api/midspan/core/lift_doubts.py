"""What a result that rests on a lift table must say of the table's faults."""

from .lift_checks import findings
from .limits import MEMORY
from .lobe import Lobe
from .warnings import warning


def table_faults(field: str, lobe: Lobe) -> list[dict[str, object]]:
    """Warn of the faults that a lift table shows, where something else is worked out from it.

    Parameters
    ----------
    field : that holds the table
    lobe : made of it

    Returns
    -------
    list of warnings, one for each fault

    Raises
    ------
    none

    Validity
    --------
    As `lift_checks.findings`.

    Reference
    ---------
    As `lift_checks.findings`: its thresholds are from memory, unverified.
    """
    found, _ = findings(lobe.table, lobe)
    warned = []
    for one in found:
        text = "The lift table has a fault. {} {}".format(one["text"], one["next_step"])
        warned.append(warning("table-fault", field, one["code"], text, MEMORY))
    return warned
