/* Session mode after a reload, where a session was begun before, and once it is kept. */
import * as days from '../../days.js';
import { make, button, link } from '../../dom.js';
import { root } from '../../place.js';
import * as record from '../../record.js';
import * as running from '../../running.js';
import * as store from '../../store.js';
import * as newBest from '../../tools/new-best.js';
import * as results from '../../tools/results.js';
import * as page from '../page.js';
import { line, parts } from '../parts.js';
import * as steps from '../steps.js';

/** @import { App } from '../types.js' */

/** @param {App} app */
const againViews = app => {
  /** After a reload, or the next time the mode is opened. */
  function ask() {
    const { step } = app;
    const { called } = parts(app);
    app.bar('Go on', () => app.show('step', true), 'Start again', () => app.show('sure', true));
    const where = step.o ? called(step.o) : steps.name(step);
    return { head: ['Go on?'], inside: [line(where, 'sh-train-part'), step.o && line(steps.name(step))] };
  }

  /** What is done would be gone. */
  function sure() {
    app.bar('No, go on', () => app.show('step', true), 'Yes, start again', app.again);
    return { head: ['Really start again?'], inside: [line('What is tapped and typed so far is forgotten.')] };
  }

  /** Begun long ago, or the coach has changed the sets since: it goes into the log, or away. */
  function over() {
    const { last = 0, log, same } = app.over ?? {};
    const day = days.long(days.number(new Date(last)));
    const so = record.read(log);
    const { done, of } = so ? record.sum(so) : { done: 0, of: 0 };
    const again = () => {
      app.over = null;
      app.again();
    };
    if (so) app.bar('Keep it in my log', () => app.finish(so, record.free(running.at)), 'Throw it away', again);
    else app.bar('Begin', again);
    return { head: [`Begun on ${day}`], inside: [
      line(same ? 'That is more than half a day ago.' : 'The coach has changed the sets of this session since.'),
      line(so ? `So far: ${done} of ${of} sets, with what you typed.` : 'What was done can no longer be told.'),
    ] };
  }

  /** This session stands in the log of this week already. */
  function twice() {
    const value = app.ready;
    const before = record.of(running.at);
    app.bar('Keep both', () => app.finish(value, record.free(running.at)), 'Back', () => app.show('step', true));
    const lines = before.map(({ key, log }) => {
      const { done, of } = record.sum(log);
      const words = `${days.written(log.day)}: ${done} of ${of} sets`;
      return make('li', '', make('p', '', words),
        button('Put this one in its place', () => app.finish(value, key), 'sh-danger'));
    });
    return { head: ['Already in my log'], inside: [make('ul', 'sh-train-list', ...lines)] };
  }

  /** What a test makes of the best so far: a form for each lift with a good attempt. */
  const bests = () => Object.entries(app.kept.slots).flatMap(([order, one]) => {
    const { recipe, lists } = page.known(order) || {};
    const load = record.heaviest(one);
    return recipe && recipe.l && load !== undefined
      ? [newBest.form(recipe.b, lists, { load, reps: recipe.l.n })] : [];
  });

  /** And of each test whose result is no load. */
  const tested = () => Object.values(app.kept.slots).flatMap(one => results.forms(one.exercise, one.sets));

  function kept() {
    app.bar('Close', app.leave);
    const { done, of } = record.sum(app.kept);
    return { head: [`Kept ${store.where()}.`], inside: [line(`${done} of ${of} sets.`, 'sh-train-part'), ...bests(), ...tested(),
      make('p', '', link(root + 'my-log/', 'My log'))] };
  }

  return { ask, sure, over, twice, kept };
};

export { againViews };
