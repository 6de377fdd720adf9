/* What is kept of a session while it runs, as train/<program>/<week>/<session>: nothing typed or tapped is
   lost by a reload, and a page that was published anew meanwhile goes on where its sets are the same.

     shape  which steps there are, as a text
     acts   what was tapped: see train/walk.js
     ticks  lines ticked off
     typed  fields as they were typed, by name: 'top.B1', 'load.A', 'reps.A', 'effort', 'note'
     last   when, in milliseconds
     log    what there is to log so far, for a page that has other steps */
import { find, json } from './dom.js';
import * as store from './store.js';

/** @import { Log } from './record.js'
    @typedef {{shape?: string, page?: string, acts: any[], ticks: string[], typed: Record<string, string>, last: number,
      log?: Log}} Running */

const WHAT = /^(done|miss|set|start|go|less|out|in|vary|reps|door|turn)$/;
const block = find('.sh-train-data');
const at = block && json(block).at;
const key = 'train/' + at;

/** @param {any} act */
const isAct = act => Array.isArray(act) && WHAT.test(act[0]) && Number.isFinite(act[2]) &&
  (typeof act[1] === 'string' || (act[0] === 'turn' && Array.isArray(act[1])) || (Number.isInteger(act[1]) && act[1] >= -1));
/** @param {Record<string, any>} typed */
const isTyped = typed => Object.values(typed).every(text => typeof text === 'string' && text.length <= 200);
/** @param {any} value */
const isRunning = value => value.acts.length < 5000 && value.acts.every(isAct) && Array.isArray(value.ticks) &&
  Number.isFinite(value.last) && (value.typed === undefined || isTyped(value.typed));

/** What is kept; undefined where nothing is.
    @returns {Running | undefined} */
function read() {
  const found = at && store.get(key, isRunning);
  return found && { typed: {}, ...found };
}

/** @param {Running} value */
const keep = value => store.set(key, value);
const forget = () => store.remove(key);

/** A field as it was typed, or empty.
    @param {string} name */
const typed = name => read()?.typed[name] || '';

/** Keeps a field; on a page where nothing runs yet, that begins it.
    @param {string} name
    @param {string} text */
function type(name, text) {
  if (!at) return true;
  const found = read() || { acts: [], ticks: [], typed: {}, last: Date.now() };
  return keep({ ...found, typed: { ...found.typed, [name]: text.slice(0, 200) } });
}

export { at, read, keep, forget, typed, type };
