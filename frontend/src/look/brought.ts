/** Bringing what has just appeared into view. */

/** To be attached to what must be read at once: it is scrolled to as it appears, no farther than it needs. */
export function brought(node: HTMLElement): void {
  node.scrollIntoView({ block: "nearest" });
}
