// What helps her back in after a long absence. It lies among her pages on this phone, for where there is no network; the
// worker, which keeps the newest of those, leaves it alone.
const HELP = "/stopped.json";
const MOST = 60; // projects
const PATIENCE = 6000;
const ASIDE = /^\/projects\/([0-9a-f-]{36})\/(stopped|story)$/;

/** A page that follows on one where photographs are taken or deleted: it may have been, so that is kept as it is now. */
export async function rememberAside(phone) {
  const { origin, pathname } = document.referrer ? new URL(document.referrer) : {};
  const project = origin === location.origin && pathname.match(ASIDE)?.[1];
  if (project) await remember({ project, phone });
}

/** Have what helps her back in: from the house, else as this phone kept it; null where neither has it. */
export async function help({ project, phone }) {
  const cache = await self.caches?.open(`evenrow-pages-${phone.account}`).catch(() => null);
  const address = `/projects/${project}${HELP}`;
  const found = await (await had(address, phone.account, cache))?.json();
  if (!found) return null;
  const { photograph } = found;
  await forgetOthers(cache, `/projects/${project}/photographs/`, photograph?.href);
  await forgetOldest(cache);
  const picture = photograph && ((await cache?.match(photograph.href)) || (await had(photograph.href, phone.account, cache)));
  return { ...found, photograph: picture ? { ...photograph, picture: await picture.blob() } : null };
}

/** Keep that for later; without network it stays as it was. */
export const remember = (hers) => help(hers).then(() => {}, () => {});

async function had(address, account, cache) {
  const answer = await fetch(address, { signal: AbortSignal.timeout(PATIENCE) }).catch(() => null);
  if (!answer || answer.status >= 500) return cache?.match(address);
  if (!answer.ok || answer.headers.get("X-Evenrow-Account") !== account) return null;
  await cache?.put(address, answer.clone()).catch(() => {}); // no room: then it is not kept
  return answer;
}

/** One that is there no more, or no longer the last, goes from this phone too. */
async function forgetOthers(cache, folder, href) {
  const kept = (await cache?.keys()) || [];
  const others = kept.filter(({ url }) => new URL(url).pathname.startsWith(folder) && new URL(url).pathname !== href);
  await Promise.all(others.map((one) => cache.delete(one)));
}

/** As much is kept as is of use: of the projects asked about last. */
async function forgetOldest(cache) {
  const kept = ((await cache?.keys()) || []).map(({ url }) => new URL(url).pathname);
  const oldest = kept.filter((path) => path.endsWith(HELP)).slice(0, -MOST);
  for (const address of oldest) {
    await cache.delete(address);
    await forgetOthers(cache, address.replace(HELP, "/photographs/"));
  }
}
