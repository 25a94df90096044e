/** What a code and an erasure have in common: other texts, other spellings, copies of the book. */

export class Wish {
  inOtherTexts = $state(false);
  deleteCopies = $state(false);
  /** Other spellings of the name, between commas. */
  spellings = $state("");

  sent(): { in_other_texts: boolean; delete_copies: boolean; further: string[] } {
    const further = this.spellings.split(",").map((word) => word.trim()).filter(Boolean);
    return { in_other_texts: this.inOtherTexts, delete_copies: this.deleteCopies, further };
  }
}
