"""Symbol, name, unit and meaning of every quantity: the one door to them.

Field names, labels, descriptions and the admitted range of every input come from here.
A field name carries its unit as its ending; a test compares.
"""

from . import (
    glossary_compare,
    glossary_drive,
    glossary_dyno,
    glossary_forecast,
    glossary_gain,
    glossary_heat,
    glossary_lift,
    glossary_methods,
    glossary_plan,
    glossary_reading,
    glossary_shelf,
    glossary_timing,
    glossary_torsion,
)
from .term import Term

# To add a subject: its module, and its name here.
SUBJECTS = (
    glossary_drive,
    glossary_reading,
    glossary_heat,
    glossary_shelf,
    glossary_timing,
    glossary_plan,
    glossary_forecast,
    glossary_lift,
    glossary_dyno,
    glossary_compare,
    glossary_gain,
    glossary_torsion,
    glossary_methods,
)
TERMS: dict[str, Term] = {}
for _subject in SUBJECTS:
    for _term in _subject.TERMS:
        TERMS[_term.name] = _term


def label(name: str) -> str:
    """Give the screen's name of a field, or the field's own name if it has none."""
    return str(TERMS[name].label) if name in TERMS else name


def need(name: str) -> str:
    """Say in words what a numeric field accepts, from its term."""
    term = TERMS[name]
    kind = "a whole number" if term.whole else "a number"
    unit = " " + term.unit if term.unit else ""
    return kind + " from " + str(term.low) + " to " + str(term.high) + unit
