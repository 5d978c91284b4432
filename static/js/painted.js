/** Resolve once what was just changed has been painted; at once while nothing is. */
export const painted = () =>
  document.hidden ? Promise.resolve() : new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
