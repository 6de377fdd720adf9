/* Session mode and the tools are a script of their own, fetched when the first of them is used. What
   does not come is said; the next use asks again. */
import { find, make, on } from './dom.js';
import { beside } from './place.js';

/** @import { Lists, Load, Need } from './types.js' */

const SLOW = 1500; // milliseconds without an answer, after which somebody wants to know
const SAYS = {
  slow: 'One more part of the handbook is on its way. Without a signal it may not come.',
  failed: 'One more part of the handbook did not come. No signal? Then it is not kept on this phone. ' +
    'Everything that you see here works without it. With a signal, load this page again.',
};
const NAME = '__TOOLS__'; // the build fills it in

/** What the first script uses of the second, which puts it here: the member's load on a shared bar,
    and session mode.
    @type {{
      sharedLoad: ((block: HTMLElement, load: Load | Need | null, lists: Lists) => Load | Need | null) | null,
      train: {enter: () => void, leave: () => void} | null,
    }} */
const tools = { sharedLoad: null, train: null };

/** @type {Promise<boolean> | null} */
let coming = null;
let came = false;

/** Has the second script come? */
const here = () => came;

/** @returns {Promise<boolean>} */
function fetched() {
  const script = make('script', { src: beside(NAME) });
  return new Promise(done => {
    on(script, 'load', () => {
      came = true;
      done(true);
    });
    on(script, 'error', () => {
      coming = null;
      script.remove();
      done(false);
    });
    document.head.append(script);
  });
}

/** True once the second script is here, false where it does not come. `tell` gets what to say meanwhile
    and then, and an empty text once there is nothing to say.
    @param {(text: string) => void} tell */
async function need(tell) {
  if (came) return true;
  coming = coming || fetched();
  const slow = setTimeout(() => tell(SAYS.slow), SLOW);
  const found = await coming;
  clearTimeout(slow);
  tell(found ? '' : SAYS.failed);
  return found;
}

/** A status line that is there only while it says something; gives what writes into it.
    @param {(line: HTMLElement) => void} put
    @returns {(text: string) => void} */
function statusLine(put) {
  const line = make('p', { role: 'status', className: 'sh-note' });
  return text => {
    line.remove();
    line.textContent = text;
    if (text) put(line);
  };
}

/* Pages that are a tool themselves; on a session's page results wait for the end of the session. */
if (find('[data-sh-numbers], [data-sh-log], [data-sh-judge], script.sh-tested') ||
  (find('script.sh-results') && !find('.sh-train-data'))) {
  need(statusLine(line => find('h1').after(line)));
}

const sharing = find('[data-sh-together]');
if (sharing) {
  const tell = statusLine(line => sharing.append(line));
  const opened = () => sharing.open && need(tell);
  on(sharing, 'toggle', opened);
  opened(); // already, where the page is read again
}

export { here, need, statusLine, tools };
