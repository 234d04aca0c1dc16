// A QR code, drawn on the device: no network is needed.

import { encode } from "uqr";

const SVG = "http://www.w3.org/2000/svg";

/** The squares of a QR code as one shape.
 * @param {string} text
 * @param {string} of what it opens, as in "QR code of this run" */
export function qrCode(text, of) {
  const { data, size } = encode(text, { ecc: "L", border: 3 });
  const [svg, shape] = [document.createElementNS(SVG, "svg"), document.createElementNS(SVG, "path")];
  const squares = data.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : "")));
  svg.setAttribute("viewBox", `0 0 ${size} ${size}`);
  svg.setAttribute("class", "qr-code");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", `QR code of this ${of}`);
  shape.setAttribute("d", squares.join(""));
  svg.append(shape);
  return svg;
}
