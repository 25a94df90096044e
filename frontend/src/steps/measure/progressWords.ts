/** How far a search for the number of a wish is, in words. */

/** `of` is null where nobody knows beforehand how many trials it takes: then drafts are told, else numbers. */
export function progressWords(progress: { tried: number; of: number | null } | null, stopping: boolean): string {
  if (stopping) return "stopping …";
  if (progress === null) return "trying …";
  if (progress.of !== null) return `${progress.tried} of ${progress.of} numbers tried …`;
  return `${progress.tried} ${progress.tried === 1 ? "draft" : "drafts"} tried …`;
}
