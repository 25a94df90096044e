/** Setting words on a piece: broken into lines that fit its room. */

/** The lines of a text, each at most so many characters; null when a word is longer or there are too many lines. */
export function broken(text: string, longest: number, most: number): readonly string[] | null {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (word.length > longest) return null;
    if (last !== undefined && last.length + 1 + word.length <= longest) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.length <= most ? lines : null;
}
