"""Whole-day events as an iCalendar text (RFC 5545)."""

MOST_OCTETS = 75


def calendar(name: str, events: list[tuple[str, str, str, str]], made_at: str) -> str:
    """Write a calendar of whole-day events.

    Parameters
    ----------
    name : title of the calendar
    events : of each a unique id, the day as 2026-01-31, its title and its text
    made_at : when it was written, UTC, as 2026-01-31T12:00:00Z

    Returns
    -------
    the text, lines folded at 75 octets and ended by CR LF

    Raises
    ------
    none

    Validity
    --------
    Titles and texts of any letters; control characters are left out.

    Reference
    ---------
    RFC 5545, 3.1 (folding), 3.3.11 (escaping), 3.6.1 (events); NAME by RFC 7986, 5.1.
    """
    stamp = made_at.split(".")[0].replace("-", "").replace(":", "").rstrip("Z") + "Z"
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Midspan//Running in//EN",
        "CALSCALE:GREGORIAN",
        "NAME:" + escaped(name),
    ]
    for uid, day, title, text in events:
        lines += [
            "BEGIN:VEVENT",
            "UID:" + escaped(uid),
            "DTSTAMP:" + stamp,
            "DTSTART;VALUE=DATE:" + day.replace("-", ""),
            "SUMMARY:" + escaped(title),
            "DESCRIPTION:" + escaped(text),
            "TRANSP:TRANSPARENT",
            "END:VEVENT",
        ]
    lines.append("END:VCALENDAR")
    return "".join([folded(line) for line in lines])


def escaped(text: str) -> str:
    """Write a text so that no letter of it is taken for part of the form.

    Parameters
    ----------
    text : any

    Returns
    -------
    the text, backslash, comma, semicolon and line ends written as two letters each

    Raises
    ------
    none

    Validity
    --------
    Control characters other than line ends are left out: the form has none.

    Reference
    ---------
    RFC 5545, 3.3.11.
    """
    text = text.replace("\r\n", "\n").replace("\\", "\\\\")
    text = text.replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n")
    return "".join([letter for letter in text if ord(letter) >= 32 and ord(letter) != 127])


def folded(line: str) -> str:
    """Fold a line that is too long, between letters, and end it.

    Parameters
    ----------
    line : without its end

    Returns
    -------
    one line or several, each of at most 75 octets, those after the first led by a blank

    Raises
    ------
    none

    Validity
    --------
    UTF-8.

    Reference
    ---------
    RFC 5545, 3.1.
    """
    made, room = "", MOST_OCTETS
    for letter in line:
        size = len(letter.encode())
        if size > room:
            made += "\r\n "
            room = MOST_OCTETS - 1
        made += letter
        room -= size
    return made + "\r\n"
