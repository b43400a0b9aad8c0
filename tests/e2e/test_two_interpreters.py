"""The phone's interpreter gives what the service's gives, over the whole vector set.

The phone's side is the worker of the production build, in a real browser, under the service's
own content security policy.
"""

import json
import math
import re
import urllib.request
from collections.abc import Iterator
from typing import Any

import pytest

from e2e.browser import Phone
from e2e.service import Service
from midspan.core import dispatch
from vectors import vectors

# Numbers agree to 1e-12 of themselves. Those that are differences of lengths can come out near
# nothing, where that means less than rounding: they agree to 1e-12 mm (or degree, or per cent).
TOLERANCE = 1e-12

ASK_THE_WORKER = """async ([url, questions]) => {
  const worker = new Worker(url, { type: "module" });
  const answers = new Array(questions.length);
  await new Promise((resolve, reject) => {
    let open = questions.length;
    worker.onerror = (event) => reject(new Error(event.message));
    worker.onmessage = ({ data }) => {
      if (data.kind === "broken" || data.kind === "failed") reject(new Error(data.why));
      if (data.kind !== "answer") return;
      answers[data.id] = data.text;
      open -= 1;
      if (open === 0) resolve();
    };
    questions.forEach(([name, payload], id) => worker.postMessage({ id, name, payload }));
  });
  worker.terminate();
  return answers;
}"""


def worker_address(service: Service) -> str:
    """The core's worker, as the service worker's list of files names it."""
    with urllib.request.urlopen(service.url + "/sw.js") as answer:  # noqa: S310
        names = re.findall(r"assets/worker-[\w-]+\.js", answer.read().decode())
    assert len(set(names)) == 1, names
    return "/" + names[0]


def differences(here: Any, there: Any, path: str = "") -> Iterator[str]:
    """Every place where two answers differ."""
    if is_number(here) and is_number(there):
        if not math.isclose(here, there, rel_tol=TOLERANCE, abs_tol=TOLERANCE):
            yield f"{path}: {here!r} and {there!r}"
    elif isinstance(here, dict) and isinstance(there, dict) and here.keys() == there.keys():
        for name in here:
            yield from differences(here[name], there[name], f"{path}.{name}")
    elif isinstance(here, list) and isinstance(there, list) and len(here) == len(there):
        for place, (one, other) in enumerate(zip(here, there, strict=True)):
            yield from differences(one, other, f"{path}[{place}]")
    elif here != there or type(here) is not type(there):
        yield f"{path}: {here!r} and {there!r}"


def is_number(value: Any) -> bool:
    """Whether it is a JSON number."""
    return isinstance(value, (int, float)) and not isinstance(value, bool)


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
    told = page.evaluate(ASK_THE_WORKER, [worker_address(service), questions])
    assert len(told) == len(questions) > 500
    wrong = []
    for (name, text), there in zip(questions, told, strict=True):
        for place in differences(json.loads(dispatch(name, text)), json.loads(there)):
            wrong.append(f"{name} {text[:200]}\n    {place}")
    assert not wrong, f"{len(wrong)} differences, such as:\n" + "\n".join(wrong[:10])
