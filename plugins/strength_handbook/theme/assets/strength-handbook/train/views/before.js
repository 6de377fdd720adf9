/* Session mode before the first set: the warm-up, and the steps up to today's load. */
import { ladderOf } from '../../attempts.js';
import { on, make } from '../../dom.js';
import * as words from '../../load-words.js';
import * as mine from '../../mine.js';
import { rampOf } from '../../ramps.js';
import * as page from '../page.js';
import { line, parts } from '../parts.js';
import * as steps from '../steps.js';

/** @import { App } from '../types.js' */

/** @param {App} app */
const beforeViews = app => {
  const { heading, done } = parts(app);

  /** Lines to tick off, as texts or parts; ticks are kept. */
  function tickList(lines) {
    return make('ul', 'sh-train-ticks', ...lines.map((text, number) => {
      const name = `${app.now.at}.${number}`;
      const box = make('input', { type: 'checkbox', checked: app.ticks.includes(name) });
      on(box, 'change', () => {
        app.ticks = app.ticks.filter(one => one !== name).concat(box.checked ? name : []);
        app.keepNow();
      });
      return make('li', '', make('label', '', box, text));
    }));
  }

  function warm() {
    done('Warm-up done');
    return {
      head: [app.data.warm],
      inside: [tickList(page.copies(document, '#warm-up + ol > li'))],
    };
  }

  /** Steps up to the first set: the member's own to tick off, or the page's. */
  function up() {
    const { o } = app.step;
    done('Steps done');
    const lines = own(o);
    const drawer = page.upwards(o);
    return {
      head: heading(),
      inside: [line(steps.name(app.step), 'sh-train-set'), ...(lines.length ? [tickList(lines)]
        : [line('Small steps up to today’s load.'), page.borrow(drawer && drawer.lastElementChild)])],
    };
  }

  /** The member's own steps in words: the way up of a test, or the warm-up to today's load. */
  function own(o) {
    const { recipe, me, lists } = page.known(o) || {};
    if (!recipe) return [];
    const { units } = lists;
    const said = ({ load, reps }) => make('span', '', `${words.amount(load, units)} for ${reps.join(' to ')} `,
      mine.plates(words.made(load, units), units));
    const ladder = recipe.l ? ladderOf(recipe, me, lists) : null;
    if (ladder) return ladder.steps.map(said);
    return (recipe.r ? rampOf(recipe, me, lists) : []).map(step => {
      const moves = words.moves(step, units);
      return make('span', '', words.mass(step.grams, units), step.reps && ` × ${step.reps}`, ' ',
        moves && mine.plates(`(${moves})`, units, ' a side'));
    });
  }

  return { warm, up };
};

export { beforeViews };
