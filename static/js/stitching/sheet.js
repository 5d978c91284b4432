// What sheets are made of: elements, a dialog from below, a number asked for with its sentence when it is wrong.
// Their style comes with the first of them.

const styles = ["forms", "sheets"].map((name) => {
  const href = new URL(`../../css/${name}.css`, import.meta.url);
  return Object.assign(document.createElement("link"), { rel: "stylesheet", href });
});
const drawn = styles.map((style) => new Promise((done) => { style.onload = style.onerror = done; }));
document.head.append(...styles);
await Promise.all(drawn); // an undressed sheet still asks its question

/** Make an element with properties and children; `data` and attributes with a dash are set as attributes. */
export function el(tag, properties = {}, ...children) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (name in node) node[name] = value;
    else node.setAttribute(name, value);
  }
  node.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== false));
  return node;
}

/** Make a button that does something; `kind` may be "main" or "plain". */
export const button = (text, act, kind = "", more = {}) =>
  el("button", { type: "button", className: `btn ${kind}`, onclick: act, ...more }, text);

/** Open a sheet from below; it goes when closed, touched beside, or when `act` of its buttons calls `close`. */
export function sheet(title, ...content) {
  for (const before of document.querySelectorAll("dialog[open]")) before.close(); // one question at a time
  const id = `sheet-${Date.now()}`;
  const dialog = el("dialog", { className: "sheet stack", autofocus: true, tabIndex: -1, "aria-labelledby": id });
  const head = el("div", { className: "line" }, el("h2", { id }, title), button("✕", () => dialog.close(), "plain", { "aria-label": "Close" }));
  dialog.append(head, ...content.flat().filter(Boolean));
  dialog.addEventListener("click", (event) => event.target === dialog && isBeside(dialog, event) && dialog.close());
  dialog.addEventListener("close", () => {
    dialog.remove();
    document.querySelector(".field")?.focus({ preventScroll: true });
  });
  document.body.append(dialog);
  dialog.showModal();
  return dialog;
}

function isBeside(dialog, { clientX, clientY, detail }) {
  const { left, right, top, bottom } = dialog.getBoundingClientRect();
  return detail > 0 && (clientX < left || clientX > right || clientY < top || clientY > bottom);
}

/** Ask for a whole number; `read()` gives it, or null after saying what is wrong. */
export function askNumber(label, { value = "", min = 0, max = 10_000, hint = "" } = {}) {
  const id = `ask-${label.replace(/\W+/g, "-")}`;
  const said = el("small", { id: `${id}-about` }, hint);
  const input = el("input", { id, type: "text", inputMode: "numeric", autocomplete: "off", value: String(value), "aria-describedby": said.id });
  const node = el("div", { className: "ask" }, el("label", { htmlFor: id }, label), input, said);
  const tell = (sentence) => {
    said.textContent = sentence || hint;
    said.className = sentence ? "error" : "";
    input.setAttribute("aria-invalid", String(Boolean(sentence)));
    if (sentence) input.focus();
    return null;
  };
  const read = () => {
    const text = input.value.trim();
    const number = /^-?\d{1,9}$/.test(text) ? Number(text) : NaN;
    if (Number.isNaN(number)) return tell(`Type a whole number from ${min} to ${max}.`);
    if (number < min || number > max) return tell(`${number} is not from ${min} to ${max}. Type a number between them.`);
    tell("");
    return number;
  };
  return { node, input, read, tell };
}

/** Ask for one of a few; `read()` gives the value chosen. */
export function choose(name, legend, options, chosen) {
  const inputs = options.map(([value, text]) => {
    const input = el("input", { type: "radio", name, value, checked: String(value) === String(chosen) });
    return [input, el("label", {}, input, el("span", {}, text))];
  });
  const node = el("fieldset", { className: "ask" }, el("legend", {}, legend), el("div", { className: "choice" }, inputs.map(([, label]) => label)));
  return { node, read: () => inputs.find(([input]) => input.checked)?.[0].value };
}
