"""A printed label held before a camera: it decodes; where it cannot be read, that is said.

This browser may lack the interface for reading codes (Chromium has it on Android and macOS, not on
Linux). Then the screen must say so and typing must do. The camera's way is run all the same: a real
getUserMedia, with a film of the printed label for a camera, and zxing-cpp reading the pictures in
place of the phone's own reader.
"""

import re
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
import zxingcpp
from playwright.sync_api import Page, Playwright, expect

from e2e.browser import Phone
from e2e.flow import add_part, enter_drive, go, open_app
from e2e.service import Service

TAG = "C-07"
WIDTH, HEIGHT = 640, 480
# Gives each picture of the camera to the reader outside, as grey values.
READER = """() => {
  globalThis.BarcodeDetector = class {
    async detect(video) {
      const canvas = new OffscreenCanvas(video.videoWidth, video.videoHeight);
      const pen = canvas.getContext("2d");
      pen.drawImage(video, 0, 0);
      const { data, width, height } = pen.getImageData(0, 0, canvas.width, canvas.height);
      const grey = Array.from({ length: width * height }, (_, i) => data[4 * i + 1]);
      return (await readCodes(grey, width, height)).map((rawValue) => ({ rawValue }));
    }
  };
}"""


def drawn(page: Page, within: str = ".label") -> np.ndarray:
    """The code on the label as the screen drew it, dark true, quiet zone and all."""
    code = page.locator(f"{within} svg")
    left, top, width, height = map(int, str(code.get_attribute("viewBox")).split())
    path = str(code.locator("path").get_attribute("d"))
    dark = np.zeros((height, width), dtype=bool)
    for x, y in re.findall(r"M(\d+) (\d+)h1v1h-1z", path):
        dark[int(y) - top, int(x) - left] = True
    assert dark.any()
    return dark


def film(code: np.ndarray, path: Path) -> None:
    """A few pictures of the label lying on a grey bench, a little blurred, as YUV4MPEG2."""
    across = np.kron(~code, np.ones((9, 9))) * 215 + 20
    picture = np.full((HEIGHT, WIDTH), 120.0)
    top, left = (HEIGHT - across.shape[0]) // 2, (WIDTH - across.shape[1]) // 2
    picture[top : top + across.shape[0], left : left + across.shape[1]] = across
    picture = (picture + np.roll(picture, 1, 0) + np.roll(picture, 1, 1)) / 3
    grain = np.random.default_rng(1).normal(0, 4, picture.shape)
    light = np.clip(picture + grain, 16, 235).astype(np.uint8).tobytes()
    colour = bytes([128]) * (WIDTH * HEIGHT // 2)
    frame = b"FRAME\n" + light + colour
    path.write_bytes(f"YUV4MPEG2 W{WIDTH} H{HEIGHT} F10:1 Ip A1:1 C420\n".encode() + frame * 10)


def label_of(page: Page) -> np.ndarray:
    """Put a chain on the shelf and give the code on its label."""
    enter_drive(page)
    add_part(page, "chain", "fresh", TAG)
    return drawn(page)


def read(code: np.ndarray) -> str:
    image = (np.kron(~code, np.ones((4, 4))) * 255).astype(np.uint8)
    (found,) = zxingcpp.read_barcodes(image)
    return str(found.text)


@pytest.fixture
def with_camera(tmp_path: Path, playwright: Playwright, chromium: str) -> Iterator[Phone]:
    """A browser whose camera shows the film of a label."""
    one = Phone(playwright, chromium, tmp_path / "camera-profile")
    one.more = (
        "--use-fake-ui-for-media-stream",
        "--use-fake-device-for-media-stream",
        f"--use-file-for-fake-video-capture={tmp_path / 'label.y4m'}",
    )
    try:
        yield one
        assert one.complaints == []
    finally:
        one.kill()


def test_where_the_browser_cannot_read_codes_it_says_so_and_typing_does(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    code = label_of(page)
    assert read(code) == f"midspan:tag:{TAG}"
    if page.evaluate("'BarcodeDetector' in globalThis"):
        pytest.skip("this browser reads codes itself")
    go(page, "shelf")
    page.get_by_role("button", name="Scan").click()
    expect(page.get_by_text("This browser cannot read codes. Type the tag.")).to_be_visible()
    page.get_by_label("Find by tag or name", exact=True).fill(TAG.lower())
    expect(page.locator(".shelf-row", has_text=TAG)).to_be_visible()


def test_a_label_before_the_camera_is_read(
    service: Service, phone: Phone, with_camera: Phone, tmp_path: Path
) -> None:
    code = label_of(open_app(phone, service))
    film(code, tmp_path / "label.y4m")
    with_camera.start()
    page = with_camera.page()
    seen: list[str] = []

    def codes(grey: list[int], width: int, height: int) -> list[str]:
        image = np.array(grey, dtype=np.uint8).reshape(int(height), int(width))
        found = [one.text for one in zxingcpp.read_barcodes(image)]
        seen.extend(found)
        return found

    page.expose_function("readCodes", codes)
    page.goto(service.url)
    page.evaluate(READER)
    enter_drive(page)
    go(page, "shelf")
    page.get_by_role("link", name="Add a chain").click()
    page.get_by_role("button", name="Scan").click()
    expect(page.get_by_label("Tag", exact=True)).to_have_value(TAG)
    assert seen[0] == f"midspan:tag:{TAG}"
    # The camera is let go once the code is read.
    expect(page.locator("dialog.scanner")).to_have_count(0)
