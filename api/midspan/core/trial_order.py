"""The order in which to test rockers and cam settings with the least work between the tests."""

from collections import namedtuple

# Up to so many tests every order is weighed; the work grows as 2^n n^2.
EXACT = 10


class Costs(namedtuple("Costs", ("swap", "move"))):
    """What a change costs: another rocker, another cam setting [min]."""

    __slots__ = ()


def change(costs: Costs, one: tuple[int, int], other: tuple[int, int]) -> float:
    """Work from one test to another.

    Parameters
    ----------
    costs : of each kind of change [min]
    one, other : (rocker, setting) as places in their lists

    Returns
    -------
    work [min]

    Raises
    ------
    none

    Validity
    --------
    Two changes at once cost the sum of both.

    Reference
    ---------
    none
    """
    swap = costs.swap if one[0] != other[0] else 0.0
    move = costs.move if one[1] != other[1] else 0.0
    return float(swap + move)


def total(costs: Costs, order: list[tuple[int, int]]) -> float:
    """Work of a whole order.

    Parameters
    ----------
    costs : of each kind of change [min]
    order : the tests

    Returns
    -------
    work [min]

    Raises
    ------
    none

    Validity
    --------
    As `change`.

    Reference
    ---------
    none
    """
    work = 0.0
    for i in range(len(order) - 1):
        work += change(costs, order[i], order[i + 1])
    return work


def least(costs: Costs, cells: list[tuple[int, int]], back: bool) -> float:
    """Work that no order can do without.

    The costlier kind is changed once for each of its other values, once more to come back; every
    other step costs at least the cheaper kind.

    Parameters
    ----------
    costs : of each kind of change [min]
    cells : the tests, the baseline first, each once
    back : whether the baseline comes again at the end

    Returns
    -------
    work [min]

    Raises
    ------
    none

    Validity
    --------
    A bound, not always reached.

    Reference
    ---------
    none
    """
    dear = 0 if costs.swap >= costs.move else 1
    values = {cell[dear] for cell in cells}
    changes = len(values) - 1 + (1 if back and len(values) > 1 else 0)
    steps = len(cells) - 1 + (1 if back and len(cells) > 1 else 0)
    high, low = max(costs.swap, costs.move), min(costs.swap, costs.move)
    return float(changes * high + max(0, steps - changes) * low)


def best_order(
    costs: Costs, cells: list[tuple[int, int]], back: bool
) -> tuple[list[tuple[int, int]], bool]:
    """Order of least work that starts at the first test, and whether it is proven the least.

    Parameters
    ----------
    costs : of each kind of change [min]
    cells : the tests, the baseline first, each once
    back : whether the baseline comes again at the end, so that drift shows

    Returns
    -------
    the order, and whether no other needs less work: all were weighed, or it needs no more than
    `least`; the work by `total` [min]

    Raises
    ------
    none

    Validity
    --------
    Beyond EXACT tests an order row by row, which is the least for a full matrix.

    Reference
    ---------
    Held and Karp, A dynamic programming approach to sequencing problems, J. SIAM 10 (1962).
    """
    bound = least(costs, cells, back)
    rows = by_rows(costs, cells, back)
    if total(costs, rows) <= bound * (1 + 1e-12):
        return rows, True
    if len(cells) > EXACT:
        return rows, False
    return _weighed(costs, cells, back), True


def by_rows(costs: Costs, cells: list[tuple[int, int]], back: bool) -> list[tuple[int, int]]:
    """Order that finishes all tests of one value of the costlier kind before the next.

    Parameters
    ----------
    costs : of each kind of change [min]
    cells : the tests, the baseline first
    back : whether the baseline comes again at the end

    Returns
    -------
    the order; its work by `total` [min]

    Raises
    ------
    none

    Validity
    --------
    As `best_order`.

    Reference
    ---------
    none
    """
    dear = 0 if costs.swap >= costs.move else 1
    start = cells[0]
    groups: list[list[tuple[int, int]]] = []
    for cell in cells:
        for group in groups:
            if group[0][dear] == cell[dear]:
                group.append(cell)
                break
        else:
            groups.append([cell])
    order: list[tuple[int, int]] = []
    at = start
    for i, group in enumerate(groups):
        final = i == len(groups) - 1
        shared = {c[1 - dear] for c in groups[i + 1]} if not final else set()
        first = [c for c in group if c[1 - dear] == at[1 - dear]] or group
        rest = [c for c in group if c != first[0]]
        if final and back:
            leave = [c for c in rest if c[1 - dear] == start[1 - dear]]
        else:
            leave = [c for c in rest if c[1 - dear] in shared]
            if back and i == len(groups) - 2:
                # The last row is to end where the baseline is, so it must not start there.
                leave = [c for c in leave if c[1 - dear] != start[1 - dear]] or leave
        last = leave[:1]
        order += [first[0]] + [c for c in rest if c not in last] + last
        at = order[-1]
    return order + [start] if back and len(cells) > 1 else order


def _weighed(costs: Costs, cells: list[tuple[int, int]], back: bool) -> list[tuple[int, int]]:
    """Weigh every order, by sets of tests done and the one done last."""
    count = len(cells)
    work = [[change(costs, a, b) for b in cells] for a in cells]
    reached: list[dict[int, tuple[float, int]]] = [{} for _ in range(1 << count)]
    reached[1][0] = (0.0, -1)
    for done in range(1, 1 << count):
        for last, (spent, _) in reached[done].items():
            for to in range(1, count):
                if not done >> to & 1:
                    more = spent + work[last][to]
                    known = reached[done | 1 << to].get(to)
                    if known is None or (more, last) < known:
                        reached[done | 1 << to][to] = (more, last)
    done = (1 << count) - 1
    ends = []
    for last, (spent, _) in reached[done].items():
        ends.append((spent + (work[last][0] if back else 0.0), last))
    last = min(ends)[1]
    order = []
    while last >= 0:
        order.append(cells[last])
        before = reached[done][last][1]
        done, last = done & ~(1 << last), before
    order.reverse()
    return order + [cells[0]] if back and count > 1 else order
