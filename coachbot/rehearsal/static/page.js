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
  document.getElementById("clock").textContent = written(shown.clock, shown.zone, { dateStyle: "full", timeStyle: "short" });
  document.getElementById("password").textContent = shown.key.password;
  document.getElementById("code").textContent = shown.key.code;
  for (const [name, phone] of phones) {
    phone.querySelector("[data-what=text]").setAttribute("aria-pressed", shown.texting.includes(name));
    drawTalk(phone.querySelector(".talk"), shown.phones[name], shown.zone);
    const invite = phone.querySelector(".invite");
    if (invite) invite.hidden = shown.phones[name].length > 0;
  }
}

// Only what is new is added, since a picture that is drawn anew would flicker; answered questions lose their buttons.
function drawTalk(talk, messages, zone) {
  let drawn = Number(talk.dataset.drawn || 0);
  if (messages.length < drawn) drawn = 0;
  if (!drawn) talk.replaceChildren();
  const held = talk.contains(document.activeElement);
  messages.slice(0, drawn).forEach((message, number) => {
    const item = talk.children[number];
    if (item.querySelectorAll("button").length === (message.buttons || []).flat().length) return;
    item.querySelectorAll(".row").forEach((row) => row.remove());
    for (const row of message.buttons) item.insertBefore(buttons(row), item.lastElementChild);
  });
  if (held && !talk.contains(document.activeElement)) talk.focus();
  for (const message of messages.slice(drawn)) talk.append(bubble(message, talk.dataset.segments, zone));
  if (messages.length !== drawn) talk.scrollTop = talk.scrollHeight;
  if (!messages.length) talk.append(nothing(talk.dataset.nothing));
  talk.dataset.drawn = messages.length;
}

function written(instant, zone, parts) {
  const format = new Intl.DateTimeFormat(document.documentElement.lang, { ...parts, timeZone: zone, hourCycle: "h23" });
  return format.format(new Date(instant));
}

function nothing(words) {
  const item = document.createElement("li");
  item.className = "nothing";
  item.textContent = words;
  return item;
}

function bubble(message, segments, zone) {
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
  const at = written(message.at, zone, { weekday: "short", hour: "2-digit", minute: "2-digit" });
  time.dateTime = message.at;
  time.textContent = message.segments ? `${at} · ${segments.replace("%", message.segments)}` : at;
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
