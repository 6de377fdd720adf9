/* Session mode: on the page of a session, and only there, loads what is in train/. */
(function (site) {
  'use strict';

  const { find, make } = site.dom;
  const own = document.currentScript.src;

  if (site.train || !find('.sh-train-data') || !globalThis.HTMLDialogElement) return;
  site.train = {};
  const src = own.replace(/handbook(?=[.\w]*$)/, 'train'); // they share their version
  document.head.append(make('script', { src }));
})(globalThis.strengthHandbook);
