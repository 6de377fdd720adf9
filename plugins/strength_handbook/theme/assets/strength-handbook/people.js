/* Whose numbers are kept on this phone: the member's own as `mine`, and those of others at the same bar
   as `together`: {day, keep, people: [{body, bases}]}, which are forgotten after their day. */
import { LONGEST } from './paces.js';
import * as store from './store.js';

/** @import { Me } from './types.js' */

const MOST_AT_A_BAR = 4;
const MOST_BODY = 300000; // grams
const MOST_LOAD = 500000;

/** @param {unknown} value
    @param {number} most */
const whole = (value, most) => typeof value === 'number' && Number.isInteger(value) && value > 0 && value <= most;

/** Can these be somebody's numbers? Anything else in their place is damaged.
    @param {any} value */
const isMine = value => Object.values(value.bests ?? {}).every(one => whole(one, LONGEST)) &&
  (value.body === undefined || whole(value.body, MOST_BODY)) &&
  Object.values(value.bases).every(grams => whole(grams, MOST_LOAD));

/** What the member has entered; undefined where nothing is.
    @returns {Me | undefined} */
const me = () => store.get('mine', isMine);

/** The day that others' numbers are for. */
const today = () => new Date().toDateString();

/** @param {any} value */
const fits = value => value.people.length < MOST_AT_A_BAR && value.people.every(isMine);

/** Others' numbers, unless they were for another day.
    @returns {{people: Me[], keep?: boolean}} */
function others() {
  const kept = store.get('together', fits);
  if (kept && (kept.keep || kept.day === today())) return kept;
  store.remove('together');
  return { people: [] };
}

export { MOST_AT_A_BAR, MOST_LOAD, isMine, me, today, others };
