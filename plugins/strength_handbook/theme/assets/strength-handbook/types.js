/* What goes from script to script, as types: data of the build (phone/*.py), and what is made of it.
   Grams and whole numbers throughout; where something may be missing, it says so.

   @typedef in here is all that type checks need; nothing of it is published. */

/**
 * @typedef {'kg' | 'lb'} Units
 *
 * @typedef {[grams: number, ...places: number[]]} Step  a load that exists, and places in `parts`
 *
 * @typedef {object} Scale  the loads of one kind that exist
 * @property {'bar' | 'hung' | 'pivot' | 'pin' | 'plate' | 'fixed' | string} kind
 * @property {string} on  what the plates hang on, in words
 * @property {number} own  grams of that
 * @property {'down' | 'up' | 'nearest' | string} round
 * @property {number[]} parts
 * @property {Step[]} steps  lightest first
 * @property {number} [slack]  grams that count as none
 * @property {number} [above]  how far above what is wanted the lightest step may be
 * @property {number} [each]  1: in each hand
 * @property {number} [collars]
 * @property {[grams: number, band: string][]} [helps]  bands that take weight off
 * @property {Record<string, [grams: number, reps: number, on: number[], off?: number[]][]>} [ramps]
 * @property {number[][]} [plates]
 * @property {number} [most]  plates that one side takes
 * @property {number} [sleeve]  millimetres
 *
 * @typedef {[name: string, kind: string, share: number, scale?: string]} Base  a tested value
 * @typedef {{n: string[], r?: (number | null)[][], z?: number[]}} StartTable
 * @typedef {[what: string, pull: number, ...adds: number[]]} Band  micrograms
 * @typedef {[what: string, ...adds: number[]]} Chain
 * @typedef {{bands?: Band[], chains?: Chain[], pairs?: number[]}} OnTopList
 *
 * @typedef {object} Lists  data/scales.js
 * @property {Units} units
 * @property {number} show_planned_from  millionths of a percent
 * @property {string[]} doors
 * @property {string[]} door_keys
 * @property {[number, number][]} test_reps
 * @property {{people: number, plate: number, top: number}} swap  seconds
 * @property {Record<string, Base>} bases
 * @property {Record<string, string>} bests  names
 * @property {[percent: number, low: number, high: number, caution: number][]} singles
 * @property {Record<string, StartTable>} starts
 * @property {Record<string, Scale>} scales
 * @property {Record<string, Record<string, [grams: number, hold: number, ...plates: number[]][]>>} strips
 * @property {Record<string, OnTopList>} on_top
 *
 * @typedef {object} Me  numbers of one's own; what is missing is left out
 * @property {number} [body]
 * @property {Record<string, number>} bases
 * @property {Record<string, number>} [bests]  tenths of seconds, or of watts
 *
 * @typedef {object} TestRecipe
 * @property {number} n
 * @property {number} p
 * @property {number} f
 * @property {number[]} w
 * @property {[number, number]} u
 * @property {[number, number]} d
 *
 * @typedef {{u?: number, d?: number, p?: number, l?: Recipe, h?: Recipe, a?: AimRecipe}} Move
 *
 * @typedef {object} AimRecipe  a pace or watts of a tested best
 * @property {string} b  the best
 * @property {number} o  metres of it; 0: it is in watts
 * @property {number} r  metres that paces are counted over
 * @property {string} n  the same in words
 * @property {number[]} [u]  seconds slower
 * @property {number[]} [h]  percent of its speed or power
 * @property {number} [i]  metres of one piece
 * @property {string} [j]  the same in words
 * @property {number} [w]  1: a rowing machine shows watts
 *
 * @typedef {object} Recipe  how one dose's load is made: phone/recipes.py
 * @property {AimRecipe} [a]
 * @property {string} [s]
 * @property {string} [b]
 * @property {number} [p]
 * @property {number} [w]
 * @property {number} [f]
 * @property {number} [m]
 * @property {number[]} [e]
 * @property {number} [x]
 * @property {number} [t]
 * @property {number} [o]
 * @property {number} [r]
 * @property {TestRecipe} [l]
 * @property {string | [count: number, aim: number, factor: number]} [c]
 * @property {[words: string, own: Recipe][]} [k]
 * @property {string} [v]
 * @property {number} [q]
 * @property {number} [z]
 * @property {[place: number, door: Recipe][]} [d]
 * @property {string} [y]
 * @property {[when: string, move: Move][]} [n]
 *
 * @typedef {object} Load  a load, or what of one is wanted
 * @property {number} wanted  milligrams
 * @property {number | null} grams  null where nothing can be put on, below 0 where weight is taken off
 * @property {number[]} parts  of one side, inner first
 * @property {number} help  grams taken off
 * @property {string} band
 * @property {Scale | null} scale
 * @property {bigint} body  gram-percents of the body that move
 * @property {number} reference  grams that percentages are of; 0 for none
 * @property {undefined} [need]
 *
 * @typedef {{need: string, grams?: undefined, parts?: undefined, scale?: undefined}} Need  a number that is
 *   missing: an id, or 'body'
 *
 * @typedef {{grams: number, off: number[], hold: boolean, parts: number[], says?: string}} StripLoad
 * @typedef {{words: string, load: Load, off: number[], on: number[]}} SeriesLoad  sets that are alike
 * @typedef {{grams: number, reps: number, on: number[], off: number[], parts: number[]}} RampStep
 * @typedef {{low: Load, high: Load}} Attempt
 * @typedef {{what: string, hangs: boolean, bottom: number, middle: number, top: number, ofBest: boolean,
 *   share: number}} OnTop
 *
 * @typedef {object} UseData  one use of an exercise: pages/use_html.py
 * @property {string} title
 * @property {boolean} easy
 * @property {string[]} dose  every second piece is a tempo
 * @property {string[]} words
 * @property {string} note
 * @property {string} alone
 * @property {[to: string, words: string, after: string][]} ways
 * @property {Recipe | null} mine
 * @property {[held: number[][], first: string] | null} apart
 */

export {};
