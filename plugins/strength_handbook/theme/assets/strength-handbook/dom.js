/* What the other scripts need of a page: parts found, made and listened to. */
(function (site) {
  'use strict';

  const find = (selector, inside = document) => inside.querySelector(selector);
  const all = (selector, inside = document) => [...inside.querySelectorAll(selector)];
  const on = (part, kind, run) => part.addEventListener(kind, run);

  /** An element: its class or its properties, and what stands in it; nothing empty does. */
  function make(tag, name, ...inside) {
    const made = document.createElement(tag);
    Object.assign(made, typeof name === 'object' ? name : name && { className: name });
    made.append(...inside.filter(Boolean));
    return made;
  }

  const link = (href, words) => make('a', { href }, words);

  function button(words, run, className = '') {
    const made = make('button', { type: 'button', className }, words);
    on(made, 'click', run);
    return made;
  }

  const json = block => JSON.parse(block.textContent);

  /** The texts that are not empty, with something between them. */
  const some = (between, ...texts) => texts.filter(Boolean).join(between);

  site.dom = { find, all, on, make, link, button, json, some };
  site.train = {};
})((globalThis.strengthHandbook = globalThis.strengthHandbook || {}));
