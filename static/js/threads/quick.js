// Quick thread: webapp/threads/quick.py in JavaScript. What it comes to: {units, sold, lengths, aLength, worked, crosses,
// share, isHers}; the tables are {kinds, strands}.

import { strands as strandsFor } from "../cloth/advice.js";
import { FORGIVEN, estimate, whole } from "./estimate.js";
import { groundOf } from "./geometry.js";
import { worked } from "./kinds.js";
import { own } from "./own.js";
import { typedIn } from "./quick_asking.js";

const PRINTED = 10_000;

/** Read what was typed; a sentence stands beside each field that cannot be meant. */
export function ask(typed, tables) {
  const asked = typedIn(typed);
  if (Object.keys(asked.errors).length) return asked;
  try {
    hers(asked.values, ...laid(asked.values, tables));
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    asked.errors.gave = error.message;
  }
  return asked;
}

function laid(values, tables) {
  return [groundOf(values.count, Number(values.over)), workedBy(values, values.strands ?? usual(values, tables), tables)];
}

function usual(values, tables) {
  const kind = tables.kinds[values.kind];
  return kind.strands === 6 ? strandsFor(values.count / Number(values.over), tables.strands).usual : kind.used;
}

const workedBy = ({ kind, method, working }, strands, { kinds }) => worked(kinds, [[kind, strands]], method || null, working)[0];

function hers({ gave }, ground, { working, strands, method, loop }) {
  return gave === null ? null : own([{ what: "length", stitches: gave, length: working, strands, method, loop }], ground);
}

/** Answer a question that was read without error. */
export function answer(values, tables) {
  const [ground, how] = laid(values, tables);
  let kind = tables.kinds[values.kind];
  if (kind.length_mm && values.skein) kind = { ...kind, length_mm: values.skein };
  const mine = hers(values, ground, how);
  const takes = (on, by, crosses) =>
    estimate(on, kind.sold === "bead" ? { beads: crosses } : { full: crosses }, by, kind, null, values.scatter, mine);
  if (values.by === "printed" && kind.sold !== "bead") {
    const there = [groundOf(values.printed_count), workedBy(values, values.printed_strands, tables)];
    const share = takes(ground, how, PRINTED).sold[1] / takes(...there, PRINTED).sold[1];
    return printed(values.printed, share, kind.length_mm, how, mine !== null);
  }
  const crosses = values.by === "block" ? values.block * values.blocks : values[values.by];
  const { units, sold, lengths, each } = takes(ground, how, crosses);
  return { units, sold, lengths, aLength: Math.floor(how.working / each[1]), worked: how, crosses, share: null, isHers: mine !== null };
}

function printed(skeins, share, length, how, isHers) {
  const sold = [(skeins - 1) * share * length, (skeins - 0.5) * share * length, skeins * share * length];
  const units = [Math.floor(sold[0] / length + FORGIVEN) + 1, whole(sold[2] / length)];
  return { units, sold, lengths: null, aLength: 0, worked: how, crosses: null, share, isHers };
}
