import { useEffect, useRef, useState } from "preact/hooks";
import { Icon } from "../shell/icon.tsx";
import { canScan, scanTag } from "./scan.ts";
import { text } from "./strings.ts";

/** Asks for the camera only when tapped, and says so plainly where there is none to use. */
export function ScanButton({ onTag }: { onTag(tag: string): void }) {
  const [open, setOpen] = useState(false);
  const [trouble, setTrouble] = useState("");
  return (
    <>
      <button
        type="button"
        class="button"
        onClick={() => {
          setTrouble(canScan() ? "" : text.cannotScan);
          setOpen(canScan());
        }}
      >
        <Icon name="scan" />
        {text.scan}
      </button>
      {trouble && (
        <span class="scan-trouble" role="status">
          {trouble}
        </span>
      )}
      {open && (
        <Scanner
          done={(tag) => {
            setOpen(false);
            if (tag) onTag(tag);
          }}
          failed={() => {
            setOpen(false);
            setTrouble(text.noCamera);
          }}
        />
      )}
    </>
  );
}

interface ScannerProps {
  done(tag: string | null): void;
  failed(): void;
}

function Scanner({ done, failed }: ScannerProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const video = useRef<HTMLVideoElement>(null);
  const told = useRef({ done, failed });
  told.current = { done, failed };
  useEffect(() => {
    const stop = new AbortController();
    dialog.current?.showModal();
    if (video.current) {
      scanTag(video.current, stop.signal).then(
        (tag) => !stop.signal.aborted && told.current.done(tag),
        () => !stop.signal.aborted && told.current.failed(),
      );
    }
    return () => stop.abort();
  }, []);
  return (
    <dialog ref={dialog} class="scanner" aria-label={text.scanning} onCancel={() => done(null)}>
      <p>{text.scanning}</p>
      <video ref={video} muted playsInline />
      <button type="button" class="button button-main" onClick={() => done(null)}>
        {text.scanCancel}
      </button>
    </dialog>
  );
}
