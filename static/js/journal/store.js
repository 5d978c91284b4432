/**
 * One account's database on this phone. Everything that belongs together is changed in one transaction over all
 * of it, and a promise resolves when the transaction is complete and on the disk, not before.
 *
 * outbox    {id, entry, tried?, landed?, again?}  what the house has not yet shown to hold: see books.js
 * refused   {id, entry, why}                      what it will not have
 * settled   {id, entry, when}                     what it has, for a while
 * snapshots {project, revision, …}                the latest state of each project
 * facts     {name, value}                         house, offset, ahead
 */
const KEYS = { outbox: "id", refused: "id", settled: "id", snapshots: "project", facts: "name" };
const PATIENCE = 4000;

const asked = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

function openDatabase(account) {
  let late = false;
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(`evenrow-${account}`, 1);
    request.onupgradeneeded = () => {
      for (const [name, keyPath] of Object.entries(KEYS)) request.result.createObjectStore(name, { keyPath });
    };
    request.onerror = () => reject(request.error);
    request.onsuccess = () => (late ? request.result.close() : resolve(request.result));
    setTimeout(() => {
      late = true; // some phones never answer; then the ledge has to do for this page
      reject(new Error("the database does not open"));
    }, PATIENCE);
  });
}

function tools(transaction) {
  const of = (name) => transaction.objectStore(name);
  return {
    get: (name, key) => asked(of(name).get(key)),
    all: (name) => asked(of(name).getAll()),
    count: (name) => asked(of(name).count()),
    put: (name, value) => asked(of(name).put(value)),
    drop: (name, key) => asked(of(name).delete(key)),
  };
}

/**
 * Open the database; `outdated` is called if a newer page needs it in another shape, after which it stays closed.
 * `change(work)` and `read(work)` give work its tools and resolve with what it gave.
 */
export async function openStore(account, outdated = () => {}) {
  let database = null;
  let closed = false;

  async function open() {
    if (closed) throw new Error("a newer page has the database");
    database ||= await openDatabase(account);
    database.onclose = () => (database = null); // phones take it away from pages that sleep
    database.onversionchange = () => {
      database.close();
      closed = true;
      database = null;
      outdated();
    };
  }

  async function begin(mode) {
    await open();
    try {
      return database.transaction(Object.keys(KEYS), mode, { durability: "strict" });
    } catch {
      database = null;
      await open();
      return database.transaction(Object.keys(KEYS), mode, { durability: "strict" });
    }
  }

  async function transact(mode, work) {
    const transaction = await begin(mode);
    const complete = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error || new Error("nothing was written"));
    });
    const [result] = await Promise.all([attempt(work, transaction), complete]);
    return result;
  }

  await transact("readonly", (t) => t.count("outbox")); // trod on once before it is trusted
  return { change: (work) => transact("readwrite", work), read: (work) => transact("readonly", work) };
}

async function attempt(work, transaction) {
  try {
    return await work(tools(transaction));
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // it is over already
    }
    throw error;
  }
}

/**
 * Listen to the other pages of the account, which say when they changed something; gives the way to tell them.
 * Every browser that can run the fold (it calls findLastIndex) has channels.
 */
export function openTabs(account, heard) {
  const channel = new BroadcastChannel(`evenrow:${account}:tabs`);
  channel.onmessage = ({ data }) => heard(data);
  return (word) => channel.postMessage(word);
}
