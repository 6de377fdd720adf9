/* What a set to the limit says of the best single. No page in here. */
import { achieve, scaleOf } from '../scale.js';
import { POUND, WHOLE, halfEven, toMg } from '../whole-numbers.js';

/** @import { Lists, Me } from '../types.js' */

/** What a set to the limit says of the best single: {grams, low, high, caution}, the ends in mg; null
    for no repetitions or more than there are formulas for.
    @param {number} total
    @param {number} reps
    @param {Pick<Lists, 'singles' | 'units'>} lists */
function singleOf(total, reps, lists) {
  const row = lists.singles[reps - 1];
  if (!row || total <= 0) return null;
  const [percent, low, high, caution] = row;
  const best = [BigInt(total) * WHOLE, BigInt(percent)];
  const grams = reps === 1 ? total : lists.units === 'lb'
    ? halfEven(BigInt(halfEven(best[0] * 100000n, best[1] * POUND)) * POUND, 100000n)
    : 500 * halfEven(best[0], best[1] * 500n);
  return { grams, caution: !!caution,
    low: halfEven(BigInt(total) * BigInt(low), 1000n),
    high: halfEven(BigInt(total) * BigInt(high), 1000n) };
}

/** True where a load for so many repetitions is what the best so far lets expect: it says nothing
    new.
    @param {number} total
    @param {number} reps
    @param {number} best
    @param {string} base
    @param {Me} me
    @param {Lists} lists */
function asExpected(total, reps, best, base, me, lists) {
  const [, , share, scale] = lists.bases[base];
  const body = BigInt(me.body || 0) * BigInt(share);
  const wanted = toMg(BigInt(best) * BigInt(lists.singles[reps - 1][0]) - body);
  const load = achieve(wanted, scaleOf(lists, scale), body, 0, lists);
  return load.grams !== null && load.grams + halfEven(body, WHOLE) === total;
}

export { singleOf, asExpected };
