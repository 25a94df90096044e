/** How the form of a step stands on the page: what a field is called, what a choice or an empty field means, and
 * which fields stand folded away under "more". Blocks say this themselves, in their forms. */

import type { Form } from "../server/form.ts";
import type { StepOffer } from "../server/types.ts";

/** What is added to a field of a form. */
type Shown = Pick<Form, "called" | "group" | "said" | "empty" | "begins" | "instead" | "note" | "one">;
type Table = Readonly<Record<string, Shown>>;

const MORE = "more";
const FULL = { light: "light, 1½ times", standard: "standard, twice", full: "full, 2½ times" };
const SEWN = { none: "as it lies", gather: "gathered", ease: "eased" };

/** Fields that have the same meaning in every step. */
const COMMON: Table = {
  across: { called: "edge across" },
  across_point: { called: "its end, same side" },
  across_taken_up: { called: "across, sewn", said: SEWN, group: MORE },
  center_role: { called: "center is called", group: MORE },
  distance: { empty: "as 1.5 or 1/4 hip" },
  first_role: { called: "first is called", group: MORE },
  first_distance: { called: "first lies at" },
  from_distance: { called: "begins at", group: MORE },
  from_point: { called: "counted from" },
  gape: { called: "gape closed", empty: "by the table", group: MORE },
  gape_dart: { called: "gape into dart", empty: "left open" },
  gape_point: { called: "gape runs to", empty: "the bust point", group: MORE },
  hem_end: { called: "its end at the hem" },
  intake: { called: "dart" },
  number: { called: "how many" },
  run: { called: "lie", said: { share: "evenly on both", grain: "along the grain" }, group: MORE },
  second_role: { called: "second is called", group: MORE },
  side_role: { called: "side is called", group: MORE },
  taken_up: { called: "then sewn", said: SEWN },
  to_distance: { called: "ends at", empty: "the other end", group: MORE },
  word: { called: "called in names", empty: "as usual", group: MORE },
};

