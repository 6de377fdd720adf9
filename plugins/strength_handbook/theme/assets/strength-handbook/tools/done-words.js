/* What was done, in words; no page in here. */
import * as words from '../load-words.js';
import * as record from '../record.js';

/** @import { DoneSet } from '../record.js'
    @import { Units } from '../types.js' */

/** One set: ``60 kg × 8``; of a strip set each load in order: ``60 kg × 8 → 50 kg × 6``.
    @param {DoneSet} set
    @param {Units} units */
function doneSet(set, units) {
  const loads = record.loads(set).map(({ grams, reps }) => [
    grams === undefined ? '' : words.kept(grams, units), reps === undefined ? '' : '× ' + reps,
  ].filter(Boolean).join(' ') || 'done').join(' → ');
  const all = set.strips && set.reps !== undefined ? `, ${set.reps} in all` : '';
  return loads + all + (set.missed ? ' missed' : '');
}

/** Are sets said one by one? Strip sets are, and those of several loads; attempts and tops have words of
    their own.
    @param {DoneSet[]} sets */
const apart = sets => sets.some(({ strips }) => strips) || (new Set(sets.map(({ grams }) => grams)).size > 1 &&
  !sets.some(({ missed, top }) => missed || top));

export { apart, doneSet };
