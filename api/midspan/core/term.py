"""A term: symbol, name, unit, admitted range and meaning of one quantity."""

from collections import namedtuple

Term = namedtuple("Term", ("name", "symbol", "unit", "low", "high", "label", "meaning", "whole"))


def asked(
    name: str, symbol: str, unit: str, low: float, high: float, label: str, meaning: str
) -> Term:
    """Make the term of a number that is typed in: it has a range."""
    return Term(name, symbol, unit, low, high, label, meaning, False)


def counted(name: str, symbol: str, low: int, high: int, label: str, meaning: str) -> Term:
    """Make the term of a whole number that is typed in."""
    return Term(name, symbol, "", low, high, label, meaning, True)


def told(name: str, symbol: str, unit: str, label: str, meaning: str) -> Term:
    """Make the term of a number that is only told."""
    return Term(name, symbol, unit, None, None, label, meaning, False)
