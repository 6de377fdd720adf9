/* What a tested best of rowing, running and the like comes to today: the sums of plan/aims.py, in the
   same order, so that they round alike. Pure.

   aim(recipe, amount)  {pace, piece, watts}: tenths of seconds and whole watts, of a range both ends;
                        empty where there are none
   read(text, kind)     tenths of seconds or of watts of what was typed; null where it is neither
   split(ends)          tenths of seconds as a display shows them, of a range both ends
   typed(amount, kind)  what was kept, as it is typed */

/** @import { AimRecipe } from './types.js' */

const LONGEST = 5000000; // tenths

/** @param {number} seconds */
const tenths = seconds => Math.floor(seconds * 10 + 0.5);

/** @param {number[]} several */
const rising = several => [...several].sort((a, b) => a - b);

/** @param {AimRecipe} recipe
    @param {number} amount  tenths of seconds, or of watts */
function aim({ o, r, u, h, i, w }, amount) {
  const best = amount / 10;
  if (!o) return { pace: [], piece: [], watts: rising((h ?? []).map(share => Math.floor(best * share / 100 + 0.5))) };
  const tested = best / o * r;
  const pace = rising(u ? u.map(slower => tested + slower) : (h ?? []).map(share => tested * 100 / share));
  return {
    pace: pace.map(tenths),
    piece: i ? pace.map(one => tenths(i / r * one)) : [],
    watts: w ? rising(pace.map(one => Math.floor(2.8 / (one / 500) ** 3 + 0.5))) : [],
  };
}

/** @param {number} all */
const clock = all => `${Math.floor(all / 600)}:${String(Math.floor(all % 600 / 10)).padStart(2, '0')}` +
  (all % 10 ? `.${all % 10}` : '');

/** @param {number[]} ends */
const split = ends => [...new Set(ends.map(clock))].join('–');

/** @param {string} text
    @param {string} kind */
function read(text, kind) {
  const found = kind === 'watts' ? /^(\d{1,4})(?:[.,](\d))?$/.exec(text) : /^(\d{1,3}):([0-5]\d)(?:[.,](\d))?$/.exec(text);
  if (!found) return null;
  const [, first, second = '0', third = '0'] = found;
  const amount = kind === 'watts' ? +first * 10 + +second : (+first * 60 + +second) * 10 + +third;
  return amount > 0 && amount <= LONGEST ? amount : null;
}

/** @param {number} amount
    @param {string} kind */
const typed = (amount, kind) => (kind === 'watts' ? String(amount / 10) : clock(amount));

export { aim, read, split, typed, LONGEST };
