"""What a mechanic does on the benches for lift, rockers and clearance."""

from typing import Any

from playwright.sync_api import Page, expect

from core.lobes import polynomial
from e2e.flow import go

HALF = 130.0


def table(centre: int, sign: str = ";") -> str:
    """A lift table as it comes out of a spreadsheet, its wheel going round through 360."""
    lift = polynomial(8.0, HALF)
    rows = [(a % 360, float(lift(a - centre))) for a in range(centre - 160, centre + 161, 5)]
    return f"angle{sign}lift\n" + "\n".join(f"{a}{sign}{x:.2f}" for a, x in rows)


def wait_for(page: Page, outcome: str) -> None:
    """Wait for this outcome."""
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", outcome)


def lobe(text: str) -> dict[str, Any]:
    """The question that the bench asks of a table."""
    return {"text": text, "lift_unit": "mm", "angle_of": "crank", "wheel": "to-360",
            "lift_of": "lobe", "zero": "tdc"}  # fmt: skip


def paste(page: Page, which: str, text: str) -> None:
    """Put a table into the lift bench."""
    go(page, "lift")
    page.get_by_role("button", name=f"{which} lobe").click()
    page.get_by_label("Unit of the lifts in the table").select_option("mm")
    page.get_by_label("Table: angle and lift, a row a line").fill(text)


def enter_clearance(page: Page, travel: str) -> None:
    """Enter the crank and how far the seated intake valve goes to the piston."""
    go(page, "clearance")
    page.get_by_role("button", name="Intake", exact=True).click()
    page.get_by_label("Crank angle and valve travel, a row a line").fill(travel)
    page.get_by_label("Unit of the travels").select_option("mm")
    page.get_by_label("Stroke", exact=True).fill("88.4 mm")
    page.get_by_label("Rod length", exact=True).fill("144.8 mm")
