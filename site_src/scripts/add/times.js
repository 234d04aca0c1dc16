// Times as on a pace clock, shown in one way. Pure.

const CLOCK = /^(?:(?:(\d{1,2}):)?(\d{1,3}):)(\d{1,3})(\.\d{1,2})?$/;

/** Seconds as a coach writes them: 0:45, 1:15, 1:02:30.
 * @param {number} seconds */
function show(seconds) {
  const whole = Math.floor(seconds + 0.5);
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60), whole % 60];
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return hours ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}

/** A time in seconds; NaN where it is none.
 * @param {unknown} value */
export function secondsOf(value) {
  if (typeof value === "number" && value > 0) {
    return value;
  }
  const [, hours = "0", minutes, seconds, fraction = "0"] = CLOCK.exec(String(value)) ?? [];
  return minutes ? 3600 * Number(hours) + 60 * Number(minutes) + Number(seconds) + Number(fraction) : NaN;
}

/** A time as it stands in an entry; as it is written where it is none.
 * @param {unknown} value */
export function tidy(value) {
  const seconds = secondsOf(value);
  return Number.isNaN(seconds) ? String(value) : show(seconds);
}
