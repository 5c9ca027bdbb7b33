"use strict";
// Draws what the server says stands on the phones; all that happens, happens there.

const mistake = document.getElementById("mistake");
const phones = new Map([...document.querySelectorAll(".phone")].map((one) => [one.dataset.phone, one]));

async function act(wanted) {
  document.body.setAttribute("aria-busy", "true");
  try {
    const answer = await fetch("/phones/do", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(wanted),
    });
    const shown = await answer.json();
    mistake.hidden = answer.ok;
    if (answer.ok) draw(shown);
    else mistake.textContent = mistake.dataset.words.replace("%", shown.error);
  } catch (error) {
    mistake.hidden = false;
    mistake.textContent = mistake.dataset.words.replace("%", error.message);
  } finally {
    document.body.removeAttribute("aria-busy");
  }
}

function draw(shown) {
  document.getElementById("clock").textContent = shown.clock;
  document.getElementById("password").textContent = shown.key.password;
  document.getElementById("code").textContent = shown.key.code;
  for (const [name, phone] of phones) {
    const talk = phone.querySelector(".talk");
    phone.querySelector("[data-what=text]").setAttribute("aria-pressed", shown.texting.includes(name));
    const messages = shown.phones[name];
    if (messages.length < Number(talk.dataset.drawn || 0)) talk.dataset.drawn = 0;
    if (!Number(talk.dataset.drawn || 0) && messages.length) talk.replaceChildren();
    for (const message of messages.slice(Number(talk.dataset.drawn || 0))) talk.append(bubble(message, talk.dataset.segments));
    if (messages.length !== Number(talk.dataset.drawn || 0)) talk.scrollTop = talk.scrollHeight;
    talk.dataset.drawn = messages.length;
    const invite = phone.querySelector(".invite");
    if (invite) invite.hidden = messages.length > 0;
  }
}

function bubble(message, segments) {
  const item = document.createElement("li");
  if (message.own) item.className = "own";
  if (message.picture) {
    const picture = document.createElement("img");
    picture.src = message.picture;
    picture.alt = message.name;
    picture.addEventListener("load", () => { item.parentElement.scrollTop = item.parentElement.scrollHeight; });
    item.append(picture);
  }
  item.append(message.own || message.text);
  if (message.paper) {
    const paper = document.createElement("a");
    paper.href = message.paper;
    paper.textContent = message.name;
    item.append(document.createElement("br"), paper);
  }
  for (const row of message.buttons || []) item.append(buttons(row));
  const time = document.createElement("time");
  time.textContent = message.segments ? `${message.at} · ${segments.replace("%", message.segments)}` : message.at;
  item.append(time);
  return item;
}

function buttons(row) {
  const line = document.createElement("div");
  line.className = "row";
  for (const [label, data] of row) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = label;
    button.dataset.what = "press";
    button.dataset.data = data;
    line.append(button);
  }
  return line;
}

document.addEventListener("click", (event) => {
  const button = event.target.closest("button[data-what]");
  if (!button) return;
  const phone = button.closest(".phone");
  act({ ...button.dataset, phone: phone && phone.dataset.phone });
});

for (const [name, phone] of phones) {
  phone.querySelector("form").addEventListener("submit", (event) => {
    event.preventDefault();
    const words = phone.querySelector("input");
    if (words.value.trim()) act({ what: "write", phone: name, text: words.value });
    words.value = "";
  });
}

fetch("/phones/state").then((answer) => answer.json()).then(draw);
