/* Session mode: on the page of a session, and only there, loads what is in train/. */
(function (site) {
  'use strict';

  const folder = new URL('train/', document.currentScript.src).href;

  function load(tag, values) {
    document.head.append(Object.assign(document.createElement(tag), values));
  }

  site.ready(() => {
    if (!document.querySelector('.sh-train-data') || !globalThis.HTMLDialogElement) return;
    if (site.train) return site.train.start && site.train.start();
    site.train = {};
    load('link', { rel: 'stylesheet', href: folder + 'train.css' });
    for (const name of ['steps', 'walk', 'clock', 'page', 'log', 'guide', 'views', 'screen']) {
      load('script', { src: folder + name + '.js', async: false }); // they build on each other
    }
  });
})((globalThis.strengthHandbook = globalThis.strengthHandbook || {}));
