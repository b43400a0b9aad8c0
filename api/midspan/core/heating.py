"""From cold to running: materials and temperatures as read, and the growth they mean."""

from collections import namedtuple

from . import limits
from .fields import Form
from .heat import Growth
from .instrument import assumption
from .materials import MATERIALS, OWN_SPREAD_PPM, Material, as_dict

PARTS = ("block", "gear", "chain")
# Running temperatures, and that of a cold engine, where none is given: from memory, unverified.
RUNNING_C = {"block": 90.0, "gear": 100.0, "chain": 100.0}
COLD_C = 20.0
# How far off a running temperature, and that of a cold engine, may be either way; from memory,
# unverified.
ERROR_K, COLD_ERROR_K = 10.0, 3.0


class Heating(
    namedtuple(
        "Heating",
        ("expansion", "cold", "hot", "spread", "error", "cold_error", "origins", "guessed"),
    )
):
    """Expansion coefficients [1e-6/K] and running temperatures [degC] by part; the cold
    temperature [degC]; half-widths of the coefficients by part [1e-6/K], of the running and of the
    cold temperature [K], and where each of those is from: three parts, block, oil, cold; whether a
    temperature or a material had to be assumed.
    """

    __slots__ = ()

    def growth(self, share: float = 1.0, other: dict[str, float] | None = None) -> Growth:
        """Give the strains at a share of the way from cold to running; with other materials."""
        expansion = self.expansion if other is None else other
        strains = [expansion[part] * 1e-6 * share * (self.hot[part] - self.cold) for part in PARTS]
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
    expansion, hot, spread, origins, used = {}, {}, {}, [], []
    known = len(assumed)
    cold = form.take_number("cold_temperature_c", required=False)
    if cold is None:
        cold = COLD_C
        assumed.append(_assumed_temperature("cold_temperature_c", cold))
    source = form.take_text("expansion_source", 200) if form.has("expansion_source") else None
    by_id = {material.id: material for material in MATERIALS}
    own_spread = form.take_number("expansion_error_ppm", required=False)
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
            material = Material(
                "own",
                "Own figure",
                own,
                limits.OWN,
                source or "",
                "",
                OWN_SPREAD_PPM,
                limits.MEMORY,
            )
        if own_spread is not None:
            material = Material(*(tuple(material)[:6] + (own_spread, limits.GIVEN)))
        expansion[part] = material.expansion
        spread[part] = material.spread
        origins.append(material.spread_origin)
        row = as_dict(material)
        row["part"] = part
        used.append(row)
        at = form.take_number(part + "_temperature_c", required=False)
        if at is None:
            at = RUNNING_C[part]
            assumed.append(_assumed_temperature(part + "_temperature_c", at))
        hot[part] = at
    guessed = len(assumed) > known
    error, origin = _take_error(form, "temperature_error_k", ERROR_K, assumed)
    cold_error, cold_origin = _take_error(form, "cold_temperature_error_k", COLD_ERROR_K, assumed)
    origins += [origin, origin, cold_origin]
    heating = Heating(expansion, cold, hot, spread, error, cold_error, tuple(origins), guessed)
    return heating, used


def _take_error(
    form: Form, field: str, usual: float, assumed: list[dict[str, object]]
) -> tuple[float, str]:
    given = form.take_number(field, required=False)
    if given is not None:
        return given, limits.GIVEN
    text = "How far off a temperature may be, assumed: none was given."
    assumed.append(assumption(field, usual, limits.MEMORY, text))
    return usual, limits.MEMORY


def _assumed_temperature(field: str, value: float) -> dict[str, object]:
    return assumption(field, value, limits.MEMORY, "A usual temperature, assumed: none was given.")
