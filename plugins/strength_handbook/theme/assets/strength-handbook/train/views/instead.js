/* Session mode where the place is taken or something hurts: a door is chosen, and the walk goes on. */
import { make, button } from '../../dom.js';
import * as mine from '../../mine.js';
import * as page from '../page.js';
import { line, parts } from '../parts.js';

/** @import { App } from '../types.js' */

const STOP = 'stop'; // the key of what has no door: plan/doors.py

/** @param {App} app */
const insteadViews = app => ({
  instead() {
    const { o } = app.step;
    const { called } = parts(app);
    const taken = app.now.doors[o];
    const choose = key => app.act('door', o, 'step', key);
    app.bar('Back', () => app.show('step', true));
    const row = ({ key, name, what }) => {
      const load = app.today.ofDoor(app.step, key);
      const copy = make('p', '', ...what.cloneNode(true).childNodes);
      // A link would leave the walk.
      copy.querySelectorAll('a').forEach(one => one.replaceWith(make('b', '', ...one.childNodes)));
      const stops = key === STOP;
      const words = stops ? 'End the session' : key === taken ? 'Chosen' : 'Do this';
      const choice = button(words, () => (stops ? app.act('go', app.list.length - 1) : choose(key)));
      choice.ariaLabel = `${words}: ${name}`;
      if (!stops) choice.ariaPressed = key === taken;
      return make('li', '', line(name, 'sh-train-part'), copy,
        load && make('p', '', 'Mine: ', mine.said(load, page.known(o).lists)), choice);
    };
    return {
      head: [`Instead of ${called(o)}`],
      inside: [make('ul', 'sh-train-list', ...page.doors(o).map(row)),
        taken && button('As planned after all', () => choose(''))],
    };
  },
});

export { insteadViews };
