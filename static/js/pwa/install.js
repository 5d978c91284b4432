/** Installing: the browser's own offer is kept until she asks for it by a control that says so. */

/** Show the controls that install; they go when it is done. */
export function offerInstall(event) {
  const controls = document.querySelectorAll('[data-act="install"]');
  const show = (shown) => controls.forEach((control) => (control.hidden = !shown));
  const install = async () => {
    const { outcome } = await event.prompt();
    if (outcome === "accepted") show(false);
  };
  for (const control of controls) control.onclick = install;
  addEventListener("appinstalled", () => show(false));
  show(true);
}
