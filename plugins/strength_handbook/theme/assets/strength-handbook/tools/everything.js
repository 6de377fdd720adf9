/* Everything that is kept on the phone, for people: names, loads in the site's unit, days. */
import * as days from '../days.js';
import { make } from '../dom.js';
import * as words from '../load-words.js';
import * as record from '../record.js';
import * as store from '../store.js';
import { doneSet } from './done-words.js';

/** Any value in words: lists and names with what they hold. Numbers named as grams are loads. */
function inWords(value, name, units) {
  if (typeof value === 'number' && /^(body|grams|load)$/.test(name)) return words.mass(value, units);
  if (typeof value === 'number' && name === 'best') return `${value / 10} (seconds or watts)`;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (value === null || value === '') return '–';
  if (typeof value !== 'object') return String(value);
  const parts = Array.isArray(value) ? value.map(one => inWords(one, name, units))
    : Object.entries(value).map(([key, one]) => `${key}: ${inWords(one, name === 'bases' ? 'grams' : name === 'bests' ? 'best' : key, units)}`);
  return parts.join(Array.isArray(value) ? '; ' : ', ');
}

/** A value under its key: what it is, and what stands in it. */
function entry(key, value, units) {
  const at = record.place(key);
  const log = record.read(value);
  if (at && log) {
    const { done, of } = record.sum(log);
    return [`Log: ${at.program}, week ${at.week}, ${at.session}`,
      `${days.written(log.day)}, ${done} of ${of} sets` + Object.entries(log.slots).filter(([, one]) => one.sets.length)
        .map(([order, { sets }]) => `; ${order}: ` + sets.map(one => doneSet(one, units)).join(', ')).join('') +
      (log.effort === null ? '' : `; effort ${log.effort}`) + (log.note ? '; ' + log.note : '')];
  }
  if (key === 'mine') return ['My numbers', inWords(value, '', units)];
  if (key === 'by-hand') return ['My log, by hand', inWords(value, '', units)];
  if (key === 'together') return ['Others at my bar', inWords(value.people, '', units)];
  if (key.startsWith('train/') && value.acts) {
    return ['A session under way: ' + key.slice(6), `${value.acts.length} taps; ` + inWords(value.typed || {}, '', units)];
  }
  if (key.startsWith('setup/')) return ['My set-up: ' + key.slice(6), inWords(value, '', units)];
  if (key.startsWith('start/')) return ['My week 1 began: ' + key.slice(6), days.written(value)];
  if (key.startsWith('last/')) return ['Week opened last: ' + key.slice(5), String(value)];
  return [key, inWords(value, '', units)];
}

/** Terms and what is kept under each; what could not be read, and what was replaced, as it was. */
const everything = units => {
  const rows = [
    ...Object.entries(store.all()).map(([key, value]) => entry(key, value, units)),
    ...Object.entries(store.aside()).map(([key, text]) => ['Could not be read: ' + key.replace(/^\d+ /, ''), text]),
    ...Object.entries(store.replaced()).map(([key, text]) => ['Before a copy was read: ' + key.replace(/^\d+ /, ''), text]),
  ];
  return [rows.length ? make('dl', '', ...rows.flatMap(([name, what]) => [make('dt', '', name), make('dd', '', what)]))
    : make('p', '', 'Nothing.')];
};

export { everything };
