/** Reading a code with the camera, where the browser can. */

interface Detector {
  detect(from: HTMLVideoElement): Promise<{ rawValue: string }[]>;
}

interface WithDetector {
  BarcodeDetector?: new (options?: { formats: string[] }) => Detector;
}

const LOOK_EVERY_MS = 200;

export function canScan(): boolean {
  const { BarcodeDetector } = globalThis as WithDetector;
  return BarcodeDetector !== undefined && navigator.mediaDevices?.getUserMedia !== undefined;
}

/**
 * Shows the camera's picture until it holds a code that `read` can make something of, and gives
 * that; null once the signal to stop has come. Rejects where the camera is refused or cannot be had.
 */
export async function scan(
  video: HTMLVideoElement,
  read: (code: string) => string | null,
  stop: AbortSignal,
): Promise<string | null> {
  const { BarcodeDetector } = globalThis as WithDetector;
  if (!BarcodeDetector) throw new Error("no detector");
  const detector = new BarcodeDetector({ formats: ["qr_code"] });
  const camera = await navigator.mediaDevices.getUserMedia({
    video: { facingMode: "environment" },
  });
  try {
    video.srcObject = camera;
    await video.play();
    while (!stop.aborted) {
      const [code] = await detector.detect(video);
      const found = code && read(code.rawValue);
      if (found) return found;
      await new Promise((done) => setTimeout(done, LOOK_EVERY_MS));
    }
    return null;
  } finally {
    for (const track of camera.getTracks()) track.stop();
    video.srcObject = null;
  }
}
