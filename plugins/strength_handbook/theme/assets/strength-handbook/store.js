/* What a member keeps on the phone: a few named values, in this browser only. Nothing is sent.

   strengthHandbook.store
     get(key, check)   the value, or undefined. `check(value)` says whether it can be used; what
                       can't be read, is from another version or fails the check is set aside.
     set(key, value)   keeps anything JSON can hold; false if it could not be kept, and then the
                       value from before is still there.
     remove(key)       forgets one value.
     keys(prefix)      keys of all values that begin so.
     all()             every readable value by key.
     aside()           what could not be read, as text, by number and key; forgetAside() forgets it.
     replaced()        what a saved copy took the place of, the same way.
     clear()           forgets everything of this handbook, on this and on a borrowed phone.
     exportText()      everything as the text of one file; importText(text) reads it back and gives
                       '' or says in a sentence what is wrong. A value that is replaced is kept beside it.
     borrowed(yes)     with true, from now on everything is kept for this tab only and forgotten
                       when it closes, and what the phone's owner keeps is left alone; with false,
                       forgets it now. Without an argument: is it so?
     where()           in words, where it is kept: on this phone, or in this tab.
     trouble()         '' or plain sentences for the member: storage blocked, full, or damaged.

   Keys are letters, digits and . : / - _ ; a feature takes one key, or one prefix such as `log/`.
   Two handbooks on one host keep apart: every name begins with the address of the handbook. */
import { root } from './place.js';

/** @typedef {Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>} Shelf
    @typedef {(value: any) => unknown} Check  whether a value can be used */

const VERSION = 1;
const WHAT = 'strength-handbook';
const KEY = /^[\w.:/-]{1,120}$/;
const PREFIX = `${WHAT} ${root ? new URL(root).pathname : '/'} `;
const ASIDE = PREFIX + 'aside ';
const REPLACED = PREFIX + 'replaced ';
const FLAG = PREFIX + 'borrowed';

const SAYS = {
  blocked: 'This browser lets the handbook keep nothing: your numbers are gone when you leave ' +
    'this page.',
  full: 'This phone has no room left: it was not kept, and what was there before still is.',
  aside: 'Something kept here could not be read. It was set aside, not deleted.',
  stuck: 'Something kept here cannot be read, and there is no room to set it aside. It is left ' +
    'as it is, and nothing is kept in its place.',
};
/** @type {Set<keyof typeof SAYS>} */
const troubles = new Set();
/** @type {Set<string>} */
const stuck = new Set();
/** @type {Shelf & Record<string, any>} */
const memory = Object.create({
  /** @this {Record<string, any>}
      @param {string} name */
  getItem(name) { return this[name] ?? null; },
  /** @this {Record<string, any>}
      @param {string} name
      @param {string} text */
  setItem(name, text) { this[name] = text; },
  /** @this {Record<string, any>}
      @param {string} name */
  removeItem(name) { delete this[name]; },
});

/** A browser's storage, or null where it may not be used.
    @param {'localStorage' | 'sessionStorage'} kind */
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

/** Where values are kept now.
    @returns {Shelf} */
function shelf() {
  const found = storage(isBorrowed() ? 'sessionStorage' : 'localStorage');
  if (found) return found;
  troubles.add('blocked');
  return memory;
}

/** @param {Shelf} on */
const namesOn = on => Object.keys(on).filter(name => name.startsWith(PREFIX));
/** @param {Shelf} on */
const empty = on => namesOn(on).forEach(name => on.removeItem(name));

/** The keys of values; neither what was set aside nor the flag. */
function keys(prefix = '') {
  return namesOn(shelf()).filter(name => !name.startsWith(ASIDE) && !name.startsWith(REPLACED) && name !== FLAG)
    .map(name => name.slice(PREFIX.length)).filter(key => key.startsWith(prefix)).sort();
}

/** Write a text under a name; false where it is full or refused.
    @param {string} name
    @param {string} text */
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

/** Keep a text beside the values, under a name that is free.
    @param {string} group
    @param {string} key
    @param {string} text */
function keepBeside(group, key, text) {
  const on = shelf();
  let number = 1;
  for (; ; number += 1) {
    const old = on.getItem(`${group}${number} ${key}`);
    if (old === text) return true;
    if (old === null) return write(`${group}${number} ${key}`, text);
  }
}

