/** The page for when there is no other: her projects as this phone knows them. */

const isInHand = ({ state }) => state === "in hand";

/** List the projects that can be stitched on from here, those in hand first. */
export function start(element, phone) {
  const heading = element.querySelector("h2");
  heading.hidden = false;
  const known = (phone?.projects() || []).map((id) => ({ id, ...phone.plan(id) })).filter((one) => one.state !== "finished");
  const links = known.sort((a, b) => isInHand(b) - isInHand(a)).map(({ id, title }) => {
    const link = Object.assign(document.createElement("a"), { className: "btn main", href: `/projects/${id}/stitch` });
    link.textContent = title;
    return link;
  });
  heading.after(...links);
}
