"""From cold to running: materials and temperatures as read, and the growth they mean."""

from collections import namedtuple

from . import limits
from .fields import Form
from .heat import Growth
from .instrument import assumption
from .materials import MATERIALS, Material, as_dict

PARTS = ("block", "gear", "chain")
# Running temperatures where none is given: from memory, unverified.
RUNNING_C = {"block": 90.0, "gear": 100.0, "chain": 100.0}
COLD_C = 20.0


class Heating(namedtuple("Heating", ("expansion", "cold", "hot"))):
    """Expansion coefficients [1e-6/K] and running temperatures [degC] by part; the cold
    temperature [degC].
    """

    __slots__ = ()

    def growth(self, share: float = 1.0) -> Growth:
        """Give the strains at a share of the way from cold to running."""
        strains = [
            self.expansion[part] * 1e-6 * share * (self.hot[part] - self.cold) for part in PARTS
        ]
        return Growth(strains[0], strains[1], strains[2])


def take_heating(
    form: Form, assumed: list[dict[str, object]]
) -> tuple[Heating, list[dict[str, object]]]:
    """Read materials and temperatures; say what was assumed and where each figure is from.

    Parameters
    ----------
    form : the input being read; temperatures [degC], coefficients [1e-6/K]
    assumed : list that what was assumed is added to

    Returns
    -------
    Heating [degC, 1e-6/K], and the materials used in the form of the result; what is refused is
    noted in the form

    Raises
    ------
    none

    Validity
    --------
    Coefficients near room temperature, carried on.

    Reference
    ---------
    `materials`, each with its source; usual temperatures from memory, unverified.
    """
    expansion, hot, used = {}, {}, []
    cold = form.take_number("cold_temperature_c", required=False)
    if cold is None:
        cold = COLD_C
        assumed.append(_assumed_temperature("cold_temperature_c", cold))
    source = form.take_text("expansion_source", 200) if form.has("expansion_source") else None
    by_id = {material.id: material for material in MATERIALS}
    for part in PARTS:
        default = None if part == "block" else "steel-4140"
        field = part + "_expansion_ppm"
        own = form.take_number(field, required=False)
        name = form.take_choice(part + "_material", tuple(sorted(by_id)), default or "grey-iron")
        if own is None and default is not None and not form.has(part + "_material"):
            text = "Alloy steel, assumed for the " + part + ": no material was given."
            alpha = by_id[default].expansion
            assumed.append(assumption(field, alpha, limits.MEMORY, text))
        if own is not None and source is None:
            need = "where the coefficient comes from"
            form.refuse("missing", "expansion_source", None, need, "Name the data sheet or book.")
        if own is not None and form.has(part + "_material"):
            need = "either a material or a figure of your own"
            form.refuse("conflict", field, own, need, "Leave one out.")
        if part == "block" and not form.has(field) and not form.has("block_material"):
            need = "one of " + ", ".join(sorted(by_id))
            form.refuse("missing", "block_material", None, need, "Iron or aluminium decides.")
        material = by_id[name or "grey-iron"]
        if own is not None:
            material = Material("own", "Own figure", own, limits.OWN, source or "", "")
        expansion[part] = material.expansion
        row = as_dict(material)
        row["part"] = part
        used.append(row)
        at = form.take_number(part + "_temperature_c", required=False)
        if at is None:
            at = RUNNING_C[part]
            assumed.append(_assumed_temperature(part + "_temperature_c", at))
        hot[part] = at
    return Heating(expansion, cold, hot), used


def _assumed_temperature(field: str, value: float) -> dict[str, object]:
    return assumption(field, value, limits.MEMORY, "A usual temperature, assumed: none was given.")
