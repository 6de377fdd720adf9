/* The member's log: finished sessions, and entries made or corrected by hand; with a trend. */
(function ({ days, store, loads, words, mine: { make } }) {
  'use strict';

  const form = document.querySelector('[data-sh-log]');
  const { units } = form.dataset;
  const { exercise } = form.elements;
  const [list, drawing, says] = ['list', 'trend', 'says'].map(name => document.getElementById('sh-log-' + name));
  const names = Object.fromEntries([...exercise.options].map(one => [one.value, one.text]));
  let changed = -1; // place of the entry that the form corrects

  const isEntry = one => days.parse(one.date) !== null && one.exercise in names &&
    ['load', 'reps', 'effort'].every(key => one[key] === undefined || Number.isInteger(one[key])) &&
    (one.note === undefined || typeof one.note === 'string');
  const kept = () => store.get('by-hand', all => all.every(isEntry)) || [];

  function line({ load, reps, effort, note }) {
    return [load && words.mass(load, units) + (reps ? ' × ' + reps : ''), !load && reps && reps + ' reps',
      effort && 'effort ' + effort, note].filter(Boolean).join(', ');
  }

  function trend(entries) {
    const points = entries.filter(one => one.load);
    drawing.hidden = points.length < 2;
    if (drawing.hidden) return;
    const spread = (values, size) => {
      const [low, high] = [Math.min(...values), Math.max(...values)];
      return values.map(one => 8 + (size - 16) * (high > low ? (one - low) / (high - low) : 0.5));
    };
    const xs = spread(points.map(one => days.parse(one.date)), 300);
    const ys = spread(points.map(one => -one.load), 80);
    const [svg, says] = drawing.children;
    svg.firstElementChild.setAttribute('points', xs.map((x, place) => `${x},${ys[place]}`).join(' '));
    const [first, last] = [points[0], points[points.length - 1]].map(one => words.mass(one.load, units));
    says.textContent = `${points.length} entries, from ${first} to ${last}.`;
  }
})(globalThis.strengthHandbook);
