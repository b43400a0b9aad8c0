import type { RefObject } from "preact";
import type { Inputs } from "preact/hooks";
import { useEffect, useRef } from "preact/hooks";
import { breathe } from "../shell/idle.ts";
import { text } from "./strings.ts";

/** Draws into a box; gives what removes the drawing. */
type Draw = (box: HTMLElement) => () => void;

/**
 * A box for a picture whose drawing part is loaded when it is first needed. Without that part the
 * box says so: the figures around it stand by themselves.
 */
export function useDrawn(
  load: (() => Promise<Draw>) | null,
  inputs: Inputs,
): RefObject<HTMLDivElement | null> {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    let remove = () => {};
    let left = false;
    load?.().then(
      async (draw) => {
        await breathe(); // the part may have been run just now, in this very task
        if (!left && box.current) remove = draw(box.current);
      },
      () => {
        if (!left && box.current) box.current.textContent = text.cannotDraw;
      },
    );
    return () => {
      left = true;
      remove();
    };
  }, inputs);
  return box;
}
