/* What the other scripts need of a page: parts found, made and listened to. */

/** The first part that fits; null where there is none. What a page holds is not typed: its own tests
    know what stands on it.
    @param {string} selector
    @param {ParentNode} inside
    @returns {any} */
const find = (selector, inside = document) => inside.querySelector(selector);
/** Every part that fits.
    @param {string} selector
    @param {ParentNode} inside
    @returns {any[]} */
const all = (selector, inside = document) => [...inside.querySelectorAll(selector)];
/** @param {EventTarget} part
    @param {string} kind
    @param {(event: any) => void} run */
const on = (part, kind, run) => part.addEventListener(kind, run);

/** An element: its class or its properties, and what stands in it; nothing empty does.
    @param {string} tag
    @param {string | Record<string, any>} [name]
    @param {...any} inside
    @returns {any} */
function make(tag, name, ...inside) {
  const made = document.createElement(tag);
  Object.assign(made, typeof name === 'object' ? name : name && { className: name });
  made.append(...inside.filter(Boolean));
  return made;
}

/** @param {string} href
    @param {string} words */
const link = (href, words) => make('a', { href }, words);

/** @param {string} words
    @param {(event: any) => void} run */
function button(words, run, className = '') {
  const made = make('button', { type: 'button', className }, words);
  on(made, 'click', run);
  return made;
}

/** The data in a block of the page.
    @param {Element} block
    @returns {any} */
const json = block => JSON.parse(block.textContent ?? '');

/** The texts that are not empty, with something between them.
    @param {string} between
    @param {...any} texts */
const some = (between, ...texts) => texts.filter(Boolean).join(between);

/** Says something in a status line, moved behind the part that somebody has just used, and in sight.
    @param {HTMLElement} line
    @param {string} text
    @param {HTMLElement} [near] */
function tell(line, text, near) {
  if (near) near.after(line);
  line.textContent = text;
  if (near && text) line.scrollIntoView({ block: 'nearest' });
}

export { find, all, on, make, link, button, json, some, tell };
