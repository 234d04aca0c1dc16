// Bits as letters and figures that are not mistaken for each other (Crockford's base 32), with a check at the end. Pure.

const LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const CHECK = 1021; // a prime below 32 × 32: two letters hold what is left

export class Bits {
  /** @param {number[]} bits */
  constructor(bits = []) {
    this.bits = bits;
    this.at = 0;
  }

  /** @param {number} value
   * @param {number} width */
  put(value, width) {
    if (!Number.isInteger(value) || value < 0 || value >= 2 ** width) {
      throw new RangeError(`${value} does not fit into ${width} bits`);
    }
    for (let bit = width - 1; bit >= 0; bit--) {
      this.bits.push(Math.floor(value / 2 ** bit) % 2);
    }
  }

  /** @param {number} width */
  take(width) {
    if (this.at + width > this.bits.length) {
      throw new RangeError("the code is too short");
    }
    return this.bits.slice(this.at, (this.at += width)).reduce((value, bit) => value * 2 + bit, 0);
  }
}

/** Bits as groups of four letters, with a check at the end.
 * @param {Bits} bits */
export function letters({ bits }) {
  const padded = [...bits, ...Array((5 - (bits.length % 5)) % 5).fill(0)];
  const values = Array.from({ length: padded.length / 5 }, (_, k) => padded.slice(5 * k, 5 * k + 5).reduce((value, bit) => value * 2 + bit, 0));
  const check = checkOf(values);
  return grouped([...values, Math.floor(check / 32), check % 32].map((value) => LETTERS[value]).join(""));
}

/** @param {number[]} values */
const checkOf = (values) => values.reduce((sum, value) => (sum * 33 + value + 1) % CHECK, 7);

/** @param {string} text */
const grouped = (text) => text.replace(/.{4}(?=.)/g, "$& ");

/**
 * The letters of a code as typed; a slip that looks alike is taken for what was meant.
 * @param {string} text
 */
const plain = (text) => text.toUpperCase().replace(/[\s-]/g, "").replaceAll("O", "0").replace(/[IL]/g, "1");

/**
 * The bits of a code.
 * @param {string} text
 * @returns {Bits | null} null where it is mistyped
 */
export function bitsOf(text) {
  const values = [...plain(text)].map((letter) => LETTERS.indexOf(letter));
  const [high, low] = values.splice(-2);
  const isWhole = values.length > 10 && !values.includes(-1) && high * 32 + low === checkOf(values);
  return isWhole ? new Bits(values.flatMap((value) => [16, 8, 4, 2, 1].map((bit) => (value & bit ? 1 : 0)))) : null;
}
