import { useEffect, useRef, useState } from "preact/hooks";
import { Icon } from "../shell/icon.tsx";
import { canScan, scan } from "./scan.ts";
import { text } from "./strings.ts";
import { tagOfCode } from "./tag.ts";

interface Props {
  onTag(tag: string): void;
  /** What to make of a code; a tag, unless another use of codes says how. */
  read?: (code: string) => string | null;
  /** What to do where no code can be read. */
  cannot?: string;
  pointAt?: string;
}

/** Asks for the camera only when tapped, and says so plainly where there is none to use. */
export function ScanButton({ onTag, read = tagOfCode, ...words }: Props) {
  const [open, setOpen] = useState(false);
  const [trouble, setTrouble] = useState("");
  return (
    <>
      <button
        type="button"
        class="button"
        onClick={() => {
          setTrouble(canScan() ? "" : (words.cannot ?? text.cannotScan));
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
          read={read}
          pointAt={words.pointAt ?? text.scanning}
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
  read(code: string): string | null;
  pointAt: string;
  done(tag: string | null): void;
  failed(): void;
}

function Scanner({ read, pointAt, done, failed }: ScannerProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const video = useRef<HTMLVideoElement>(null);
  const told = useRef({ read, done, failed });
  told.current = { read, done, failed };
  useEffect(() => {
    const stop = new AbortController();
    dialog.current?.showModal();
    if (video.current) {
      scan(video.current, told.current.read, stop.signal).then(
        (tag) => !stop.signal.aborted && told.current.done(tag),
        () => !stop.signal.aborted && told.current.failed(),
      );
    }
    return () => stop.abort();
  }, []);
  return (
    <dialog ref={dialog} class="scanner" aria-label={pointAt} onCancel={() => done(null)}>
      <p>{pointAt}</p>
      <video ref={video} muted playsInline />
      <button type="button" class="button button-main" onClick={() => done(null)}>
        {text.scanCancel}
      </button>
    </dialog>
  );
}
