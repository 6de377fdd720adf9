/* The lists that loads are picked from. Their file, data/scales.js, puts them beside the modules. */

/** The lists, or undefined until their file is here. */
const lists = () => globalThis.strengthHandbook.lists;

export { lists };
