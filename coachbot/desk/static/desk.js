"use strict";
// Everything here only helps: each page works without it.

const SECONDS = 5;
const main = document.querySelector("main[data-pulse]");
const list = document.querySelector("[data-list]");
const live = document.getElementById("live");
const count = document.getElementById("alert-count");
let alerts = count ? Number(count.textContent) : 0;

function busy() {
  const active = document.activeElement;
  const typing = [...list.querySelectorAll("textarea")].some((area) => area.value.trim());
  return typing || (list.contains(active) && active !== list) || list.querySelector("details[open]") !== null;
}

async function renew() {
  if (busy()) {
    document.getElementById("fresh").hidden = false;
    return;
  }
  const answer = await fetch(list.dataset.list, { credentials: "same-origin" });
  if (!answer.ok) return;
  list.innerHTML = await answer.text();
}

async function look() {
  const answer = await fetch(main.dataset.pulse, { credentials: "same-origin" });
  if (answer.status === 401) {
    location.reload();
    return;
  }
  if (!answer.ok) return;
  const found = await answer.json();
  if (count) {
    count.textContent = found.alerts;
    count.classList.toggle("some", found.alerts > 0);
  }
  if (found.alerts > alerts) live.textContent = live.dataset.text;
  alerts = found.alerts;
  if (list && found.stamp !== list.dataset.stamp) {
    list.dataset.stamp = found.stamp;
    await renew();
  }
}

if (main) setInterval(() => look().catch(() => {}), SECONDS * 1000);

for (const button of document.querySelectorAll("[data-copy]")) {
  button.hidden = false;
  button.addEventListener("click", async () => {
    await navigator.clipboard.writeText(document.getElementById(button.dataset.copy).textContent);
    button.textContent = button.dataset.done;
  });
}

// A second click sends nothing twice; a page that is gone back to starts afresh.
const sent = new Set();
document.addEventListener("submit", (event) => {
  if (event.target.method !== "post") return;
  if (sent.has(event.target)) event.preventDefault();
  sent.add(event.target);
});
addEventListener("pageshow", () => sent.clear());

for (const area of document.querySelectorAll("[data-end]")) area.scrollTop = area.scrollHeight;

for (const select of document.querySelectorAll(".find select")) {
  select.addEventListener("change", () => select.form.requestSubmit());
}
