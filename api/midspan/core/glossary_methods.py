"""Terms of published values held against ours; each in the unit named beside it."""

from .term import Term, told

TERMS: tuple[Term, ...] = (
    told("published_value", "", "", "Published", "As the source prints it."),
    told("computed_value", "", "", "Ours", "What the core gives for the same inputs."),
    told("difference_found", "", "", "Difference", "Ours less published."),
    told(
        "difference_allowed", "", "", "Allowed",
        "Half of the last digit printed, or more where the source gives reason for it.",
    ),
)  # fmt: skip
