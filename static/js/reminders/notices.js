/** How a project is held, as this phone knows it, and its notice out of the page's templates. */

/** Give a project as the rules of bedtime have it, or nothing if it is not known here or was put away. */
export function heldIn(phone, project) {
  const [view, plan] = [phone.view(project), phone.plan(project)];
  return view && plan && !plan.away && { project, title: plan.title, kind: plan.frame, ...view.frame };
}

/** Find where a notice names its project. */
export const titleIn = (notice) => notice.querySelector("[data-slot=title]");

/** Copy the notice for this kind of frame, so that its words stand in one place. */
export function made(element, { project, kind, title }) {
  const notice = element.querySelector(`template[data-kind=${kind}]`).content.firstElementChild.cloneNode(true);
  notice.action += project;
  notice.dataset.project = notice.querySelector("button").dataset.project = project;
  titleIn(notice).textContent = title;
  return notice;
}
