/* Loads in words, as the pages print them: pure functions, no page in here. */
(function (site) {
  'use strict';

  const SPACE = '\u00a0';
  const POUND = 453.59237;

  /** Grams as a number in the site's unit, without needless zeros; negative with a proper minus. */
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

  const mass = (grams, units) => bare(grams, units) + SPACE + units;

  /** A percentage, no finer than half a point where it is not whole. */
  function percent(value) {
    const nearest = Math.round(value * 2) / 2;
    return (value === nearest ? String(value) : value.toFixed(0)) + SPACE + '%';
  }

  /** What is wanted, no finer than a tenth. */
  function planned(mg, units) {
    const step = units === 'lb' ? 45.359237 : 100;
    const tenths = mg / 1000 / step;
    // Halves go to the even tenth, as the build prints them.
    const near = Math.abs(tenths % 1) === 0.5 ? 2 * Math.round(tenths / 2) : Math.round(tenths);
    return mass(Math.round(near * step), units);
  }

  /** What a bar, a sled or a belt weighs itself, unless its name says so: ``trap bar 25``. */
  function own(scale, units) {
    const alone = bare(scale.own - (scale.collars || 0), units);
    const name = scale.on.split(/\s/).includes(alone) ? scale.on : scale.on + ' ' + alone;
    return scale.collars ? name + ' + collars ' + bare(scale.collars, units) : name;
  }

  const joined = (parts, units) => parts.map(part => bare(part, units)).join(' · ');

  /** Plates that come off and go on: ``off 2.5 · 5, on 10``; empty where none do. */
  function moves({ off = [], on = [] }, units) {
    const said = (word, parts) => (parts.length ? [word + joined(parts, units)] : []);
    return [...said('off ', off), ...said('on ', on)].join(', ');
  }

  /** How a load is put together: ``= trap bar 25 + 25 · 15 · 1.25 a side``; empty where one thing. */
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
        return parts.length ? '= pin ' + bare(parts[0], units) +
          (parts.length > 1 ? ' + ' + bare(parts[1], units) : '') : '';
      default: return '';
    }
  }

  /** The load itself: ``107.5 kg``, ``+7.5 kg``, ``7 kg of help``. */
  function amount(load, units) {
    const { scale } = load;
    if (load.help) return mass(load.help, units) + ' of help';
    if (load.grams === null) {
      const steps = scale ? scale.steps : [];
      const end = !steps.length ? ''
        : load.wanted < steps[0][0] * 1000 ? '; the lightest here is ' + mass(steps[0][0], units)
          : '; the heaviest here is ' + mass(steps.at(-1)[0], units);
      return 'planned ' + planned(load.wanted, units) + end;
    }
    if (scale && scale.kind === 'pivot' && !load.grams) return 'bare bar';
    if (load.body || !scale) return load.grams ? '+' + mass(load.grams, units) : 'body weight';
    return mass(load.grams, units) + (scale.each ? ' in each hand' : '');
  }

  /** The plan, where what can be put on is another percentage of it; else empty. */
  function apart(load, lists) {
    if (!load.reference || load.grams === null) return '';
    const body = Number(load.body) / 1e8;
    const actual = (100 * (load.grams + body)) / load.reference;
    const wanted = (100 * (load.wanted / 1000 + body)) / load.reference;
    if (Math.abs(actual - wanted) <= lists.show_planned_from / 1e6) return '';
    return 'planned ' + planned(load.wanted, lists.units) + ', this is ' + percent(actual);
  }

  /** Half kilograms or whole pounds, as bands and chains are counted. */
  const counted = (count, units) => String(units === 'lb' ? count : count / 2);

  /** Bands or chains: ``With bands a and b: 80 kg at the bottom, 90 half-way, …``. */
  function onTop({ what, bottom, middle, top, ofBest, share }, units) {
    return `With ${what}: ${counted(bottom, units)} at the bottom, ${counted(middle, units)} half-way, ` +
      `${counted(top, units)} ${units} at the top, where ${what.startsWith('bands') ? 'bands' : 'chains'} are ` +
      percent(share) + (ofBest ? ' of your best.' : ' of it.');
  }

  /** Which band takes so much off, and what is left; empty where none is asked for. */
  function helping(recipe, load, lists) {
    if (!recipe.k || !load.help || !lists.help.length) return '';
    const { help, reference } = load;
    const band = lists.help.find(one => one[1] >= help);
    const body = Number(load.body) / 1e8;
    const share = grams => (100 * grams) / reference;
    const left = grams => percent(share(grams)) + ' of your best total.';
    if (reference && (!band || help < band[1] - help)) {
      const off = Math.abs(share(load.wanted / 1000));
      if (off <= lists.near_enough / 1e6) {
        return 'Take no band: body weight alone is near enough, ' + left(body);
      }
    }
    if (!band) return `No one band here takes so much off; the strongest is ${lists.help.at(-1)[0]}.`;
    return `Take band ${band[0]}: about ${mass(band[1], lists.units)} off` +
      (reference ? ', which leaves ' + left(body - band[1]) : '.');
  }

  /** Two loads as a range, or one where they are the same. */
  function span(two, units) {
    const [low, high] = two.map(load => amount(load, units));
    return low === high ? low : low + ' to ' + high;
  }

  /** Plates for ears: ``= trap bar 25 each side: 25, then 15 kilograms``. */
  const heard = (text, units) => text.replaceAll(' · ', ', then ').replace(/(?:\+ )?([^+]*) a side/,
    'each side: $1 ' + (units === 'lb' ? 'pounds' : 'kilograms'));

  /** How a number in the other unit is understood: ``180 lb = 81.647 kg. ``; else empty. */
  function understood(text, units) {
    const [grams, alone] = [text, text.replace(/[^\d.,]/g, '')].map(one => site.loads.toGrams(one, units));
    return grams && grams !== alone ? `${text} = ${mass(grams, units)}. ` : '';
  }

  site.words = {
    bare, mass, percent, planned, joined, moves, made, amount, apart, onTop, helping, span, heard, understood,
  };
})((globalThis.strengthHandbook = globalThis.strengthHandbook || {}));
