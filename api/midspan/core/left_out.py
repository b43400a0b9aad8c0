"""Runs left out: listed, counted, and whether only the best were kept."""

from .compare_asked import Run

# Why the best of several runs proves nothing.
BEST_OF = (
    "Only the best runs were kept. The best of several is larger than their mean by chance alone, "
    "the more so the more were run, so best against best shows how often each was run as much as "
    "what was changed."
)


def only_best(runs: list[Run]) -> list[str]:
    """Settings of which at least as many runs were left out as kept, all of them lower.

    Runs before the first one that is kept are warm-up, as long as two are kept after them.

    Parameters
    ----------
    runs : every run, by place
    """
    kept_from = min([run.place for run in runs if not run.left_out])
    found = []
    for setting in sorted({run.setting for run in runs}):
        kept = [run for run in runs if run.setting == setting and not run.left_out]
        out = [
            run for run in runs
            if run.setting == setting and run.left_out and run.value is not None
            and (run.place > kept_from or len(kept) < 2)
        ]  # fmt: skip
        if not kept or len(out) < len(kept) or not out:
            continue
        if max([run.value for run in out]) <= min([run.value for run in kept]):
            found.append(setting)
    return found


def listed(runs: list[Run]) -> list[dict[str, object]]:
    """List the runs left out with their reasons."""
    return [
        {"place": run.place, "setting": run.setting, "reason": run.left_out, "value": run.value}
        for run in runs
        if run.left_out
    ]


def told(runs: list[Run]) -> str:
    """Say how many runs were left out, by setting."""
    counts: dict[str, int] = {}
    for run in runs:
        if run.left_out:
            counts[run.setting] = counts.get(run.setting, 0) + 1
    if not counts:
        return "No run was left out."
    each = [str(counts[key]) + " of " + key for key in sorted(counts)]
    return "Left out: " + ", ".join(each) + "; " + str(len(runs)) + " were made in all."
