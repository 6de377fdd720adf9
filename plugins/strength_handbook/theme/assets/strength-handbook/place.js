/* Where the handbook lies. The published scripts stand in assets/strength-handbook/. */

const script = typeof document === 'object' ? document.currentScript : null;
const own = script instanceof HTMLScriptElement && script.src ? script.src : null;

/** Address of the handbook's first page; empty where no page is open. */
const root = own ? new URL('../../', own).href : '';

/** Address of a file beside the published scripts; only on a page.
    @param {string} name */
const beside = name => new URL(name, own ?? location.href).href;

export { root, beside };
