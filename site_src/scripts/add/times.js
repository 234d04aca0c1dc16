// Times as on a pace clock: read, shown, and said what is wrong with one, in the words of the command line (units.py). Pure.

import * as words from "./words.js";

const CLOCK = /^(?:(?:(\d{1,2}):)?(\d{1,3}):)(\d{1,3})(\.\d{1,2})?$/;
const DAY_S = 86_400;
const MOST_SHOWN = 40;

/** Seconds as a coach writes them: 0:45, 1:15, 1:02:30. */
function show(seconds) {
  const whole = Math.floor(seconds + 0.5);
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60), whole % 60];
  const two = (number) => String(number).padStart(2, "0");
  return hours ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}

/** The pieces of a text that is written as a time; null where it is not. */
function pieces(text) {
  const match = CLOCK.exec(text);
  if (!match) {
    return null;
  }
  const [, h, m, s, fraction] = match;
  const [hours, minutes, whole] = [Number(h ?? 0), Number(m), Number(s)];
  return { h, m, s, hours, minutes, whole, seconds: 3600 * hours + 60 * minutes + whole + Number(fraction ?? 0) };
}

function amiss({ h, m, s, hours, minutes, whole, seconds }) {
  if (whole > 59) {
    return ["seconds run from 00 to 59", `write ${show(seconds)}${hours ? "" : `, or ${whole} for seconds`}`];
  }
  const reason =
    s.length !== 2 ? "seconds have two digits"
    : minutes > 59 ? "minutes run from 00 to 59"
    : (h && m.length !== 2) || m.length > 2 ? "minutes have two digits"
    : "";
  return reason ? [reason, `write ${show(seconds)}`] : null;
}

/** What is wrong with a time, a text or a number of seconds: `{message, mend}`, or null where it will do. */
function problem(value) {
  const told = typeof value === "string" ? words.quoted(value) : String(value);
  const read = typeof value === "string" ? pieces(value) : { seconds: value };
  if (!read) {
    const letters = [...value];
    const short = letters.length <= MOST_SHOWN ? told : words.quoted(`${letters.slice(0, MOST_SHOWN).join("")}…`);
    return { message: `${short} is no time`, mend: "write minutes and seconds as m:ss, say 1:15, or a number of seconds" };
  }
  const [reason, mend] = (typeof value === "string" && amiss(read)) || [];
  if (reason) {
    return { message: `${told} is no time: ${reason}`, mend };
  }
  if (read.seconds <= 0) {
    return { message: `${told} is no time: it must be more than zero`, mend: "write a time above 0:00, or leave it out" };
  }
  if (read.seconds >= DAY_S) {
    return { message: `${told} is no time: it is a day or longer`, mend: "write a shorter one; a bare number is seconds" };
  }
  return null;
}

/** A time as it stands in an entry, shown in one way; as it is written where it is none. */
function tidy(value) {
  return problem(value) ? String(value) : show(typeof value === "string" ? pieces(value).seconds : value);
}

export { problem, show, tidy };