/** Fields of one step. */
const OWN: Readonly<Record<string, Table>> = {
  bell_sleeve: { flare: { called: "wider at the hem by" }, slashes: { called: "slashes each side", group: MORE } },
  bishop_sleeve: {
    back_share: { called: "at the back, share" },
    drop: { called: "lower behind by" },
    fullness: { said: FULL },
    hem_length: { called: "gathered to", empty: "wrist and ease" },
    ratio: { called: "or times as long", empty: "as above", group: MORE },
    slashes: { called: "slashes each side", group: MORE },
  },
  cap_sleeve: { length: { called: "below the shoulder" } },
  cuff: {
    button: { called: "button, across", group: MORE },
    narrower: { called: "free edge shorter by", note: "of a shaped cuff" },
    overlap: { called: "laps under by" },
  },
  kimono_sleeve: {
    angle: { called: "hangs, degrees" },
    curve: { called: "curve under the arm", empty: "as usual", group: MORE },
    depth: { called: "meets the side lower by", empty: "as the arm asks" },
    gusset: { called: "gusset, its sides", empty: "none" },
    gusset_angle: { called: "its points, degrees", group: MORE },
    hem: { called: "hem, all round", empty: "wrist and ease" },
    length: { empty: "the arm length" },
  },
  leg_of_mutton_sleeve: {
    cap_height: { called: "cap higher by" },
    opens: { called: "cap longer by" },
    reach: { called: "full down to", empty: "the elbow" },
    slashes: { called: "slashes each side", group: MORE },
  },
  puff_sleeve: {
    cap_height: { called: "cap higher by" },
    fullness: { said: FULL },
    hem: { called: "hem held by", said: { band: "a band", elastic: "an elastic", plain: "nothing" } },
    hem_length: { called: "gathered to", empty: "arm and ease", group: MORE },
    opens: { called: "spread at", said: { cap: "the cap", hem: "the hem", both: "both" } },
    ratio: { called: "or times as long", empty: "as above", group: MORE },
    slashes: { called: "slashes each side", group: MORE },
  },
  raglan_sleeve: {
    above: { called: "shoulder above the cap", empty: "as usual", group: MORE },
    back_neck: { called: "down the back neck" },
    front_neck: { called: "down the front neck" },
    shoulder: { called: "over the shoulder", said: { seam: "a seam down the arm", dart: "a dart" } },
  },
  sleeve_placket: {
    kind: { said: { bound: "bound", tower: "with a tower" } },
    place: { called: "along the hem, share" },
    strip_width: { called: "strip, finished" },
    tower_width: { called: "tower, finished", group: MORE },
  },
  two_piece_sleeve: {
    bend: { called: "hem forward by" },
    bend_reach: { called: "bend reaches", group: MORE },
    forearm_shift: { called: "forearm seam inside by" },
    hem_square: { called: "square above the hem", group: MORE },
    hind_arm_hem: { called: "the same at the hem", group: MORE },
    hind_arm_shift: { called: "hind-arm seam inside by" },
  },
  change_armhole: {
    following: { called: "sleeve follows" },
    lower: { called: "lower by" },
    shoulder: { called: "shoulder shorter by" },
  },
  change_length: { hems: { begins: 1 } },
  change_neckline: {
    center: { called: "its end at the center" },
    depth: { called: "lower by" },
    width: { called: "shoulder shorter by" },
  },
  change_width: { seams: { begins: 1 } },
  cut_all_round: {
    crosses: { called: "edges that it crosses", one: "edge", begins: 2 },
    distance: { empty: "level" },
    from_point: { called: "heights counted from" },
    notches: { said: { balance: "balance", apex: "two pairs", none: "none" } },
    rest: { called: "rest of the dart", said: { none: "goes into the line", stays: "stays" } },
  },
  cut_style_line: {
    keeps_grain: { called: "keeps its grain", said: { start: "at the start", end: "at the end" } },
    notches: { said: { balance: "balance", apex: "at the bust point", none: "none" } },
    off: { called: "beside it by" },
    through: { called: "points on its way", one: "point on its way" },
    rest: { called: "rest of the dart", said: { none: "goes into the line", stays: "stays" } },
  },
  double_ended_dart: {
    above: { called: "reaches up" },
    below: { called: "reaches down" },
    inside: { called: "inside the edge by" },
    width: { called: "wide" },
  },
  cowl: {
    across_center: { called: "its end at center" },
    neck_center: { called: "its end at center" },
    spread: { called: "spread by" },
  },
  curve_hem: { end: { called: "end lower by" }, start: { called: "start lower by" } },
  facing: {
    depth: { empty: "as below" },
    free_edge: { called: "outer edge, its class", group: MORE },
    joined: { called: "in one over seams" },
    turn: { called: "turn of cloth", empty: "by the cloth", group: MORE },
  },
  fold_dart: {
    center: { called: "center edge", empty: "as usual", group: MORE },
    toward: { called: "pressed", said: { first_leg: "to the first leg", second_leg: "to the second leg" } },
  },
  gather_edge: {
    across_share: { called: "opens across, share" },
    fullness: { said: FULL },
    number: { called: "slashes", group: MORE },
    ratio: { called: "or times as long", empty: "as above", group: MORE },
  },
  godet: { angle: { called: "opens, degrees" }, hem_length: { called: "or hem of", empty: "by the angle" } },
  lining: {
    pleat: { called: "pleat at center" },
    raised: { called: "armhole up by" },
    shorter: { called: "hem shorter by" },
  },
  patch_pocket: {
    corner: { group: MORE },
    down: { called: "begins below it by" },
    inward: { called: "begins inward by" },
    flap_above: { called: "flap above by", empty: "15 mm", group: MORE },
    flap_corner: { group: MORE },
    flap_under: { called: "under side of", group: MORE },
    flap_wider: { called: "flap wider by", empty: "3 mm", group: MORE },
    hem: { called: "hem deep", empty: "as the house", group: MORE },
    lower_width: { called: "wide below", empty: "the same", group: MORE },
  },
  pocket_bag: { distance: { called: "opening begins at" }, opening: { called: "opening is long" }, facing: { called: "strip of cloth", empty: "none" } },
  pleats: {
    across_depth: { called: "depth across", empty: "the same", group: MORE },
    box: { called: "box is wide", empty: "folds meet", group: MORE },
    laid: { said: { toward: "toward that end", away: "away from it" } },
    pressed: { called: "pressed all the way", group: MORE },
    stitched: { called: "stitched down" },
  },
  princess_seam: {
    bust_point: { called: "over bust point" },
    center: { called: "center edge" },
    closed_dart: { called: "closes dart too" },
    ease: { called: "ease over the bust" },
    end: { called: "ends", group: MORE, instead: "waist_dart" },
    hinge: { called: "opens about", group: MORE },
    inner_dart: { called: "through inner dart", group: MORE },
    start: { called: "starts", begins: 1, instead: "upper_dart" },
    start_angle: { called: "leaves turned by", empty: "evenly bent", group: MORE },
    upper_dart: { called: "or starts in dart", instead: "start", note: "At a place or in a dart, not both: one takes the other away." },
    waist_dart: { called: "ends in dart", instead: "end", note: "Or at a place on the hem, under “more”." },
  },
  reshape_edge: {
    end_turn: { called: "end turned, degrees" },
    may_wave: { called: "may bend both ways" },
    start_turn: { called: "start turned, degrees" },
  },
  shorten_dart: {
    amount: { empty: "or from a point" },
    measured: { said: { length: "as long as", from_point: "so far from a point" } },
    point: { called: "from which point" },
  },
  slant_pocket: {
    along_waist: { called: "begins from the side" },
    bag_below: { called: "bag below opening", group: MORE },
    bag_depth: { called: "bag deep" },
    bag_width: { called: "bag wide" },
    down_side: { called: "ends down the side" },
    ease: { called: "opening longer by", empty: "4 mm", group: MORE },
    facing: { called: "facing wide", group: MORE },
  },
  slash_and_spread: {
    across_opens: { called: "opens across" },
    angle: { called: "or degrees in all", empty: "by amounts", group: MORE },
    number: { called: "how many slashes" },
    opens: { called: "each opens" },
    places: { called: "own places", group: MORE },
  },
  tiers: { ratio: { called: "times as long" } },
  transfer_dart: {
    into: { called: "wider darts" },
    pivot: { called: "turned about", empty: "the bust point", group: MORE },
    places: { begins: 1 },
    share: { called: "share of it", group: MORE },
    short: { called: "point back by", empty: "as usual", group: MORE },
    still: { called: "lies still", empty: "the fold", group: MORE },
  },
  true_seam: { master: { said: { first: "first stays", second: "second stays" } }, most: { called: "at most" } },
};

/** The offer with its form as it stands on the page. */
export function arranged(offer: StepOffer): StepOffer {
  if (offer.kind === "block") return offer;
  const table = { ...COMMON, ...OWN[offer.operation] };
  const form = offer.form as Form;
  const parts = Object.entries(form.$defs ?? {}).map(([name, part]) => [name, told(part, table)]);
  const whole: Form = { ...told(form, table), $defs: Object.fromEntries(parts) };
  return { ...offer, form: whole as StepOffer["form"] };
}

/** A form whose fields have been told what the table says of them; a field's own words come first. */
function told(form: Form, table: Table): Form {
  if (!form.properties) return form;
  const fields = Object.entries(form.properties).map(([name, part]) => [name, { ...table[name], ...part }]);
  return { ...form, properties: Object.fromEntries(fields) };
}
