// Day, night or red light, kept on this device. Any button with data-light-switch steps through them.

const LIGHTS = ["day", "night", "red"];
const KEY = "light";

function kept() {
  try {
    const light = localStorage.getItem(KEY);
    return LIGHTS.includes(light) ? light : "day";
  } catch {
    return "day"; // storage may be forbidden; then the light lasts as long as the page
  }
}

function show(light) {
  document.documentElement.dataset.light = light;
  for (const button of document.querySelectorAll("[data-light-switch]")) button.textContent = `light: ${light}`;
}

function step() {
  const light = LIGHTS[(LIGHTS.indexOf(document.documentElement.dataset.light) + 1) % LIGHTS.length];
  try {
    localStorage.setItem(KEY, light);
  } catch { /* see kept() */ }
  show(light);
}

show(kept());
document.addEventListener("click", (event) => {
  if (event.target.closest("[data-light-switch]")) step();
});
