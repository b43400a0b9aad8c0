"""Was the gain shown? Dyno runs of several settings, compared with their scatter and drift."""

from . import left_out
from .air import VAPOUR_SOURCE
from .betas import factor_of_t
from .compare_asked import QUANTITIES, Asked, Run, take_compare
from .compare_said import ALPHA, judge
from .correction_standards import BY_ID, OBSERVED
from .design_words import NAMES, Design, order_text, recognise
from .drift_fit import Difference, Fit, Pull, difference, fit
from .fields import Form
from .figures import fixed, short
from .further import detectable, further_pulls
from .spread_interval import spread_interval
from .version import VERSION
from .warnings import dyno_cautions, warning

assert VAPOUR_SOURCE


def calculate(payload: object) -> dict[str, object]:
    """Compare the settings of a dyno session by one figure of each run.

    Parameters
    ----------
    payload : standard, quantity, band_lower_rpm and band_upper_rpm for a band, reference, drift,
        runs (each with setting, place, conditions, figures_are, peaks, curve, left_out)

    Returns
    -------
    dict: design, drift, scatter, settings, runs, differences with verdict, left_out

    Raises
    ------
    Refused : input that cannot be used; figures of mixed standards without their conditions

    Validity
    --------
    Runs scatter normally and alike about a drift that is straight over their places.

    Reference
    ---------
    See `drift_fit` and `betas`.
    """
    form = Form(payload)
    asked = take_compare(form)
    form.close()
    form.finish()
    pulls = [Pull(run.setting, run.place, run.value) for run in asked.runs if not run.left_out]
    return {}
