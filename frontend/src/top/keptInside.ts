/** Keeping the keyboard in a form that lies over the page. */

const REACHED = "button:not(:disabled), select, input:not([type=radio]), input[type=radio]:checked";

/** Tab goes round within the form: from its last field to its first, and back; from outside to the first. */
export function keptInside(form: HTMLElement, event: KeyboardEvent): void {
  if (event.key !== "Tab") return;
  const fields = [...form.querySelectorAll<HTMLElement>(REACHED)];
  const [from, to] = event.shiftKey ? [fields[0], fields.at(-1)] : [fields.at(-1), fields[0]];
  const outside = !form.contains(document.activeElement);
  if (!outside && document.activeElement !== from) return;
  event.preventDefault();
  (outside ? fields[0] : to)?.focus();
}
