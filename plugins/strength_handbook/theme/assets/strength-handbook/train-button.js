/* The button that opens session mode, on a session's page only. The mode itself comes when it is opened,
   or where a session runs already. */
import * as days from './days.js';
import { find, on, make, link, button, json } from './dom.js';
import * as later from './later.js';
import { root } from './place.js';
import * as record from './record.js';
import * as running from './running.js';

const HASH = '#train';
const block = globalThis.HTMLDialogElement && find('.sh-train-data');
const opener = button('', open, 'sh-train-open');
const finished = make('p', 'sh-finished');
const tell = later.statusLine(line => finished.after(line));

/** Opens the mode, and gives it an address of its own; the phone's back button leaves it. */
async function open() {
  if (!await later.need(tell)) return;
  if (location.hash !== HASH) {
    location.hash = HASH;
    history.replaceState({ train: true }, '');
  }
  enter();
}

/** Where it failed to begin, the page itself still has everything. */
function enter() {
  if (later.tools.train) later.tools.train.enter();
  else tell('Session mode does not run in this browser. Everything stands on this page.');
}

async function byAddress() {
  if (location.hash !== HASH) later.tools.train?.leave();
  else if (await later.need(tell)) enter();
}

/** The address no longer says that the mode is open. */
function forget() {
  if (location.hash !== HASH) return;
  if (history.state?.train) history.back();
  else history.replaceState(null, '', location.href.split('#')[0]);
}

/** Says whether a session runs, and what is in the log already.
    @param {boolean} runs */
function label(runs) {
  const logs = record.of(json(block).at);
  opener.textContent = runs ? 'Go on training' : `Train this session${logs.length ? ' again' : ''}`;
  finished.replaceChildren(...logs.flatMap(({ log: one }, place) => {
    const { done, of } = record.sum(one);
    return [place ? make('br') : '', make('b', '', 'Done'), `: ${days.written(one.day)}, ${done} of ${of} sets`];
  }), ...(logs.length ? [' · ', link(root + 'my-log/', 'my log')] : []));
  finished.hidden = !logs.length;
}

if (block) {
  block.after(opener, finished);
  const found = running.read();
  const runs = !!found && found.acts.length + found.ticks.length > 0;
  label(runs);
  if (runs) later.need(tell); // it knows whether what runs still fits
  byAddress();
  on(globalThis, 'hashchange', byAddress);
}

export { block, opener, label, forget };
