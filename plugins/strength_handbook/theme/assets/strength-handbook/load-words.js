/* Loads in words, as the pages print them: pure functions, no page in here. */
import { toGrams } from './whole-numbers.js';

/** @import { Lists, Load, OnTop, Scale, Units } from './types.js' */

const SPACE = '\u00a0';
const POUND = 453.59237;

/** Grams as a number in the site's unit, without needless zeros; negative with a proper minus.
    @param {number} grams
    @param {Units} units */
function bare(grams, units) {
  const size = Math.abs(grams);
  let text;
  if (units === 'lb') {
    const pounds = size / POUND;
    const quarter = Math.round(pounds * 4) / 4;
    // Every plate may be half a gram off: what comes near a quarter is meant as one.
    text = Math.abs(pounds - quarter) < 0.03 ? String(quarter) : String(Number(pounds.toFixed(1)));
  } else text = String(size / 1000);
  return grams < 0 && text !== '0' ? '−' + text : text;
}

/** A plate, a pin or a bar as it is stamped: bare in the site's unit, else with its own.
    @param {number} grams
    @param {Units} units */
function stamped(grams, units) {
  const pounds = Math.round(grams / POUND * 4) / 4;
  const inPounds = grams % 50 !== 0 && Math.round(pounds * POUND) === grams;
  const other = units === 'kg' ? inPounds : !inPounds && grams % 50 === 0;
  const own = units === 'kg' ? 'lb' : 'kg';
  return grams && other ? mass(grams, own) : bare(grams, units);
}

/** With its unit.
    @param {number} grams
    @param {Units} units */
const mass = (grams, units) => bare(grams, units) + SPACE + units;

/** A percentage, no finer than half a point where it is not whole.
    @param {number} value */
function percent(value) {
  const nearest = Math.round(value * 2) / 2;
  return (value === nearest ? String(value) : value.toFixed(0)) + SPACE + '%';
}

/** What is wanted, no finer than a tenth.
    @param {number} mg
    @param {Units} units */
function planned(mg, units) {
  const step = units === 'lb' ? 45.359237 : 100;
  const tenths = mg / 1000 / step;
  // Halves go to the even tenth, as the build prints them.
  const near = Math.abs(tenths % 1) === 0.5 ? 2 * Math.round(tenths / 2) : Math.round(tenths);
  return mass(Math.round(near * step), units);
}

/** What a bar, a sled or a belt weighs itself, unless its name says so: ``trap bar 25``.
    @param {Scale} scale
    @param {Units} units */
function own(scale, units) {
  const alone = stamped(scale.own - (scale.collars || 0), units);
  const name = scale.on.split(/\s/).includes(alone) ? scale.on : scale.on + ' ' + alone;
  return scale.collars ? name + ' + collars ' + stamped(scale.collars, units) : name;
}

/** @param {number[]} parts
    @param {Units} units */
const joined = (parts, units) => parts.map(part => stamped(part, units)).join(' · ');

/** Plates that come off and go on: ``off 2.5 · 5, on 10``; empty where none do.
    @param {{off?: number[], on?: number[]}} change
    @param {Units} units */
function moves({ off = [], on = [] }, units) {
  /** @param {string} word
      @param {number[]} parts */
  const said = (word, parts) => (parts.length ? [word + joined(parts, units)] : []);
  return [...said('off ', off), ...said('on ', on)].join(', ');
}

/** How a load is put together: ``= trap bar 25 + 25 · 15 · 1.25 a side``; empty where one thing.
    @param {Load} load
    @param {Units} units */
function made(load, units) {
  const { scale, parts } = load;
  if (!scale || load.grams === null || load.help) return '';
  const list = joined(parts, units);
  switch (scale.kind) {
    case 'bar': return '= ' + own(scale, units) + (list ? ' + ' + list + ' a side' : ', empty');
    case 'hung':
      if (!load.grams) return '';
      if (!scale.own) return list ? '= ' + list + ' on the ' + scale.on : '';
      return '= ' + own(scale, units) + (list ? ' + ' + list : ', empty');
    case 'pivot': return list ? '= ' + list + ' on the free end' : '';
    case 'pin':
      return parts.length ? '= pin ' + stamped(parts[0], units) +
        (parts.length > 1 ? ' + ' + stamped(parts[1], units) : '') : '';
    default: return '';
  }
}

