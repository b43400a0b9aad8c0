"""Every sample of the document, as it stands there, against a real service: curl and Python."""

import ast
import json
from collections.abc import Iterator
from typing import Any
from uuid import UUID

import pytest

from midspan.store import devices
from midspan.web.examples import ALL, RECORDS
from midspan.web.nouns import NOUNS
from web.document import Document
from web.pairing import paired
from web.samples import Ran, Shops, by_curl, by_python, served
from web.shelf import key

KEEPS_NOTHING = True
RUN = {"Shell": by_curl, "Python": by_python}
CHANGE = ("sync", "import", "pair", "pairing-codes")
TODAY = Document()


def samples() -> Iterator[tuple[str, str, str]]:
    """Give method, path and label of every sample."""
    for method, path, operation in TODAY.operations():
        for sample in operation["x-codeSamples"]:
            yield method, path, sample["label"]


def found(method: str, path: str, label: str) -> dict[str, str]:
    """Give a sample."""
    operation = TODAY.whole["paths"][path][method]
    (sample,) = [one for one in operation["x-codeSamples"] if one["label"] == label]
    return sample


def promised(method: str, path: str, label: str) -> int:
    """Tell the status that the document promises: what is kept for the first time is new."""
    statuses = TODAY.whole["paths"][path][method]["responses"]
    return 201 if "201" in statuses and "change" not in label else 200


@pytest.fixture(scope="module")
def shops(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shops]:
    """A real service with no shop yet but the first."""
    with served(tmp_path_factory.mktemp("service")) as process:
        made = Shops(process, tmp_path_factory.mktemp("samples"))
        yield made
        made.close()


def run(shops: Shops, sample: dict[str, str], source: str = "", **how: Any) -> Ran:
    """Run a sample, or another text in its place, in a new shop if it says without what."""
    env = shops.new(**how) if how else shops.shared()
    return RUN[sample["lang"]](source or sample["source"], env, shops.folder)


@pytest.mark.parametrize(("method", "path", "label"), [*samples()])
def test_every_sample_runs_and_is_answered_as_promised(
    shops: Shops, method: str, path: str, label: str
) -> None:
    sample = found(method, path, label)
    status = promised(method, path, label)
    kind = path.split("/")[3] if path.endswith("/{id}") else ""
    env = shops.shared()
    if method in ("put", "delete") or path.split("/")[-1] in CHANGE:
        env = shops.new(without=kind if (method, status) == ("put", 201) else "")
    source = own(shops, path, sample["source"])
    ran = RUN[sample["lang"]](source, env, shops.folder)
    assert ran.failed == "", ran
    assert ran.status == status, ran
    asked, _, address = ran.asked.partition(" ")
    place = address.removeprefix(shops.service.address).partition("?")[0]
    assert (asked.lower(), len(place.split("/"))) == (method, len(path.split("/")))
    assert place.startswith(path.partition("{")[0])
    told(sample, method, path, status, ran)


def own(shops: Shops, path: str, source: str) -> str:
    """Put in the code, or the device, that only this shop has."""
    if path.endswith("/pair"):
        with shops.store.writing() as session:
            code, _ = devices.open_code(session, shops.shop, "member")
        return source.replace(ALL["pair"]["code"], code)
    if path.endswith("/devices/{id}"):
        device = paired(shops.store, "member", shops.shop)[1]
        return source.replace(ALL["device"]["id"], str(device.id))
    return source


def told(sample: dict[str, str], method: str, path: str, status: int, ran: Ran) -> None:
    """Hold what a sample shows against the document, and look into what is answered one by one."""
    if "limit=" in sample["source"] and sample["lang"] == "Python":
        assert ran.printed.count("\n") >= 1  # items, not pages
        return
    if any(saves in sample["source"] for saves in ("--output", "copyfileobj")):
        assert ran.printed == ""
        return
    if path.endswith("/dyno-table"):
        assert "done" in ran.printed.splitlines()[-1]
        return
    read = json.loads if sample["lang"] == "Shell" else ast.literal_eval
    answer: Any = read(ran.printed)
    responses = TODAY.whole["paths"][path][method]["responses"]
    (media,) = TODAY.resolved(responses[str(status)])["content"].values()
    assert TODAY.faults(answer, media["schema"]) == []
    if path.endswith("/sync"):
        assert [one["status"] for one in answer["results"]] == [200, 200]
    if path.endswith("/import"):
        assert answer["refused"] == answer["conflicts"] == []


def test_every_operation_has_a_sample_of_both_kinds() -> None:
    for method, path, operation in TODAY.operations():
        langs = {sample["lang"] for sample in operation["x-codeSamples"]}
        assert langs == set(RUN), (method, path)
    assert len(list(samples())) > 180


