// What may have been meant, each one touch away.

/** Show the offers, each a button that does `act` with the fields it changes; those that stand already stay under the finger. */
export function showOffers(box, offers, act) {
  const key = JSON.stringify(offers);
  if ((box.dataset.key ?? "[]") === key) return;
  box.dataset.key = key;
  box.replaceChildren(...offers.map((offer) => button(offer.sentence, () => act(offer.fields))));
}

function button(text, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "btn";
  made.textContent = text;
  made.addEventListener("click", act);
  return made;
}
