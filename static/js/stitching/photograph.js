// A photograph of where she stopped: offered as a sitting ends, and sent as her story's form sends it.
import { stamp } from "../journal/stamps.js";
import { remember } from "./helps.js";
import { el } from "./sheet.js";

const TYPES = "image/jpeg,image/png,image/webp";
const PATIENCE = 60_000;
const SAID = {
  usual: "Only you see it.",
  offline: "This needs the network; its story takes one later.",
  unsent: "No network: the photograph goes once it is back.",
  signedOut: "Sign in again, then send the photograph from its story.",
  other: "The photograph could not be taken. Its story takes another.",
};

/** Offer to take one; `send(line)` resolves with true when it is kept, with false when it cannot be, else with nothing. */
export function offer(stitch) {
  let shrunk = null;
  const shrink = async () => (await import("../hours/shrink.js")).shrink(input);
  const about = el("small", { id: "photograph-about" }, navigator.onLine ? SAID.usual : SAID.offline);
  const input = el("input", {
    id: "photograph", type: "file", accept: TYPES, capture: "environment", disabled: !navigator.onLine, "aria-describedby": about.id,
    onchange: () => { shrunk = shrink().catch(() => {}); }, // as it is, it can be sent too
  });
  const node = el("div", { className: "ask" }, el("label", { htmlFor: "photograph" }, "A photograph"), input, about);
  const send = async (line) => {
    if (!input.files.length) {
      if (navigator.onLine) remember(stitch);
      return undefined;
    }
    addEventListener("beforeunload", hold); // she is asked before she leaves it behind
    try {
      await shrunk;
      const form = new FormData();
      for (const [name, value] of Object.entries({ once: stamp().id, line, photograph: input.files[0] })) form.append(name, value);
      return await post(stitch, form);
    } finally {
      removeEventListener("beforeunload", hold);
    }
  };
  return { node, send };
}

const hold = (event) => event.preventDefault();

async function post(stitch, form) {
  stitch.say("Sending the photograph…");
  const sent = { method: "POST", body: form, signal: AbortSignal.timeout(PATIENCE) };
  const answer = await fetch(`/projects/${stitch.project}/photographs`, sent).catch(() => null);
  if (!answer || answer.status >= 500) return again(stitch, form);
  const at = new URL(answer.url).pathname;
  const isKept = answer.ok && at.endsWith("/story");
  removeEventListener("beforeunload", hold); // decided: she may leave
  stitch.say(isKept ? "The photograph is kept." : at.endsWith("/photographs") ? await sentence(answer) : SAID.signedOut);
  if (isKept) await remember(stitch);
  return isKept;
}

/** Hold it until the network is back, or she tries again. */
async function again(stitch, form) {
  await new Promise((retry) => {
    stitch.say(SAID.unsent, "Try again", retry);
    addEventListener("online", retry, { once: true });
  });
  return post(stitch, form);
}

/** Read what the house says is wrong. */
async function sentence(answer) {
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  return page.querySelector(".ask .error")?.textContent || SAID.other;
}
