"""Calendar days, counted; the phone's interpreter has no calendar of its own."""

from .fields import Form

_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
FIRST_YEAR, LAST_YEAR = 1900, 2199


def number_of(text: str) -> int | None:
    """Give the number of a day.

    Days are counted from 1 March of year 0, so that the leap day ends a year.

    Parameters
    ----------
    text : the day as 2026-01-31

    Returns
    -------
    whole number [days], one more each day; None for what is no day

    Raises
    ------
    none

    Validity
    --------
    1900 to 2199 of the Gregorian calendar.

    Reference
    ---------
    The Gregorian rule of leap years; the tests compare with Python's own calendar.
    """
    parts = text.split("-")
    if [len(part) for part in parts] != [4, 2, 2] or not all([_is_digits(p) for p in parts]):
        return None
    year, month, day = [int(part) for part in parts]
    if not (FIRST_YEAR <= year <= LAST_YEAR and 1 <= month <= 12):
        return None
    if not 1 <= day <= _DAYS[month - 1] + (1 if month == 2 and _is_leap(year) else 0):
        return None
    if month < 3:
        year, month = year - 1, month + 12
    return 365 * year + year // 4 - year // 100 + year // 400 + (153 * (month - 3) + 2) // 5 + day


def text_of(number: int) -> str:
    """Give the day of a number.

    Parameters
    ----------
    number : as `number_of` gives it [days]

    Returns
    -------
    the day as 2026-01-31

    Raises
    ------
    none

    Validity
    --------
    As `number_of`.

    Reference
    ---------
    As `number_of`, of which it is the inverse.
    """
    year = number * 400 // 146097 + 1
    while _start_of(year) >= number:
        year -= 1
    rest = number - _start_of(year) - 1
    month = (5 * rest + 2) // 153
    day = rest - (153 * month + 2) // 5 + 1
    month += 3
    if month > 12:
        year, month = year + 1, month - 12
    return _padded(year, 4) + "-" + _padded(month, 2) + "-" + _padded(day, 2)


def take_day(form: Form, name: str) -> int | None:
    """Read a day such as 2026-01-31, as its number."""
    text = form.take_text(name, 40)
    found = None if text is None else number_of(text)
    if text is not None and found is None:
        form.refuse("not-a-time", name, text, "a day, such as 2026-01-31", "Check the date.")
    return found


def take_moment(form: Form, name: str) -> str | None:
    """Read a time in UTC such as 2026-01-31T12:00:00Z, as its text."""
    text = form.take_text(name, 40)
    if text is None:
        return None
    day, _, clock = text.partition("T")
    hours, _, fraction = clock[:-1].partition(".")
    parts = hours.split(":")
    good = number_of(day) is not None and clock[-1:] == "Z"
    good = good and [len(part) for part in parts] == [2, 2, 2]
    good = good and all([_is_digits(part) for part in parts]) and _is_digits(fraction or "0")
    if good and int(parts[0]) < 24 and int(parts[1]) < 60 and int(parts[2]) <= 60:
        return text
    need = "a time in UTC, such as 2026-01-31T12:00:00Z"
    form.refuse("not-a-time", name, text, need, "Check the clock.")
    return None


def _start_of(year: int) -> int:
    """Give the number of the day before 1 March of a year."""
    return 365 * year + year // 4 - year // 100 + year // 400


def _is_leap(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def _is_digits(text: str) -> bool:
    # Letters of other scripts count as digits to Python's own question.
    return text != "" and all(["0" <= letter <= "9" for letter in text])


def _padded(number: int, digits: int) -> str:
    text = str(number)
    return "0" * (digits - len(text)) + text
