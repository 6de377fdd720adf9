/* What a member keeps on the phone: a few named values, in this browser only. Nothing is sent.

   strengthHandbook.store
     get(key, check)   the value, or undefined. `check(value)` says whether it can be used; what
                       can't be read, is from another version or fails the check is set aside.
     set(key, value)   keeps anything JSON can hold; false if it could not be kept, and then the
                       value from before is still there.
     remove(key)       forgets one value.
     all()             every readable value by key.
     aside()           what was set aside, as text, by key.
     clear()           forgets everything of this handbook, on this and on a borrowed phone.
     exportText()      everything as the text of one file; importText(text) reads it back and gives
                       '' or says in a sentence what is wrong. A value that is replaced is set aside.
     borrowed(yes)     with true, from now on everything is kept for this tab only and forgotten
                       when it closes, and what the phone's owner keeps is left alone; with false,
                       forgets it now. Without an argument: is it so?
     trouble()         '' or plain sentences for the member: storage blocked, full, or damaged.

   Keys are letters, digits and . : / - _ ; a feature takes one key, or one prefix such as `log/`.
   Two handbooks on one host keep apart: every name begins with the address of the handbook. */
(function (site) {
  'use strict';

  const VERSION = 1;
  const WHAT = 'strength-handbook';
  const KEY = /^[\w.:/-]{1,120}$/;
  const own = typeof document === 'object' && document.currentScript;
  const place = own && own.src ? new URL('../../', own.src).pathname : '/';
  const PREFIX = WHAT + ' ' + place + ' ';
  const ASIDE = PREFIX + 'aside ';
  const FLAG = PREFIX + 'borrowed';

  const SAYS = {
    blocked: 'This browser lets the handbook keep nothing: your numbers are gone when you leave ' +
      'this page.',
    full: 'This phone has no room left: it was not kept, and what was there before still is.',
    aside: 'Something kept here could not be read. It was set aside, not deleted.',
    stuck: 'Something kept here cannot be read, and there is no room to set it aside. It is left ' +
      'as it is, and nothing is kept in its place.',
  };
  const troubles = new Set();
  const stuck = new Set();
  const memory = Object.create({
    getItem(name) { return this[name] ?? null; },
    setItem(name, text) { this[name] = text; },
    removeItem(name) { delete this[name]; },
  });

  /** A browser's storage, or null where it may not be used. */
  function storage(kind) {
    try {
      const found = globalThis[kind];
      found.getItem(FLAG);
      return found;
    } catch {
      return null;
    }
  }

  function isBorrowed() {
    const session = storage('sessionStorage');
    return !!session && session.getItem(FLAG) === 'yes';
  }

  /** Where values are kept now. */
  function shelf() {
    const found = storage(isBorrowed() ? 'sessionStorage' : 'localStorage');
    if (found) return found;
    troubles.add('blocked');
    return memory;
  }

  const namesOn = on => Object.keys(on).filter(name => name.startsWith(PREFIX));
  const empty = on => namesOn(on).forEach(name => on.removeItem(name));

  /** The keys of values; neither what was set aside nor the flag. */
  function keys() {
    return namesOn(shelf()).filter(name => !name.startsWith(ASIDE) && name !== FLAG)
      .map(name => name.slice(PREFIX.length)).sort();
  }

  /** Write a text under a name; false where it is full or refused. */
  function write(name, text) {
    try {
      shelf().setItem(name, text);
      troubles.delete('full');
      return true;
    } catch {
      troubles.add('full');
      return false;
    }
  }

  /** Keep a text beside the values, under a name that is free. */
  function keepAside(key, text) {
    const there = aside();
    if (Object.entries(there).some(([name, old]) => old === text && name.endsWith(' ' + key))) {
      return true;
    }
    let number = 1;
    while (`${number} ${key}` in there) number += 1;
    return write(`${ASIDE}${number} ${key}`, text);
  }

  /** The value in a text; undefined where it is none of ours. */
  function read(text, check) {
    try {
      const { v, d } = JSON.parse(text);
      return v === VERSION && d !== undefined && (!check || check(d)) ? d : undefined;
    } catch {
      return undefined;
    }
  }

  function get(key, check) {
    const text = shelf().getItem(PREFIX + key);
    if (text === null) return undefined;
    const value = read(text, check);
    if (value !== undefined) {
      stuck.delete(key);
      return value;
    }
    if (keepAside(key, text)) {
      shelf().removeItem(PREFIX + key);
    } else {
      stuck.add(key);
      troubles.delete('full');
      troubles.add('stuck');
    }
    return undefined;
  }

  function set(key, value) {
    // Reading first sets aside what can't be read, so that nothing is written over it.
    get(key);
    if (stuck.has(key)) return false;
    return write(PREFIX + key, JSON.stringify({ v: VERSION, d: value }));
  }

  const remove = key => shelf().removeItem(PREFIX + key);

  function all() {
    return Object.fromEntries(
      keys().map(key => [key, get(key)]).filter(([, value]) => value !== undefined));
  }

  function aside() {
    const on = shelf();
    return Object.fromEntries(namesOn(on).filter(name => name.startsWith(ASIDE)).sort()
      .map(name => [name.slice(ASIDE.length), on.getItem(name)]));
  }

  function clear() {
    [storage('localStorage'), storage('sessionStorage'), memory].filter(Boolean).forEach(empty);
    troubles.clear();
    stuck.clear();
  }

  function exportText() {
    const kept = { what: WHAT, v: VERSION, values: all(), aside: aside() };
    return JSON.stringify(kept, null, 1) + '\n';
  }

  /** The values of an exported file; throws where it is none. */
  function unpack(text) {
    const { what, v, values, aside: more = {} } = JSON.parse(text);
    const entries = Object.entries(values);
    if (what !== WHAT || v !== VERSION || !entries.every(([key]) => KEY.test(key))) {
      throw new RangeError('no file of ours');
    }
    return { entries, more: Object.entries(more) };
  }

  function importText(text) {
    let found;
    try {
      found = unpack(text);
    } catch {
      return 'This file was not written by this handbook. Nothing was changed.';
    }
    const before = found.entries.map(([key]) => [key, shelf().getItem(PREFIX + key)]);
    const done = before.every(([key, old], place) => {
      const value = JSON.stringify({ v: VERSION, d: found.entries[place][1] });
      return old === value || ((old === null || keepAside(key, old)) && write(PREFIX + key, value));
    }) && found.more.every(([name, old]) => keepAside(name.replace(/^\d+ /, ''), String(old)));
    if (done) return '';
    for (const [key, old] of before) {
      if (old === null) remove(key);
      else write(PREFIX + key, old);
    }
    troubles.delete('full');
    return 'There is no room for this file on the phone. Nothing was changed.';
  }

  function borrowed(yes) {
    const session = storage('sessionStorage');
    if (yes !== undefined && session) {
      if (yes) session.setItem(FLAG, 'yes');
      else empty(session);
    }
    return isBorrowed();
  }

  function trouble() {
    const says = [...troubles];
    if (Object.keys(aside()).length) says.push('aside');
    return says.map(one => SAYS[one]).join(' ');
  }

  site.store = {
    get, set, remove, all, aside, clear, exportText, importText, borrowed, trouble,
  };
})((globalThis.strengthHandbook = globalThis.strengthHandbook || {}));
