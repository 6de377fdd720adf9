/* Session mode: what was tapped and typed is kept, and taken up again where it still fits. `tell` gets
   what is wrong with keeping, or an empty text.

   keep(key, value)  a value of any kind; was it kept?
   takeTops()        today's tops, which the page's own script has kept meanwhile
   kept()            null, or what runs: {found, fits, same: the steps are the same, fresh: nothing
                     was tapped yet}; it no longer fits after half a day, or where the steps are others
   forget()          the session is over, or begins again */
import { find } from '../dom.js';
import * as record from '../record.js';
import * as running from '../running.js';
import * as store from '../store.js';
import * as log from './log.js';
import * as steps from './steps.js';
import * as walk from './walk.js';

/** @import { Running } from '../running.js'
    @import { App } from './types.js' */

const LONGEST = 12 * 3600 * 1000;

/** @param {App} app */
const keeping = (app, tell) => {

  function keep(key, value) {
    const done = store.set(key, value);
    tell(done ? '' : store.trouble());
    return done;
  }

  function takeTops() {
    const typed = Object.entries(running.read()?.typed || {}).filter(([name]) => name.startsWith('top.'));
    app.typed = { ...app.typed, ...Object.fromEntries(typed) };
  }

  app.keepNow = () => {
    takeTops();
    const { acts, ticks, typed, shape } = app;
    app.now = walk.play(app.list, acts);
    const done = running.keep({ shape, acts, ticks, typed, last: Date.now(), log: log.make(app) });
    tell(done ? '' : store.trouble());
  };

  /** A field as it is typed: kept with every letter. */
  app.type = (name, text) => {
    app.typed = { ...app.typed, [name]: text };
    app.keepNow();
  };

  /** Which steps something was kept for; what is of the form before has the page's data instead.
      @param {{shape?: string, page?: string}} found */
  function shapeOf({ shape, page: text }) {
    if (shape !== undefined || text === undefined) return shape;
    try {
      return steps.shape(steps.list(JSON.parse(text).slots, !!find('#warm-up + ol')));
    } catch {
      return '';
    }
  }

  /** @returns {{found: Running, fits: boolean, same: boolean, fresh: boolean} | null} */
  function kept() {
    const found = running.read();
    if (!found) return null;
    if (!found.acts.length && !found.ticks.length) return { found, fits: true, same: true, fresh: true };
    const shape = shapeOf(found);
    const same = shape === undefined || shape === app.shape;
    const fits = same && Date.now() - found.last < LONGEST;
    // Where no set was done there is nothing to keep, and nothing to ask.
    if (!fits && found.log && record.isLog(found.log) && !record.sum(found.log).done) return null;
    return { found, same, fits, fresh: false };
  }

  function forget() {
    [app.acts, app.ticks, app.typed] = [[], [], {}];
    running.forget();
  }

  return { keep, takeTops, kept, forget };
};

export { keeping };
