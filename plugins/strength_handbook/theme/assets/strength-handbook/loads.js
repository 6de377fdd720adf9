/* From a member's numbers to a load that can be put on. No page and no browser in here: the same
   file runs under node, where a test compares it with what the build works out.

   Everything is whole: grams, milligrams (mg) for what is wanted, and millionths of a percent.
   Products are BigInt, because three of them together outgrow a number's 53 bits.

   A recipe says how one dose's load is made; plan/phone.py lists its keys. `lists` is the content
   of data/scales.js. `me` is {body: grams, bases: {id: grams}}; what is missing is left out.
   A load is {wanted, grams, parts, help, scale, body, reference}: `grams` is null where nothing can
   be put on and negative where weight is taken off; a missing number gives {need: id or "body"}. */
(function (site) {
  'use strict';

  const WHOLE = 100000000n; // 100 % in millionths of a percent
  const POUND = 45359237n; // of 0.01 mg; exact by definition, 1959
  const POUND_SLACK = 10000; // mg; a pound is no whole number of grams

  /** A quotient to the nearest whole number, halves to the even one, as the build rounds. */
  function halfEven(over, under) {
    const sign = over < 0n ? -1n : 1n;
    const size = over * sign;
    let whole = size / under;
    const twice = (size % under) * 2n;
    if (twice > under || (twice === under && whole % 2n === 1n)) whole += 1n;
    return Number(whole * sign);
  }

  /** Gram-percents to milligrams. */
  const toMg = (amount, under = 1n) => halfEven(amount * 1000n, WHOLE * under);

  function scaleOf(lists, id) {
    if (id === undefined) return null;
    const scale = lists.scales[id];
    if (!scale) throw new RangeError('no such scale: ' + id);
    return scale;
  }

  const partsOf = (scale, places) => places.map(place => scale.parts[place]);

  /** The step for a target by the scale's rounding; undefined where none may be taken. */
  function best(scale, mg) {
    const slack = (scale.slack || 0) * 1000;
    const below = scale.steps.filter(step => step[0] * 1000 <= mg + slack).pop();
    const above = scale.steps.find(step => step[0] * 1000 >= mg - slack);
    if (scale.round === 'down') return below;
    if (scale.round === 'up') return above;
    if (!below || !above) return below || above;
    return mg - below[0] * 1000 <= above[0] * 1000 - mg + slack ? below : above;
  }

  /** Whole kilograms or pounds of help for a target below zero, in grams. */
  function helpFor(mg, units) {
    const missing = BigInt(-mg - (units === 'lb' ? POUND_SLACK : 0));
    if (missing <= 0n) return 0;
    const [unit, amount] = units === 'lb' ? [POUND, missing * 100n] : [1000000n, missing];
    const count = (amount + unit - 1n) / unit;
    return units === 'lb' ? halfEven(count * POUND, 100000n) : Number(count) * 1000;
  }

  function achieve(wanted, scale, body, reference, lists) {
    const load = { wanted, scale, body, reference, help: helpFor(wanted, lists.units), parts: [] };
    load.grams = null;
    if (load.help) load.grams = -load.help;
    else if (!scale) load.grams = wanted <= 0 ? 0 : null;
    else {
      const step = best(scale, Math.max(wanted, 0));
      if (step) {
        load.grams = step[0];
        load.parts = partsOf(scale, step.slice(1));
      }
    }
    return load;
  }

  /** What of the body moves, in gram-percents; null where the body mass is not known. */
  function bodyOf(recipe, me) {
    if (!recipe.w) return 0n;
    return me.body ? BigInt(me.body) * BigInt(recipe.w) : null;
  }

  /** The load of a recipe; null where today's top or effort decides. */
  function make(recipe, me, lists, percent = recipe.p) {
    if (percent === undefined && recipe.f === undefined && recipe.m === undefined) return null;
    const body = bodyOf(recipe, me);
    const base = percent === undefined ? 0 : me.bases[recipe.b];
    if (base === undefined) return { need: recipe.b };
    if (body === null || (recipe.m !== undefined && !me.body)) return { need: 'body' };
    let wanted;
    if (percent !== undefined) wanted = toMg(BigInt(base) * BigInt(percent) - body);
    else if (recipe.m !== undefined) wanted = toMg(BigInt(me.body) * BigInt(recipe.m));
    else wanted = recipe.f * 1000;
    return achieve(wanted, scaleOf(lists, recipe.s), body, base, lists);
  }

  /** Lightest and heaviest where people judge their effort one repetition off; else null. */
  function range(recipe, me, lists) {
    return recipe.e ? recipe.e.map(percent => make(recipe, me, lists, percent)) : null;
  }

  /** The load of a door: a share of everything that moves today, or its own recipe. */
  function door(recipe, today, me, lists) {
    if (recipe.z === undefined) return make(recipe, me, lists);
    const body = bodyOf(recipe, me);
    if (body === null) return { need: 'body' };
    const moves = BigInt(today.wanted) * 100000n + today.body;
    const wanted = toMg(moves * BigInt(recipe.z) - body * WHOLE, WHOLE);
    const same = halfEven(body, WHOLE) === halfEven(today.body, WHOLE);
    return achieve(wanted, scaleOf(lists, recipe.s), body, same ? today.reference : 0, lists);
  }

  /** The load after a result, from today's; null where it stays or is not known. */
  function next(move, today, me, lists) {
    if (today.grams === null) return null;
    const at = mg => achieve(mg, today.scale, today.body, today.reference, lists);
    const heavier = load => (load && load.grams !== null && load.grams > today.grams ? load : null);
    let load = null;
    if (move.u !== undefined) {
      load = heavier(at((today.grams + move.u) * 1000));
      if (!load && today.scale && today.grams >= 0) {
        const limit = today.grams + (today.scale.slack || 0);
        const above = today.scale.steps.find(step => step[0] > limit);
        load = above ? at(above[0] * 1000) : null;
      }
    } else if (move.d) {
      const moves = BigInt(today.grams) * WHOLE + today.body;
      load = at(toMg(moves * 9n - today.body * 10n, 10n));
    } else if (move.p !== undefined) {
      load = at(toMg(BigInt(today.reference) * BigInt(move.p) - today.body));
    } else if (move.l) {
      load = make(move.l, me, lists);
    } else if (move.h) {
      // A load of nothing says nothing about the next one.
      load = today.grams ? heavier(make(move.h, me, lists)) : null;
    }
    return load && load.grams !== null && load.grams !== undefined && load.grams !== today.grams
      ? load : null;
  }

  /** Steps to a load of a scale: [{grams, reps, on, off, parts}], `parts` as they are on one side then. */
  function way(scale, top) {
    let parts = [];
    return ((scale.ramps || {})[top] || []).map(([grams, reps, ...moved]) => {
      const [on, off = []] = moved.map(places => partsOf(scale, places));
      parts = [...parts.slice(0, parts.length - off.length), ...on];
      return { grams, reps, on, off, parts };
    });
  }

  /** Warm-up steps to today's load or top; none where there is no known. */
  function ramp({ b, s, g, r = g }, me, lists) {
    const base = me.bases[b];
    if (r === undefined || base === undefined) return [];
    const scale = scaleOf(lists, s);
    const [top] = best(scale, toMg(BigInt(base) * BigInt(r))) || [];
    return way(scale, top);
  }

  /** What comes off and goes on one side, in that order; lists of plates from inner to outer. */
  function change(from, to) {
    let same = 0;
    while (same < from.length && from[same] === to[same]) same += 1;
    return { off: from.slice(same).reverse(), on: to.slice(same) };
  }

  /** Today's load with its plates as the steps or the strips leave them: nobody loads twice. */
  function settle(load, recipe, me, lists) {
    if (!load || load.need) return load;
    const known = strips(recipe, load, lists) || (recipe.r || recipe.g
      ? [...ramp(recipe, me, lists), ...way(load.scale, load.grams)] : []);
    const one = known.find(({ grams }) => grams === load.grams);
    return one ? { ...load, parts: one.parts } : load;
  }

  /** The way up to a test: {steps: [{load, reps}], first, up, down}; null where it can't be put on. */
  function ladder(recipe, me, lists) {
    const base = me.bases[recipe.b];
    const body = bodyOf(recipe, me);
    if (!recipe.l || base === undefined || body === null) return null;
    const [percent, low, high] = recipe.l.map(BigInt);
    const scale = scaleOf(lists, recipe.s);
    const expected = BigInt(base) * percent;
    const reference = toMg(expected) / 1000;
    const at = (over, under) =>
      achieve(toMg(expected * over - body * under, under), scale, body, reference, lists);
    const first = at(1n, 1n);
    if (first.grams === null) return null;
    const steps = [];
    let [over, under, lighter] = [1n, 1n, first.grams];
    for (const reps of lists.test_reps.slice().reverse()) {
      over *= 2n * WHOLE;
      under *= 2n * WHOLE + low + high;
      const load = at(over, under);
      if (load.grams !== null && load.grams < lighter) {
        steps.unshift({ load, reps });
        lighter = load.grams;
      }
    }
    // Where several repetitions are tested, no attempt lies above the best single.
    const capped = (over, under) =>
      percent < WHOLE && percent * over > WHOLE * under ? at(WHOLE, percent) : at(over, under);
    const up = [low, high].map(one => capped(WHOLE + one, WHOLE));
    const down = [high, low].map(one => at(2n * WHOLE - one, 2n * WHOLE));
    const above = (one, other) =>
      one.grams !== null && other.grams !== null && one.grams > other.grams;
    return {
      steps, first,
      up: above(up[1], first) ? up : null,
      down: above(first, down[0]) ? down : null,
    };
  }

  /** Parts that are in one list and not in the other, each counted; null where one lacks. */
  function leftOver(parts, taken) {
    const rest = parts.slice();
    for (const part of taken) {
      const place = rest.indexOf(part);
      if (place < 0) return null;
      rest.splice(place, 1);
    }
    return rest.sort((a, b) => a - b);
  }

  /** Loads of a strip set: [{grams, off, hold, parts}]; null where what is here allows none. */
  function strips(recipe, today, lists) {
    if (recipe.c === undefined || today.grams === null || today.help) return null;
    if (typeof recipe.c === 'string') {
      const list = lists.strips[recipe.c];
      const found = list && list[today.grams];
      if (!found) return null;
      let [[, , ...parts]] = found; // the first load comes with all its plates
      return found.map(([grams, hold, ...plates], place) => {
        const off = place ? plates : [];
        parts = parts.slice(0, parts.length - off.length);
        return { grams, off, hold: !!hold, parts };
      });
    }
    const [count, drop] = recipe.c;
    const { scale, body } = today;
    const hung = scale.kind === 'hung';
    let now = { grams: today.grams, off: [], hold: false, parts: today.parts };
    const loads = [now];
    while (loads.length < count) {
      const before = BigInt(now.grams) * WHOLE + body;
      const [low, aim, high] = [-5, 0, 5].map(points =>
        toMg(before * (WHOLE - BigInt(drop) + BigInt(points * 1e6)) - body * WHOLE, WHOLE));
      let taken = null;
      for (const step of scale.steps) {
        const mg = step[0] * 1000;
        const off = hung ? leftOver(now.parts, partsOf(scale, step.slice(1))) : [];
        if (mg < low || mg > high || !off) continue;
        if (!taken || Math.abs(mg - aim) < Math.abs(taken.mg - aim)) taken = { mg, off, step };
      }
      if (!taken) return null;
      const [grams, ...places] = taken.step;
      now = { grams, off: taken.off, hold: false, parts: partsOf(scale, places) };
      loads.push(now);
    }
    return loads;
  }

  /** Micrograms of pull as whole half kilograms, or whole pounds. */
  function halves(pull, units) {
    const fine = units === 'lb' ? halfEven(pull * 100000n, POUND) : halfEven(pull, 500n);
    return halfEven(BigInt(fine), 1000000n);
  }

  /** What bands or chains make of a bar: {what, bottom, middle, top, share}; null without any.
      Loads are counted in half kilograms, or in pounds; the share is of the best where the dose's
      is one of it, else of the load at the top. */
  function onTop(recipe, today, me, lists) {
    if (!recipe.v || !today.grams) return null;
    const list = lists.on_top[recipe.v];
    if (!list) throw new RangeError('no such list: ' + recipe.v);
    let found;
    if (list.chains) {
      const loads = today.scale.steps.filter(step => step[0]);
      found = list.chains[list.pairs[loads.findIndex(step => step[0] === today.grams)]];
    } else {
      const base = me.bases[recipe.b];
      if (recipe.q !== undefined && base === undefined) return null;
      const wanted = BigInt(base || 0) * BigInt(recipe.q || 0);
      let least = Infinity;
      for (const [what, pull, ...adds] of list.bands) {
        const gap = BigInt(pull) * 100n - wanted;
        const distance = halfEven(gap < 0n ? -gap : gap, 100n);
        if (distance < least) [least, found] = [distance, [what, ...adds]];
      }
    }
    const weight = BigInt(today.grams) * 1000000n;
    const [what, ...adds] = found;
    const totals = adds.map(add => weight + BigInt(add));
    const [bottom, middle, top] = totals.map(one => halves(one, lists.units));
    const ofBest = recipe.q !== undefined;
    const whole = ofBest ? BigInt(me.bases[recipe.b]) * 1000000n : totals[2];
    return { what, bottom, middle, top, ofBest, share: halfEven(BigInt(adds[2]) * 100n, whole) };
  }

  /** The top set that the tested value lets expect; null where it is not known. */
  function expectedTop(recipe, me, lists) {
    if (recipe.o === undefined || me.bases[recipe.b] === undefined) return null;
    const body = bodyOf(recipe, me);
    if (body === null) return null;
    const mg = toMg(BigInt(me.bases[recipe.b]) * BigInt(recipe.o) - body);
    const step = best(scaleOf(lists, recipe.s), Math.max(mg, 0));
    return step ? step[0] : null;
  }

  /** The load after a top set of so many grams. */
  function backOff(recipe, top, me, lists) {
    const body = bodyOf(recipe, me);
    if (body === null) return { need: 'body' };
    const moves = BigInt(top) * WHOLE + body;
    const wanted = toMg(moves * BigInt(recipe.t) - body * WHOLE, WHOLE);
    const reference = top + halfEven(body, WHOLE);
    return achieve(wanted, scaleOf(lists, recipe.s), body, reference, lists);
  }

  /** What somebody typed as grams: point or comma, at most three places, with or without a unit;
      null if it is no number. */
  function toGrams(text, units) {
    const found = /^(\d{1,4})(?:[.,](\d{1,3}))?\s*(kgs?|kilos?|lbs?|pounds?|)$/i.exec(text.trim());
    if (!found) return null;
    const [, whole, part = '', unit] = found;
    const thousandths = BigInt(whole + part.padEnd(3, '0'));
    return /^k/i.test(unit || units) ? Number(thousandths) : halfEven(thousandths * POUND, 100000000n);
  }

  site.loads = {
    make, range, door, next, ramp, change, settle, ladder, strips, onTop, expectedTop, backOff, toGrams,
  };
})((globalThis.strengthHandbook = globalThis.strengthHandbook || {}));