def test_only_what_may_be_changed_has_samples_of_a_change() -> None:
    changes = {path for _, path, label in samples() if "change" in label}
    assert changes == {
        f"/api/v1/{noun.many}/{{id}}" for noun in NOUNS if not noun.model.append_only
    }
    assert "/api/v1/readings/{id}" not in changes


@pytest.mark.parametrize("label", ["curl", "Python"])
def test_a_sample_that_is_refused_ends_badly_and_names_the_field(shops: Shops, label: str) -> None:
    sample = found("post", "/api/v1/calc/slack", label)
    wrong = sample["source"].replace("readings_mm", "readings_inch")
    assert wrong != sample["source"]
    ran = run(shops, sample, wrong)
    assert ran.status == 422
    assert ran.failed
    assert "readings_inch" in ran.printed


@pytest.mark.parametrize("label", ["curl", "Python"])
def test_a_sample_without_a_token_is_told_so(shops: Shops, label: str) -> None:
    sample = found("post", "/api/v1/sync", label)
    env = shops.shared() | {"MIDSPAN_TOKEN": "none"}
    ran = RUN[sample["lang"]](sample["source"], env, shops.folder)
    assert ran.status == 401
    assert "Pair this device" in ran.failed + ran.printed


def test_a_change_made_from_an_old_version_shows_both_sides(shops: Shops) -> None:
    id = UUID(RECORDS["engine"]["id"])

    def meanwhile() -> None:
        shops.keep("engine", id, version=1, note="Sold.")

    for method in ("put", "delete"):
        of_method = [label for one, path, label in samples()
                     if (one, path) == (method, "/api/v1/engines/{id}")][-2:]  # fmt: skip
        curl, python = (found(method, "/api/v1/engines/{id}", label) for label in of_method)
        env = shops.new()
        meanwhile()
        ran = by_curl(curl["source"], env, shops.folder)
        assert ran.status == 412
        assert ran.failed
        assert "Sold." in ran.printed
        ran = by_python(python["source"], shops.new(), shops.folder, meanwhile)
        assert ran.status == 412
        assert "Compare" in ran.failed
        assert "Sold." in ran.printed


@pytest.mark.parametrize("path", ["/api/v1/engines", "/api/v1/devices", "/api/v1/changes"])
def test_a_program_goes_through_every_page(shops: Shops, path: str) -> None:
    sample = found("get", path, "Python")
    env = shops.new()
    for number in (0xA1, 0xA2, 0xA3):
        shops.keep("engine", UUID(key(number)))
        paired(shops.store, "reader", shops.shop)
    whole = by_python(sample["source"], env, shops.folder)
    paged = by_python(sample["source"].replace("limit=100", "limit=1"), env, shops.folder)
    assert "after=" in paged.asked
    assert paged.printed == whole.printed
    assert paged.printed.count("\n") >= 4


def test_a_batch_sent_again_by_curl_is_done_once(shops: Shops) -> None:
    sample = found("post", "/api/v1/sync", "curl")
    env = shops.new()
    first, second = (by_curl(sample["source"], env, shops.folder) for _ in range(2))
    assert first.printed == second.printed != ""


def test_a_program_makes_another_key_for_each_batch(shops: Shops) -> None:
    source = found("post", "/api/v1/sync", "Python")["source"]
    other = source.replace("On the stand.", "On the floor.")
    env = shops.new()
    assert [by_python(one, env, shops.folder).status for one in (source, other)] == [200, 200]


def test_samples_name_no_address_and_no_token() -> None:
    for sample in (found(*one) for one in samples()):
        assert "MIDSPAN_ADDRESS" in sample["source"]
        assert "http:" not in sample["source"]
        assert "/{" not in sample["source"]  # a part of the address that nobody filled in
        assert "midspan_" not in sample["source"]


def test_where_there_is_no_curl_the_checks_have_their_own(
    shops: Shops, monkeypatch: pytest.MonkeyPatch
) -> None:
    empty = shops.folder / "empty"
    empty.mkdir()
    monkeypatch.setattr(shops, "bin", empty)
    monkeypatch.setattr(shops, "untouched", {})
    shops.bring_own_curl()
    slack = found("post", "/api/v1/calc/slack", "curl")
    ran = run(shops, slack)
    assert (ran.status, ran.failed) == (200, "")
    assert json.loads(ran.printed)["calc"] == "slack"
    ran = run(shops, slack, slack["source"].replace("readings_mm", "readings_inch"))
    assert (ran.status, ran.failed[:3]) == (422, "22:")
    ran = run(shops, found("put", "/api/v1/readings/{id}", "curl"), without="readings")
    assert (ran.status, ran.failed) == (201, "")
    (shops.folder / "label.svg").unlink(missing_ok=True)
    assert run(shops, found("get", "/api/v1/labels/{tag}.svg", "curl")).status == 200
    assert (shops.folder / "label.svg").read_text().startswith("<svg")
    ran = run(shops, slack, "curl --nonsense there")
    assert "does not know --nonsense" in ran.failed
