/** Which view of the Measures room is open, and which chart it shows; the views lead to one another. */

class Going {
  /** The word of the view. */
  view = $state("measure");
  /** The chart that is open under "size charts": a computed one by its word, or one of hers by its id. */
  chart = $state("women");

  toChart(id: number): void {
    this.chart = String(id);
    this.view = "size charts";
  }
}

export const going = new Going();
