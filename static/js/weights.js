// Weights that are moved: the server ranks again, so that the sums are written once; the last answer wins.
const form = document.querySelector(".weights");
const place = document.getElementById("ranking");
let asked = 0;

async function rank() {
  const number = ++asked;
  const answer = await fetch("/compare/ranking?" + new URLSearchParams(new FormData(form)));
  if (answer.ok && number === asked) place.innerHTML = await answer.text();
}

form?.addEventListener("input", (event) => {
  event.target.closest("label").querySelector("output").textContent = event.target.value;
  rank().catch(() => {});
});
