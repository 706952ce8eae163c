// The tools, reachable from every view: below the list of sheets, and elsewhere as a panel above
// the bar.

import { around, byId } from "../page/elements.js";

/** Open and close the tools. */
export function wireTools() {
  const panel = byId("tools");
  const button = byId("tools-switch");
  /** @param {boolean} isOpen */
  const show = (isOpen) => {
    const onList = !byId("sheets").hidden;
    panel.hidden = !isOpen && !onList;
    panel.classList.toggle("over", isOpen);
    button.setAttribute("aria-expanded", String(isOpen));
  };
  const isOpen = () => panel.classList.contains("over");
  button.addEventListener("click", () => {
    show(!isOpen());
    if (isOpen()) panel.focus();
  });
  document.addEventListener("click", ({ target }) => {
    if (!isOpen() || around(target, "#tools-switch")) return;
    // The light is stepped through, and a hand-over says beside its button what came of it.
    if (!around(target, "[data-light-switch], [data-hand-over]")) show(false);
  });
  document.addEventListener("keydown", ({ key }) => {
    if (key !== "Escape" || !isOpen()) return;
    show(false);
    button.focus();
  });
  new MutationObserver(() => show(isOpen())).observe(byId("sheets"), {
    attributeFilter: ["hidden"],
  });
  show(false);
}