/** @param {string} key
    @param {string} text */
const keepAside = (key, text) => keepBeside(ASIDE, key, text);

/** The value in a text; undefined where it is none of ours.
    @param {string} text
    @param {Check} [check] */
function read(text, check) {
  try {
    const { v, d } = JSON.parse(text);
    return v === VERSION && d !== undefined && (!check || check(d)) ? d : undefined;
  } catch {
    return undefined;
  }
}

/** The value of a key; see above.
    @param {string} key
    @param {Check} [check]
    @returns {any} */
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

/** @param {string} key
    @param {unknown} value */
function set(key, value) {
  if (!KEY.test(key)) throw new RangeError('no name for a value: ' + key);
  // Reading first sets aside what can't be read, so that nothing is written over it.
  get(key);
  if (stuck.has(key)) return false;
  return write(PREFIX + key, JSON.stringify({ v: VERSION, d: value }));
}

/** @param {string} key */
const remove = key => shelf().removeItem(PREFIX + key);

/** @returns {Record<string, any>} */
function all() {
  return Object.fromEntries(
    keys().map(key => [key, get(key)]).filter(([, value]) => value !== undefined));
}

/** Texts under names that begin so.
    @param {string} prefix
    @returns {Record<string, string>} */
function group(prefix) {
  const on = shelf();
  return Object.fromEntries(namesOn(on).filter(name => name.startsWith(prefix)).sort()
    .map(name => [name.slice(prefix.length), on.getItem(name) ?? '']));
}

const aside = () => group(ASIDE);
const replaced = () => group(REPLACED);

function forgetAside() {
  namesOn(shelf()).filter(name => name.startsWith(ASIDE)).forEach(name => shelf().removeItem(name));
}

function clear() {
  for (const one of [storage('localStorage'), storage('sessionStorage'), memory]) if (one) empty(one);
  troubles.clear();
  stuck.clear();
}

function exportText() {
  const kept = { what: WHAT, v: VERSION, values: all(), aside: aside(), replaced: replaced() };
  return JSON.stringify(kept, null, 1) + '\n';
}

/** Texts of an exported file, each kept beside the values; false where there is no room.
    @param {string} group
    @param {[name: string, text: unknown][]} texts */
const keptBeside = (group, texts) => texts.every(([name, text]) =>
  keepBeside(group, name.replace(/^\d+ /, ''), String(text)));

/** The values of an exported file.
    @param {string} text
    @throws {Error} where it is none */
function unpack(text) {
  const { what, v, values, aside: more = {}, replaced: before = {} } = JSON.parse(text);
  const entries = Object.entries(values);
  if (what !== WHAT || v !== VERSION || !entries.every(([key]) => KEY.test(key))) {
    throw new RangeError('no file of ours');
  }
  return { entries, more: Object.entries(more), before: Object.entries(before) };
}

/** @param {string} text */
function importText(text) {
  let found;
  try {
    found = unpack(text);
  } catch {
    return 'This file was not written by this handbook. Nothing was changed.';
  }
  const before = found.entries.map(([key, value]) => ({ key, value, old: shelf().getItem(PREFIX + key) }));
  const done = before.every(({ key, value: one, old }) => {
    const value = JSON.stringify({ v: VERSION, d: one });
    return old === value || ((old === null || keepBeside(REPLACED, key, old)) && write(PREFIX + key, value));
  }) && keptBeside(ASIDE, found.more) && keptBeside(REPLACED, found.before);
  if (done) return '';
  for (const { key, old } of before) {
    if (old === null) remove(key);
    else write(PREFIX + key, old);
  }
  troubles.delete('full');
  return 'There is no room for this file on the phone. Nothing was changed.';
}

/** @param {boolean} [yes] */
function borrowed(yes) {
  const session = storage('sessionStorage');
  if (yes !== undefined && session) {
    if (yes) session.setItem(FLAG, 'yes');
    else empty(session);
  }
  return isBorrowed();
}

const where = () => (isBorrowed() ? 'in this tab only' : 'on this phone');

function trouble() {
  const says = new Set(troubles);
  if (namesOn(shelf()).some(name => name.startsWith(ASIDE))) says.add('aside');
  return [...says].map(one => SAYS[one]).join(' ');
}

export { get, set, remove, keys, all, aside, forgetAside, replaced, clear, exportText, importText, borrowed, where, trouble };
