/** Setting inch fractions: a text is cut where `1/2` stands, so that it can be set small. */

export type Run = { readonly text: string } | { readonly over: string; readonly under: string };

/** A fraction, with the space between it and its whole number. */
const FRACTION = /(?<=\d) (\d+)\/(\d+)|(\d+)\/(\d+)/;

/** The runs of a text: `37 1/2"` gives `37`, one half, `″`. */
export function runs(text: string): Run[] {
  const found: Run[] = [];
  let rest = text.replaceAll('"', "″");
  for (let match = FRACTION.exec(rest); match; match = FRACTION.exec(rest)) {
    if (match.index) found.push({ text: rest.slice(0, match.index) });
    found.push({ over: match[1] ?? match[3] ?? "", under: match[2] ?? match[4] ?? "" });
    rest = rest.slice(match.index + match[0].length);
  }
  if (rest) found.push({ text: rest });
  return found;
}

/** A length without its unit, for a row that names the unit once. */
export function bare(text: string): string {
  return text.replace(/\s*(cm|mm|")$|\s+in$/, "");
}
