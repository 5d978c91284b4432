/** One line over the page, with at most one answer; it moves nothing under her thumb, and goes when she says so. */

const make = (tag, values, ...children) => {
  const made = Object.assign(document.createElement(tag), values);
  made.append(...children);
  return made;
};

function shelf() {
  const found = document.querySelector(".notices");
  if (found) return found;
  const href = new URL("../../css/notice.css", import.meta.url);
  document.head.append(make("link", { rel: "stylesheet", href }));
  const made = make("section", { className: "notices", ariaLive: "polite", ariaLabel: "Notices" });
  (document.querySelector(".thumb") || document.body).append(made); // not over the row and its count
  return made;
}

/** Say a line, once by its name; `act` is a function, or where the answer leads. */
export function notice(name, text, answer, act, closed = () => {}) {
  hush(name);
  const button = answer ? answering(answer, act) : "";
  const close = make("button", { className: "btn plain", type: "button", ariaLabel: "Close", textContent: "✕" });
  close.addEventListener("click", () => closed(line.remove()));
  const line = make("div", { className: "card notice line" }, make("p", { textContent: text }), button, close);
  line.dataset.notice = name;
  shelf().prepend(line); // one at a time, the newest first
}

function answering(textContent, act) {
  if (typeof act === "string") return make("a", { className: "btn main", textContent, href: act });
  const button = make("button", { className: "btn main", type: "button", textContent });
  button.addEventListener("click", act);
  return button;
}

/** Take a line away. */
export const hush = (name) => document.querySelector(`[data-notice="${name}"]`)?.remove();
