/* Asks the browser to keep the handbook on this phone, and says honestly whether it does. */
import { find, on } from './dom.js';
import { root } from './place.js';

const line = find('#sh-kept');

/** @param {string} words */
function say(words) {
  if (line) Object.assign(line, { textContent: words, hidden: false });
}

const kept = () => say('Kept on this phone: all pages open without a signal.');

/** A copy that does not come to its end is thrown away; the next visit tries again.
    @param {ServiceWorkerRegistration} registration */
function watch({ active, installing }) {
  if (active) {
    kept();
    return;
  }
  if (!installing) return;
  on(installing, 'statechange', () => {
    if (installing.state === 'activated') kept();
    if (installing.state === 'redundant') {
      say('Not kept on this phone: not every page came as it was published. Pages need a signal.');
    }
  });
}

function start() {
  const { serviceWorker } = navigator;
  if (!serviceWorker) {
    say('This address starts with http, so your browser keeps no copy: pages need a signal.');
    return;
  }
  serviceWorker.register(root + 'sw.js').then(watch,
    () => say('Your browser keeps no copy of this handbook: pages need a signal.'));
}

if (location.protocol !== 'file:') start();