/** A load as it is kept: what took weight off is below zero.
    @param {number} grams
    @param {Units} units */
const kept = (grams, units) => (grams < 0 ? mass(-grams, units) + ' of help' : mass(grams, units));

/** The load itself: ``107.5 kg``, ``+7.5 kg``, ``7 kg of help``.
    @param {Load} load
    @param {Units} units */
function amount(load, units) {
  const { scale } = load;
  if (load.band) return `band ${load.band}, about ${mass(load.help, units)} off`;
  if (load.help) {
    const strongest = scale?.helps?.at(-1);
    return mass(load.help, units) + ' of help' +
      (strongest ? `; more than any one band here (${strongest[1]})` : '');
  }
  if (load.grams === null) {
    const [lightest] = scale?.steps ?? [];
    const heaviest = scale?.steps.at(-1);
    const end = !lightest || !heaviest ? ''
      : load.wanted < lightest[0] * 1000 ? '; the lightest here is ' + mass(lightest[0], units)
        : '; the heaviest here is ' + mass(heaviest[0], units);
    return 'planned ' + planned(load.wanted, units) + end;
  }
  if (scale && scale.kind === 'pivot' && !load.grams) return 'bare bar';
  if (load.body || !scale) return load.grams ? '+' + mass(load.grams, units) : 'body weight';
  return mass(load.grams, units) + (scale.each ? ' in each hand' : '');
}

/** The plan, where what can be put on is another percentage of it; else empty.
    @param {Load} load
    @param {Lists} lists */
function apart(load, lists) {
  if (!load.reference || load.grams === null) return '';
  const body = Number(load.body) / 1e8;
  const actual = (100 * (load.grams + body)) / load.reference;
  const wanted = (100 * (load.wanted / 1000 + body)) / load.reference;
  if (Math.abs(actual - wanted) <= lists.show_planned_from / 1e6) return '';
  return 'planned ' + planned(load.wanted, lists.units) + ', this is ' + percent(actual);
}

/** Half kilograms or whole pounds, as bands and chains are counted.
    @param {number} count
    @param {Units} units */
const counted = (count, units) => String(units === 'lb' ? count : count / 2);

/** Bands or chains: ``With bands a and b: 80 kg at the bottom, 90 half-way, …``.
    @param {OnTop} found
    @param {Units} units */
function onTop({ what, bottom, middle, top, ofBest, share }, units) {
  return `With ${what}: ${counted(bottom, units)} at the bottom, ${counted(middle, units)} half-way, ` +
    `${counted(top, units)} ${units} at the top, where ${what.startsWith('bands') ? 'bands' : 'chains'} are ` +
    percent(share) + (ofBest ? ' of your best.' : ' of it.');
}

/** Two loads as a range, or one where they are the same.
    @param {Load[]} two
    @param {Units} units */
function span(two, units) {
  const [low, high] = two.map(load => amount(load, units));
  return low === high ? low : low + ' to ' + high;
}

/** Plates for ears: ``= trap bar 25 each side: 25, then 15 kilograms``.
    @param {string} text
    @param {Units} units */
const heard = (text, units) => text.replaceAll(' · ', ', then ').replace(/(?:\+ )?([^+]*) a side/, (_, plates) =>
  'each side: ' + plates + (/[a-z]$/.test(plates) ? '' : units === 'lb' ? ' pounds' : ' kilograms'));

/** How a number in the other unit is understood: ``180 lb = 81.647 kg. ``; else empty.
    @param {string} text
    @param {Units} units */
function understood(text, units) {
  const [grams, alone] = [text, text.replace(/[^\d.,]/g, '')].map(one => toGrams(one, units));
  return grams && grams !== alone ? `${text} = ${mass(grams, units)}. ` : '';
}

export { bare, mass, kept, stamped, percent, planned, joined, moves, made, amount, apart, onTop, span, heard, understood };
