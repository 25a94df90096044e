/** The run of the fields: in the order of the page, which is the order in which a body is measured. */

const FIELDS = "input[data-run]";

/** The field so many places on; null at either end. */
export function neighbor(from: HTMLInputElement, by: number): HTMLInputElement | null {
  const fields = [...document.querySelectorAll<HTMLInputElement>(FIELDS)];
  return fields[fields.indexOf(from) + by] ?? null;
}

/** Whether the focus rests on a field in which nothing has been typed. */
export function untouched(place: Element | null): boolean {
  return place instanceof HTMLInputElement && place.matches(FIELDS) && place.dataset["typed"] === undefined;
}

/** The control after this one, in the order of Tab. */
export function nextControl(from: HTMLElement): HTMLElement | null {
  const controls = [...document.querySelectorAll<HTMLElement>("main :is(input, textarea, select, button):not(:disabled)")];
  return controls[controls.indexOf(from) + 1] ?? null;
}
