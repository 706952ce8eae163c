// Weights that are moved: the server ranks again, so that the sums are written once; the last answer wins.
const form = document.querySelector(".weights");
const place = document.getElementById("ranking");
let asked = 0;

async function rank() {
  const number = ++asked;
  const answer = await fetch("/compare/ranking?" + new URLSearchParams(new FormData(form)));
  if (number !== asked) return;
  if (answer.ok) place.innerHTML = await answer.text();
  else place.replaceChildren(Object.assign(document.createElement("p"), { className: "fault", textContent: "At least one weight must be above 0, so there is no order now." }));
}

form?.addEventListener("input", (event) => {
  event.target.closest("label").querySelector("output").textContent = event.target.value;
  rank().catch(() => {});
});
