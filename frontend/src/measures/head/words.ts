/** The words of the choices in the head of the sheet. */

export const POPULATIONS = { none: "none said", women: "women", men: "men" } as const;

export const WAISTS = { natural: "natural waist", lower: "lower", navel: "navel" } as const;

export const RISES = { none: "not said", sitting: "sitting", standing: "standing", outside_minus_inside: "outside less inside leg" } as const;

export const KINDS = { body: "a body", form: "a dress form", chart: "a size of a chart" } as const;

/** The measures that depend on how the rise was taken. */
export const RISE_KEYS: readonly string[] = ["sitting_rise", "standing_rise"];
