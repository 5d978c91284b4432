// Threads as the rows of a table, as templates/cloth/_threads.html draws them.

/** Fill a table's body: of each row the cells by their names, the thread with what stands under it. */
export function fillRows(body, rows, names) {
  body.replaceChildren(...rows.map((row) => {
    const made = document.createElement("tr");
    made.append(...names.map((name) => (name === "thread" ? headed(row) : cell("td", row[name]))));
    return made;
  }));
}

function headed({ thread, more }) {
  const made = cell("th", "");
  made.scope = "row";
  made.append(cell("bdi", thread));
  if (more) made.append(cell("small", more));
  return made;
}

const cell = (tag, textContent) => Object.assign(document.createElement(tag), { textContent });
