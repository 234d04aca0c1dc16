// How numbers are rounded and shown: as the program's rounding.py does, digit for digit.

/**
 * A number in steps of a power of ten, halves away from zero. It works on the digits of the number, so that 0.15 is rounded as it is written.
 * @param {number} value
 * @param {number} places
 * @returns {bigint}
 */
export function steps(value, places) {
  const read = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value));
  if (!read) {
    throw new RangeError(`${value} is no number`);
  }
  const [, sign, whole, fraction = "", exponent = "0"] = read;
  const point = whole.length + Number(exponent) + places;
  if (point < 0) {
    return 0n;
  }
  const digits = (whole + fraction).padEnd(point + 1, "0");
  const found = BigInt(digits.slice(0, point) || "0") + (digits[point] >= "5" ? 1n : 0n);
  return sign ? -found : found;
}

/** @param {bigint} whole */
const grouped = (whole) => String(whole).replace(/\B(?=(\d{3})+$)/g, ",");

/**
 * A number with grouping and no idle decimals: 1000 is 1,000, 12.50 is 12.5.
 * @param {number} value
 * @param {number} [places]
 */
export function showNumber(value, places = 1) {
  const found = steps(value, places);
  const size = found < 0n ? -found : found;
  const one = 10n ** BigInt(places);
  const rest = String(size % one).padStart(places, "0").replace(/0+$/, "");
  const shown = grouped(size / one) + (places && rest ? `.${rest}` : "");
  return found < 0n ? `-${shown}` : shown;
}

/**
 * A time as a coach writes it, in whole seconds or with so many decimals: 0:45, 1:15, 1:02:30.
 * @param {number} seconds
 * @param {number} [places]
 */
export function showTime(seconds, places = 0) {
  const found = steps(seconds, places);
  const size = found < 0n ? -found : found;
  const one = 10n ** BigInt(places);
  const whole = Number(size / one);
  const two = (/** @type {number} */ part) => String(part).padStart(2, "0");
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
  const tail = two(whole % 60) + (places ? `.${String(size % one).padStart(places, "0")}` : "");
  return (found < 0n ? "-" : "") + (hours ? `${hours}:${two(minutes)}:${tail}` : `${minutes}:${tail}`);
}

/**
 * A time as a stopwatch gave it: with as many decimals as it has, two at most.
 * @param {number} seconds
 */
export const showTimed = (seconds) => showTime(seconds, 2).replace(/(\.\d*?)0+$/, "$1").replace(/\.$/, "");

/**
 * The least multiple of a step that is not below a number, to a thousandth of a step.
 * @param {number} value
 * @param {number} step
 */
export const upTo = (value, step) => Math.ceil(Number(steps(value / step, 3)) / 1000) * step;
