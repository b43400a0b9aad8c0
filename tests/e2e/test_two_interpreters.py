"""The phone's interpreter gives what the service's gives, over the whole vector set.

The phone's side is the worker of the production build's own page, in a real browser, under the
service's own content security policy.
"""

import json
from typing import Any

import pytest

from agreement import differences
from e2e.browser import Phone
from e2e.service import Service
from midspan.core import dispatch
from vectors import vectors

# Minutes of work for the phone's interpreter, which is some ten times slower.
pytestmark = pytest.mark.timeout(1200)
ASK_THE_PAGE = """async (questions) => {
  const ask = ([name, payload]) => window.midspan.dispatch(name, payload);
  return await Promise.all(questions.map(ask));
}"""


@pytest.mark.parametrize(
    ("here", "there"),
    [(1.0, 1.0 + 1e-11), ("a", "b"), ([1], [1, 2]), ({"a": 1}, {"b": 1}), (True, 1), (None, 0.0)],
)
def test_the_comparison_can_fail(here: Any, there: Any) -> None:
    assert list(differences({"x": [here]}, {"x": [there]}))


def test_the_vector_set_covers_calculations_refusals_and_verdicts() -> None:
    answers = [(name, json.loads(dispatch(name, text))) for name, text in vectors()]
    done = [(name, a["result"]) for name, a in answers if a["ok"]]
    assert {name for name, _ in done} >= {"drive", "elongation", "slack", "crank-rock", "limits"}
    outcomes = {result["verdict"]["outcome"] for _, result in done if "verdict" in result}
    slack = {"too-tight", "tight", "loose", "too-loose"}
    assert outcomes >= slack | {"within", "below", "beyond", "too-close", "limits-disagree"}
    codes = {problem["code"] for _, a in answers if not a["ok"] for problem in a["problems"]}
    asked = "missing unknown-field not-a-number not-finite not-whole out-of-range not-a-choice "
    asked += "not-a-list empty-list not-an-object too-many conflict gears-collide not-half-speed "
    asked += "chain-too-short not-json unknown-calc"
    assert codes >= set(asked.split())


def test_browser_and_server_agree_over_the_vector_set(service: Service, phone: Phone) -> None:
    questions = vectors()
    page = phone.page()
    page.goto(service.url)
    told = page.evaluate(ASK_THE_PAGE, questions)
    assert len(told) == len(questions) > 500
    wrong = []
    for (name, text), there in zip(questions, told, strict=True):
        for place in differences(json.loads(dispatch(name, text)), json.loads(there)):
            wrong.append(f"{name} {text[:200]}\n    {place}")
    assert not wrong, f"{len(wrong)} differences, such as:\n" + "\n".join(wrong[:10])
