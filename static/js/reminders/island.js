/** Has the notice for the night seen to once anything may be on a frame; until then there is nothing to say. */
export function start(element, phone) {
  element.addEventListener("click", (event) => event.stopPropagation()); // on Stitch it stands inside another island
  if (!phone) return; // then the house alone decides, and the buttons are plain forms
  const see = async () => (await import("./night.js")).see(element, phone);
  const isHeld = (project) => ["on", "slack"].includes(phone.snapshot(project).frame?.state);
  if (element.querySelector("form") || phone.waiting() || phone.projects().some(isHeld)) see();
  else phone.addEventListener("change", see, { once: true });
}
