// Speeds up what works without it: ticks without a new page, a search as it goes
// on, a pull list that another phone has ticked.
"use strict";

// swap puts what is new of a page in the place of what is there.
function swap(text, selector) {
  const page = new DOMParser().parseFromString(text, "text/html");
  const now = document.querySelector(selector), next = page.querySelector(selector);
  if (!now || !next) return false;
  const at = document.activeElement && document.activeElement.value;
  const open = [...now.querySelectorAll("details")].map((d) => d.open);
  now.replaceWith(next);
  next.querySelectorAll("details").forEach((d, i) => { d.open = Boolean(open[i]); });
  if (at) {
    const again = [...next.querySelectorAll("button")].find((b) => b.value === at);
    if (again) again.focus({ preventScroll: true });
  }
  return true;
}

document.addEventListener("submit", async (event) => {
  const form = event.target, button = event.submitter;
  if (!form.matches(".pull") || !button) return;
  event.preventDefault();
  try {
    const got = await fetch(form.action, { method: "POST", body: new URLSearchParams([[button.name, button.value]]) });
    const text = await got.text();
    if (!got.ok || !swap(text, "[data-fresh]")) {
      document.open(); document.write(text); document.close();
    }
  } catch {
    alert("The desk does not answer, so nothing was ticked.");
  }
});

// What lies in a hand is looked at anew every few seconds, and when the phone is
// woken; where that fails it says so, for what was posted since is not on it.
const fresh = document.querySelector("[data-fresh]");
async function look() {
  if (document.hidden) return;
  let done = false;
  try {
    const got = await fetch(location.href);
    done = got.ok && swap(await got.text(), "[data-fresh]");
  } catch { /* said below */ }
  document.getElementById("stale").hidden = done;
}
if (fresh) {
  setInterval(look, 1000 * Number(fresh.dataset.fresh));
  document.addEventListener("visibilitychange", look);
}

const progress = document.querySelector("[data-watch]");
if (progress) {
  const watch = new EventSource(progress.dataset.watch);
  const silent = document.getElementById("silent");
  watch.addEventListener("progress", (event) => { silent.hidden = true; progress.innerHTML = event.data; });
  watch.addEventListener("error", () => {
    if (watch.readyState === EventSource.CLOSED) location.reload(); // the search or the session is gone: the page says which
    else silent.hidden = false;
  });
  watch.addEventListener("over", () => { watch.close(); location.reload(); });
}
