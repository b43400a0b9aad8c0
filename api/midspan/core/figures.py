"""Numbers in sentences, rounded the same way by every interpreter.

The formatting built into Python rounds ties by each interpreter's own rule, and the sentences of
phone and service must not differ. Only sentences are rounded; no result is.
"""

HUGE, TINY = 1e9, 1e-6


def fixed(value: float, decimals: int) -> str:
    """Write a number with so many decimals, ties away from zero.

    Parameters
    ----------
    value : finite, below 1e9 in size [any unit]
    decimals : 0 or more

    Returns
    -------
    text such as "-0.50"

    Raises
    ------
    none

    Validity
    --------
    For sentences; the decimal digits of a binary fraction are off by its own rounding.

    Reference
    ---------
    none
    """
    scale = 10**decimals
    whole = int(abs(value) * scale + 0.5)
    text = str(whole // scale)
    if decimals:
        rest = str(whole % scale)
        text += "." + "0" * (decimals - len(rest)) + rest
    return "-" + text if value < 0 and whole else text


def short(value: float, digits: int) -> str:
    """Write a number with so many significant digits, without zeros at its end.

    Parameters
    ----------
    value : finite [any unit]
    digits : significant digits, 1 or more

    Returns
    -------
    text such as "0.122"; a size that nobody measures is said in words

    Raises
    ------
    none

    Validity
    --------
    As `fixed`.

    Reference
    ---------
    none
    """
    size = abs(value)
    if size >= HUGE:
        return "a number beyond a thousand million"
    if 0 < size < TINY:
        return "a number within a millionth of zero"
    decimals = digits - 1
    while size >= 10 and decimals > 0:
        size /= 10
        decimals -= 1
    while 0 < size < 1:
        size *= 10
        decimals += 1
    text = fixed(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text
