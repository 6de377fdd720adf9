/* Masses as whole numbers: grams, milligrams (mg) for what is wanted, and millionths of a percent.
   Products are BigInt, because three of them together outgrow a number's 53 bits. */

/** @import { Units } from './types.js' */

const WHOLE = 100000000n; // 100 % in millionths of a percent

const POUND = 45359237n; // of 0.01 mg; exact by definition, 1959

/** A quotient to the nearest whole number, halves to the even one, as the build rounds.
    @param {bigint} over
    @param {bigint} under */
function halfEven(over, under) {
  const sign = over < 0n ? -1n : 1n;
  const size = over * sign;
  let whole = size / under;
  const twice = (size % under) * 2n;
  if (twice > under || (twice === under && whole % 2n === 1n)) whole += 1n;
  return Number(whole * sign);
}

/** Gram-percents to milligrams.
    @param {bigint} amount */
const toMg = (amount, under = 1n) => halfEven(amount * 1000n, WHOLE * under);

/** What somebody typed as grams: point or comma, at most three places, with or without a unit;
    null if it is no number.
    @param {string} text
    @param {Units | string} units */
function toGrams(text, units) {
  const found = /^(\d{1,4})(?:[.,](\d{1,3}))?\s*(kgs?|kilos?|lbs?|pounds?|)$/i.exec(text.trim());
  if (!found) return null;
  const [, whole, part = '', unit] = found;
  const thousandths = BigInt(whole + part.padEnd(3, '0'));
  return /^k/i.test(unit || units) ? Number(thousandths) : halfEven(thousandths * POUND, 100000000n);
}

export { WHOLE, POUND, halfEven, toMg, toGrams };
