/* Whether a retest shows a change: the build's limits, in whole numbers, are only compared. */
import { find, on } from '../dom.js';
import * as words from '../load-words.js';
import { toGrams } from '../whole-numbers.js';
import { singleOf } from './singles.js';

/** The verdict on two results in grams; limits are percentages of the first, in millionths.
    @param {number} before
    @param {number} after
    @param {number | string} likely
    @param {number | string} sure */
const judge = (before, after, likely, sure) => {
  const change = BigInt(Math.abs(after - before)) * 100000000n;
  /** @param {number | string} limit */
  const beyond = limit => change && change >= BigInt(limit) * BigInt(before);
  const way = after > before ? 'up' : 'down';
  return beyond(sure) ? 'clearly ' + way : beyond(likely) ? 'probably ' + way : "can't tell";
};

/** A change in percent, cut to a tenth: printed it never reaches a limit that it does not reach.
    @param {number} before
    @param {number} after */
const changed = (before, after) => {
  const tenths = Math.trunc(Math.abs(after - before) * 1000 / before);
  return `${after < before ? '−' : '+'}${(tenths / 10).toFixed(1)} %`;
};

const form = find('[data-sh-judge]');

/** Two singles compared, in words; only the change where the page has no limits.
    @param {number} before
    @param {number} after */
const compare = (before, after) => {
  const { likely, sure } = form ? form.dataset : {};
  const verdict = likely ? `: ${judge(before, after, likely, sure)}` : '';
  return `${changed(before, after)}${verdict}.`;
};

function start() {
  const { units, noise } = form.dataset;
  const singles = JSON.parse(form.dataset.singles);

  /** A set as the best single it comes to; null where it is none.
      @param {string} text
      @param {string} reps */
  const best = (text, reps) => {
    const total = toGrams(text, units);
    const found = total && singleOf(total, Number(reps), { singles, units });
    return found && found.grams;
  };

  on(form, 'input', () => {
    const fields = [...form.elements].map(field => field.value.trim());
    const [one, two] = [best(fields[0], fields[1]), best(fields[2], fields[3])];
    /** @param {number} grams */
    const shown = grams => words.mass(grams, units);
    form.lastElementChild.textContent = !fields.every(Boolean) ? ''
      : !one || !two ? `Write weights such as 72.5, and 1 to ${singles.length} repetitions.`
        : [fields[0], fields[2]].map(text => words.understood(text, units)).join('') +
          `As singles ${shown(one)} and ${shown(two)}. ${compare(one, two)} ${noise}`;
  });
  form.hidden = false;
}

if (form) start();

export { judge, changed, compare };
