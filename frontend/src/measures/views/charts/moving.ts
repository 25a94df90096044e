/** Where a key leads in the grid of a chart. */

export interface Cell { readonly row: number; readonly column: number }

/** What matters of the field: where the caret stands, and whether something was typed. */
export interface Caret { readonly start: number; readonly end: number; readonly length: number; readonly typed: boolean }

/** The cell to go to; null when the key stays with the field, or there is no cell there. */
export function cellAfter(key: string, shift: boolean, from: Cell, rows: number, columns: number, caret: Caret): Cell | null {
  const by = step(key, shift, caret);
  if (!by) return null;
  const to = { row: from.row + by.row, column: from.column + by.column };
  return to.row >= 0 && to.row < rows && to.column >= 0 && to.column < columns ? to : null;
}

/** Left and right move within what was typed; at its ends, and where nothing was, to the next cell. */
function step(key: string, shift: boolean, caret: Caret): Cell | null {
  switch (key) {
    case "Enter": return { row: shift ? -1 : 1, column: 0 };
    case "ArrowDown": return { row: 1, column: 0 };
    case "ArrowUp": return { row: -1, column: 0 };
    case "ArrowLeft": return shift || (caret.typed && caret.end > 0) ? null : { row: 0, column: -1 };
    case "ArrowRight": return shift || (caret.typed && caret.start < caret.length) ? null : { row: 0, column: 1 };
    default: return null;
  }
}
