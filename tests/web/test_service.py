"""The real service, as a process: it says where it is and outlives a power cut."""

import socket

import pytest

from midspan.web.examples import WRITES

KEY = "01923f5e-8c00-7000-8000-000000000001"


def test_a_reading_survives_a_power_cut_and_is_explained_after(start) -> None:
    process = start().wait_until_it_says_where().pair()
    assert process.ask("GET", "/readyz")[0] == 200
    assert process.ask("PUT", f"/api/v1/engines/{KEY}", WRITES["engine"])[0] == 201
    status, kept = process.ask("PUT", f"/api/v1/readings/{KEY}", WRITES["reading"])
    assert status == 201
    process.kill()

    token, process = process.token, start().wait_until_it_says_where()
    process.token = token
    assert process.ask("GET", f"/api/v1/readings/{KEY}") == (200, kept)
    said = process.ask("GET", f"/api/v1/readings/{KEY}/explanation")[1]
    assert said["stored"] == kept
    assert said["same_verdict"] is True
    assert process.ask("PUT", f"/api/v1/readings/{KEY}", WRITES["reading"])[0] == 200


def test_it_listens_on_this_machine_only_and_stops_in_good_order(start) -> None:
    process = start().wait_until_it_says_where()
    port = int(process.address.rsplit(":", 1)[1])
    with socket.socket() as probe, pytest.raises(OSError):  # noqa: PT011
        # 127.0.0.2 is this machine too; a service bound to every address would answer.
        probe.connect(("127.0.0.2", port))
    assert process.stop() == 0


def test_a_taken_port_is_told_at_once(start) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        process = start(port=port)
        process.running.wait(timeout=60)
        said = process.kill()
    assert process.running.returncode == 1
    assert f"Port {port}" in said
    assert "--port" in said
    assert "Traceback" not in said


def test_two_started_at_once_on_an_empty_folder_both_serve(start) -> None:
    both = [start(), start()]
    for process in both:
        process.wait_until_it_says_where()
        assert process.ask("GET", "/readyz")[0] == 200
    both[1].token = both[0].pair().token
    both[0].ask("PUT", f"/api/v1/engines/{KEY}", WRITES["engine"])
    assert both[1].ask("GET", f"/api/v1/engines/{KEY}")[1]["name"] == WRITES["engine"]["name"]
