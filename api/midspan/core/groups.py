"""Which chains and gear sets the readings tie together, and which float."""

from .observation import Observation


class Groups:
    """Chains and gear sets joined by trial fits.

    A group is anchored when some chain in it was measured on the bench, or some gear set by
    itself: then each of its offsets is known alone. Otherwise chains could all be longer and gear
    sets all larger by the same, and no trial would show it: only sums within it are known.

    Parameters
    ----------
    chains, gears : how many of each
    observations : readings, as `observation.Observation`
    """

    def __init__(self, chains: int, gears: int, observations: list[Observation]) -> None:
        """Join what was tried together; note what was measured alone."""
        self.chains = chains
        self.parent = list(range(chains + gears))
        self.touched = [False] * (chains + gears)
        alone = []
        for seen in observations:
            nodes = []
            if seen.chain is not None:
                nodes.append(seen.chain)
            if seen.gears is not None:
                nodes.append(chains + seen.gears)
            for node in nodes:
                self.touched[node] = True
            if len(nodes) == 2:
                self.parent[self.root(nodes[0])] = self.root(nodes[1])
            else:
                alone.extend(nodes)
        self.roots = [self.root(node) for node in range(chains + gears)]
        self.anchored = {self.roots[node] for node in alone}

    def root(self, node: int) -> int:
        """Give the node that stands for the group of this one."""
        while self.parent[node] != node:
            node = self.parent[node]
        return node

    def determined(self, chain: int, gears: int) -> bool:
        """Tell whether chain + gear set is determined: both known alone, or in one group."""
        node = self.chains + gears
        if not (self.touched[chain] and self.touched[node]):
            return False
        one, other = self.roots[chain], self.roots[node]
        return one == other or (one in self.anchored and other in self.anchored)

    def held_gears(self) -> list[int]:
        """Give the gear sets whose offset must be held: untouched, or the first of a floater."""
        held, done = [], set()
        for j in range(len(self.parent) - self.chains):
            node = self.chains + j
            at = self.roots[node]
            if not self.touched[node]:
                held.append(j)
            elif at not in self.anchored and at not in done:
                held.append(j)
                done.add(at)
        return held

    def names(self, chain_ids: list[str], gear_ids: list[str]) -> list[dict[str, object]]:
        """Give the groups by the user's own names, for saying which were never tried together."""
        found: dict[int, dict[str, list[str]]] = {}
        order = []  # MicroPython's dict keeps none
        labels = [("chains", i) for i in chain_ids] + [("gear_sets", j) for j in gear_ids]
        for node in range(len(labels)):
            if self.touched[node]:
                at = self.roots[node]
                if at not in found:
                    order.append(at)
                group = found.setdefault(at, {"chains": [], "gear_sets": []})
                group[labels[node][0]].append(labels[node][1])
        rows = []
        for at in order:
            group = found[at]
            rows.append(
                {
                    "chains": group["chains"],
                    "gear_sets": group["gear_sets"],
                    "anchored": at in self.anchored,
                }
            )
        return rows
