/** Below this share of the usual height, an on-screen keypad must be open. */
const OPEN_SHARE = 0.75;

/** Marks the page while the on-screen keypad is open, so that it gives its room to the number. */
export function followKeypad(): void {
  const view = window.visualViewport;
  if (!view) return;
  let tallest = view.height;
  let width = view.width;
  const look = () => {
    if (view.width !== width) {
      width = view.width;
      tallest = 0;
    }
    tallest = Math.max(tallest, view.height);
    const typing = document.activeElement instanceof HTMLInputElement;
    const open = typing && view.height < OPEN_SHARE * tallest;
    document.documentElement.toggleAttribute("data-keypad", open);
  };
  view.addEventListener("resize", look);
  document.addEventListener("focusin", look);
  document.addEventListener("focusout", () => setTimeout(look));
}
