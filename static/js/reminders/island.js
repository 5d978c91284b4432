import { due, isNight, place } from "./bedtime.js";

const MINUTE = 60_000;
const ASK_AGAIN = 5; // minutes

/** Keeps the notice of what to do with the work for the night right while a page is open. */
export function start(element, phone) {
  if (!phone) return; // then the house alone decides, and the buttons are plain forms
  const list = element.querySelector("#frame");
  const answered = new Map(); // what was said here of a project, until the house knows
  const hours = bedtimeOf(element, phone.account);
  if (!hours) return;

  function draw() {
    const now = phone.now();
    const held = phone.projects().map((project) => heldIn(phone, project)).filter(Boolean);
    const known = new Set([...held.map((one) => one.project), ...answered.keys()]);
    const shown = [...list.children];
    const others = isNight(now, ...hours) ? shown.filter((notice) => !known.has(notice.dataset.project)) : [];
    const next = due(held, now, ...hours).map((one) => shown.find((notice) => says(notice, one)) || made(element, one));
    next.push(...others);
    next.sort((a, b) => (place(a.dataset) < place(b.dataset) ? -1 : 1));
    if (next.length !== shown.length || next.some((notice, n) => notice !== shown[n])) list.replaceChildren(...next);
  }

  async function answer(event) {
    const { project, state } = event.submitter.dataset;
    if (event.target.dataset.plain) return;
    event.preventDefault();
    try {
      await phone.lay(project, [{ kind: "frame", state }]);
      answered.set(project, state);
      draw();
    } catch {
      event.target.dataset.plain = "yes";
      event.target.requestSubmit(event.submitter);
    }
  }

  // The house is asked again when it has what was said here, and now and then, for other phones' sake.
  const askAgain = () => document.body.dispatchEvent(new CustomEvent("evenrow:frame"));
  phone.addEventListener("status", ({ detail }) => {
    if (detail.state !== "idle" || detail.waiting || !answered.size) return;
    answered.clear();
    askAgain();
  });
  let minutes = 0;
  setInterval(() => {
    draw();
    minutes += 1;
    if (minutes % ASK_AGAIN === 0 && document.body.dataset.account && navigator.onLine && !document.hidden) askAgain();
  }, MINUTE);
  phone.addEventListener("change", draw);
  document.addEventListener("visibilitychange", draw);
  element.addEventListener("submit", answer);
  new MutationObserver(draw).observe(list, { childList: true }); // what htmx brought, put right by what waits here
  draw();
}

function heldIn(phone, project) {
  const [view, plan] = [phone.view(project), phone.plan(project)];
  return view && plan && { project, title: plan.title, kind: plan.frame, state: view.frame?.state };
}

const says = ({ dataset, firstElementChild }, { project, kind, title }) =>
  dataset.project === project && dataset.kind === kind && firstElementChild.firstElementChild.textContent === title;

// Copy the notice for this kind of frame, so that its words stand in one place.
function made(element, { project, kind, title }) {
  const notice = element.querySelector(`template[data-kind=${kind}]`).content.firstElementChild.cloneNode(true);
  notice.action += project;
  notice.dataset.project = notice.querySelector("button").dataset.project = project;
  notice.querySelector("[data-slot=title]").textContent = title;
  return notice;
}

// Her bedtime and zone: from the page, or as the last page that knew them had them.
function bedtimeOf({ dataset: { bedtime, zone } }, account) {
  const key = `evenrow:night:${account}`;
  try {
    if (bedtime) localStorage.setItem(key, `${bedtime} ${zone}`);
    return bedtime ? [bedtime, zone] : localStorage.getItem(key)?.split(" ");
  } catch {
    return bedtime && [bedtime, zone];
  }
}
