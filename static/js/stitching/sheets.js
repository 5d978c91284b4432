/** Open a sheet by its name; this file is fetched with the first of them, and each with its own first opening. */
export const open = async (name, ...given) => (await import(`./${name}.js`)).open(...given);
