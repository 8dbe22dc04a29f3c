// Monthly averages as people paste them.

const MONTHS = 12;

/**
 * The numbers of a text: between them blanks, tabs, lines, semicolons or commas; a comma inside a number is a decimal
 * one when the numbers are set apart by something else. Words such as `Jan` or `°C` are passed over.
 * `{ numbers }`, or `{ odd }` with the first piece that is no number.
 */
export function numbers(text) {
  const clean = text.replace(/[\u2212\u2012\u2013]/g, "-").replace(/\u00a0|\u202f/g, " ");
  // A comma with a blank behind it is always a separator.
  const apart = clean.replace(/,\s+/g, ";").split(/[\s;|]+/).filter(isData);
  const decimal = apart.length > 1 && apart.every((piece) => (piece.match(/,/g) ?? []).length <= 1);
  const pieces = decimal ? apart.map((piece) => piece.replace(",", ".")) : apart.flatMap((piece) => piece.split(",")).filter(isData);
  const values = [];
  for (const piece of pieces) {
    const bare = piece.replace(/(°?[CF]|mm|in|")$/i, "");
    if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare)) return { odd: piece };
    values.push(Number(bare));
  }
  return { numbers: values };
}

const isData = (piece) => /\d/.test(piece);

/**
 * A pasted table: three or two rows of twelve, or twelve rows of two or three, with or without names of months and of
 * rows. The order is lowest, highest, rain; columns are put right when lowest and highest come the other way round.
 * `{ tmin, tmax, rain }` as texts, or null when it is no table.
 */
export function table(text) {
  const lines = text.split(/\r?\n/).map((line) => numbers(line).numbers ?? []).filter((line) => line.length > 0);
  const all = (length) => lines.every((line) => line.length === length);
  let rows = null;
  if ((lines.length === 2 || lines.length === 3) && all(MONTHS)) rows = lines;
  else if (lines.length === MONTHS && (all(2) || all(3))) rows = lines[0].map((_, at) => lines.map((line) => line[at]));
  if (!rows) return null;
  let [tmin, tmax, rain] = rows;
  if (tmin.every((low, at) => low > tmax[at])) [tmin, tmax] = [tmax, tmin];
  const join = (row) => (row ? row.join(" ") : "");
  return { tmin: join(tmin), tmax: join(tmax), rain: join(rain) };
}

const round = (value) => Math.round(value * 100) / 100;

/** °F in °C. */
export const celsius = (fahrenheit) => round(((fahrenheit - 32) * 5) / 9);

/** Inches in mm. */
export const millimetres = (inches) => round(inches * 25.4);
