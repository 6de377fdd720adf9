/* Tempo and signals: the buttons that show a repetition second by second, or switch a signal on. */
import { make, button } from '../dom.js';
import * as clock from './clock.js';

/** @import { App } from './types.js' */

/** A button that is in or out, as `run` says. */
function toggle(words, is, run) {
  const made = button(words, () => { made.ariaPressed = run(); });
  made.ariaPressed = is;
  return made;
}

/** Switches for the signals that the browser has.
    @param {App} app */
function signals(app) {
  const some = [['sound', 'Sound'], ['buzz', 'Vibration']].filter(([name]) => clock.can[name]());
  return some.length ? make('p', 'sh-train-row', 'Signal: ', ...some.map(([name, words]) =>
    toggle(words, !!app.on[name], () => {
      app.on = { ...app.on, [name]: !app.on[name] };
      app.keepSignals();
      clock.wake(app.on);
      clock.signal(app.on);
      return app.on[name];
    }))) : '';
}

const READY = 3; // seconds between the tap and the first repetition

/** A tempo as a word, the number of the repetition and a weight that moves; it ends with the last one.
    `parts` as clock.tempo takes them, `reps` how many there are, 0 where nobody knows.
    @param {App} app */
function tempo(app, words, parts, reps) {
  const word = make('span', 'sh-train-beat');
  const weight = make('i');
  const track = make('span', 'sh-train-track', weight);
  let shown;
  const stop = () => {
    app.beat = null;
    track.hidden = true;
    starter.ariaPressed = false;
  };
  /** Before the first repetition the weight waits where that begins. */
  const ready = (first, seconds) => (first === null || first === 'over' ? first
    : { ...first, word: 'Get ready', left: Math.ceil(seconds), to: first.from, rep: 0 });
  const runs = start => () => {
    const seconds = (Date.now() - start) / 1000 - READY;
    const found = seconds < 0 ? ready(clock.tempo(parts, reps, 0), -seconds) : clock.tempo(parts, reps, seconds);
    if (found === null) return;
    if (found === 'over') {
      word.textContent = `${reps} of ${reps}: done`;
      clock.signal(app.on, true);
      stop();
      return;
    }
    const count = found.rep ? `${found.rep}${reps ? ' of ' + reps : ''}: ` : '';
    word.textContent = `${count}${found.word} ${found.left}`;
    const phase = [found.rep, found.word, found.to].join();
    if (phase === shown) return;
    shown = phase;
    weight.animate({ bottom: [found.from, found.to].map(at => at * 80 + '%') },
      { duration: found.left * 1000, fill: 'forwards' });
    clock.signal(app.on);
  };
  track.hidden = true;
  const starter = toggle(words, false, () => {
    shown = undefined;
    app.beat = app.beat ? null : runs(Date.now());
    word.textContent = '';
    track.hidden = !app.beat;
    if (app.beat) app.beat();
    return !!app.beat;
  });
  return make('div', 'sh-train-tempo', starter, word, track);
}

export { toggle, signals, tempo };
