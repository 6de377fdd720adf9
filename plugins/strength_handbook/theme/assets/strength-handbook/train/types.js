/* What goes through session mode, as types; nothing of it is published. */

/**
 * @typedef {Record<string, any>} Slot  a slot of phone/train.py
 *
 * @typedef {object} Step  one thing to do: see steps.js
 * @property {'warm' | 'up' | 'top' | 'set' | 'end'} kind
 * @property {string} o  order; empty for warm-up and end
 * @property {number} [n]
 * @property {number} [of]
 * @property {number} [few]
 * @property {string} [side]
 * @property {number} [part]
 * @property {number} [parts]
 * @property {number} [reps]
 * @property {number} [leaves]
 * @property {boolean} [strip]
 * @property {number} [alike]
 * @property {[number, number]} [each]
 * @property {number} [metres]
 * @property {number} [work]
 * @property {number} [least]
 * @property {boolean} [hold]
 * @property {number} [rest]
 * @property {number} [every]
 * @property {boolean} [attempt]
 * @property {number} [many]
 * @property {[floor: number, cap: number] | null} [open]
 * @property {boolean} [turn]
 * @property {boolean} [last]
 * @property {[fewest: number, most: number]} [all]
 * @property {Record<string, any>[]} [v]
 *
 * @typedef {[what: string, which: any, at: number, more?: any]} Act  a tap: see walk.js
 * @typedef {'done' | 'miss' | 'out'} Mark
 * @typedef {{from: number, until?: number, chain?: string}} Rest  milliseconds
 *
 * @typedef {object} Played  where somebody is
 * @property {number} at
 * @property {(Mark | undefined)[]} marks
 * @property {number} started
 * @property {Rest | null} rest
 * @property {number} vary
 * @property {Record<number, number>} reps
 * @property {Record<string, string>} doors
 * @property {Record<number, boolean>} cut
 * @property {Record<number, number>} held
 *
 * @typedef {{word: string, left?: number, since?: number}} Clock  seconds
 *
 * @typedef {{head: any[], inside: any[], more?: any[]}} View  a heading, what stands under it, what may be opened below
 *
 * @typedef {object} App  the session, where somebody is in it, and what a tap can do
 * @property {Record<string, any>} data  of the page
 * @property {Record<string, Slot>} slots  by order
 * @property {Step[]} list
 * @property {string} shape
 * @property {Act[]} acts
 * @property {string[]} ticks
 * @property {Record<string, string>} typed
 * @property {import('./clock.js').On} on
 * @property {string} view
 * @property {Played} now
 * @property {Step} step
 * @property {(() => void) | null} beat
 * @property {import('./turns.js').State | null} turn
 * @property {boolean} waits  somebody else lifts
 * @property {ReturnType<typeof import('./today.js').today>} today
 * @property {(import('../running.js').Running & {same: boolean}) | null} over  what no longer fits
 * @property {import('../record.js').Log} ready  to be kept
 * @property {import('../record.js').Log} kept
 * @property {number[]} counting  places of the set or strips whose repetitions are still asked for
 * @property {(what: string, which: any, view?: string, more?: any) => void} act
 * @property {() => void} again
 * @property {(value: import('../record.js').Log, key: string) => void} finish
 * @property {(order: string, key: string) => string} doorName
 * @property {() => void} leave
 * @property {(words: string, run: () => void, besides?: string, other?: () => void) => void} bar
 * @property {(view: string, focus?: boolean) => void} show
 * @property {() => void} keepNow
 * @property {() => void} keepSignals
 * @property {(name: string, text: string) => void} type
 */

export {};
