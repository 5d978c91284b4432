const PATIENCE = 8000;

/** Before work begun without a name is brought into an account, send what of it still waits on this phone. */
export async function sendFirst(event, phone) {
  const form = event.target;
  if (!phone?.waiting() || form.elements.bring?.value !== "yes") return;
  event.preventDefault();
  const button = form.querySelector("button.main");
  button.disabled = true;
  await Promise.race([phone.send(), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
  button.disabled = false;
  if (phone.waiting()) form.querySelector("[data-slot=unsent]").hidden = false;
  else form.submit();
}
