// Day, night or red light, kept on this device. Any button with data-light-switch steps through
// them.

(() => {
  const LIGHTS = ["day", "night", "red"];
  const KEY = "light";

  /** @returns {string} */
  function keptLight() {
    try {
      const light = localStorage.getItem(KEY) ?? "";
      return LIGHTS.includes(light) ? light : "day";
    } catch {
      return "day"; // storage may be forbidden; then the light lasts as long as the page
    }
  }

  /** @param {string} light */
  function keep(light) {
    try {
      localStorage.setItem(KEY, light);
    } catch {
      // See keptLight.
    }
  }

  /** @param {string} light */
  function show(light) {
    document.documentElement.dataset.light = light;
    for (const button of document.querySelectorAll("[data-light-switch]")) {
      button.textContent = `light: ${light}`;
    }
  }

  function step() {
    const current = LIGHTS.indexOf(document.documentElement.dataset.light ?? "");
    const light = LIGHTS[(current + 1) % LIGHTS.length];
    keep(light);
    show(light);
  }

  // Run in the head, before anything is painted: a bridge at night sees no flash of day.
  show(keptLight());
  document.addEventListener("DOMContentLoaded", () => show(keptLight()));
  document.addEventListener("click", (event) => {
    const { target } = event;
    if (target instanceof Element && target.closest("[data-light-switch]")) step();
  });
})();
