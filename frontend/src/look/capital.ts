/** A sentence with a capital at its head: the server's words may begin with the name of a piece. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
