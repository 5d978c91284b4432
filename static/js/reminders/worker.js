/**
 * The worker's part in reminders; it is served with sw.js, as one script. Every push shows a notification (an iPhone
 * takes the permission away otherwise), also one that cannot be read. One of a night takes the place of another.
 */
self.addEventListener("push", (event) => event.waitUntil(remind(event.data)));
self.addEventListener("notificationclick", (event) => event.waitUntil(answer(event)));
self.addEventListener("pushsubscriptionchange", (event) => event.waitUntil(moveTo(event)));

function remind(data) {
  const { title = "Is your work off its frame?", body = "Take it off for the night.", open = "/shell/tonight", done, ...said } = wordsIn(data);
  const tag = said.tag || "night"; // the browser takes none that is empty
  const actions = [
    ...(done ? [{ action: "done", title: done }] : []),
    ...(tag.startsWith("night") ? [{ action: "later", title: "In half an hour" }, { action: "leave", title: "Leave it tonight" }] : []),
  ];
  const looks = { icon: `/static/${digest}/icons/icon-192.png`, badge: `/static/${digest}/icons/icon-192.png` };
  return registration.showNotification(title, { body, tag, renotify: true, actions, data: { open }, ...looks });
}

/** Read what a push says: of what should be words only words; of what cannot be read, nothing. */
function wordsIn(data) {
  try {
    return Object.fromEntries(Object.entries(Object(data.json())).filter(([, value]) => typeof value === "string"));
  } catch {
    return {}; // then it says what it always means
  }
}

function answer({ notification, action }) {
  notification.close();
  return clients.openWindow(notification.data.open + (action && `#${action}`));
}

/** The browser gave this phone another address: tell the house. */
async function moveTo({ newSubscription }) {
  const { key, on } = await (await fetch("/reminders/phones.json")).json();
  if (!on || !key) return;
  const asked = newSubscription || (await registration.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: key }));
  const { endpoint, keys } = asked.toJSON();
  const headers = { "Content-Type": "application/json" };
  await fetch("/reminders/phones.json", { method: "POST", headers, body: JSON.stringify({ endpoint, keys, key }) });
}
