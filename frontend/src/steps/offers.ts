/** Finding a step by what is typed, and beginning its form with what is picked. */

import { emptyValue, kindOf, plainForm, type Form, type Values } from "../server/form.ts";
import type { NameChoices, StepOffer } from "../server/types.ts";
import { withEnds } from "./names.ts";

/** Other words of the trade under which a step is looked for (common practice). */
const ALSO: Record<string, string> = {
  all_in_one_facing: "sleeveless neck armhole combined",
  bell_sleeve: "bell flare trumpet sleeve spread hem",
  belt: "sash buckle",
  belt_loops: "loop carrier",
  bias_grain: "bias grain cross cut",
  bishop_sleeve: "bishop full gathered cuff blouse sleeve",
  bodice: "top blouse shirt waist bust",
  bodysuit: "leotard swimsuit dance stretch knit",
  button_loops: "rouleau loop button",
  button_stand: "buttons buttonhole buttonholes placket extension overlap front opening",
  cap_sleeve: "cap sleeve short shoulder",
  center_seam: "fold open close back front zip slit",
  change_armhole: "sleeveless cutaway lower raise armscye",
  change_length: "hem level waist rise longer shorter lengthen shorten",
  change_neckline: "neck v-neck round scoop boat square lower deeper wider",
  change_width: "wider narrower let out take in girth",
  circle_skirt: "full half quarter flared round",
  contoured_waistband: "shaped curved hipster band waist",
  convert_dart: "gathers gathered ease tuck tucks pleat fold",
  cowl: "drape neckline neck folds",
  cuff: "cuff wrist band button shirt sleeve barrel",
  curve_hem: "shirt tail high low curved",
  cut_all_round: "yoke waist seam round horizontal midriff border",
  cut_style_line: "yoke panel seam style line split empire midriff",
  dart_to_flare: "dart close rotate pivot flare a-line fullness",
  declare_ease: "eased easing shrink",
  double_ended_dart: "fisheye waist contour",
  dress: "frock shift sheath",
  elastic_casing: "elastic pull-on waist channel",
  facing: "neck armhole front edge hem waist turn",
  fly: "zip front opening shield j-stitch trousers",
  fold_dart: "cap press legs",
  fused_facing: "fusible fuse interfacing buttonhole cut on facing vent strip",
  gather_edge: "gathers gathered puff ruffle frill shirring fullness bishop",
  godet: "insert flare wedge fullness",
  gored_skirt: "gore gores panel flared",
  gores: "gore panel flare seam",
  hem_slit: "slit split vent side",
  hook_and_eye: "hook bar eye press stud snap fastening",
  interfacing: "fusible fuse iron stiffen",
  interlining: "warmth layer underlining",
  join_pieces: "join merge together",
  kimono_sleeve: "kimono dolman batwing cut-on grown-on magyar gusset",
  leave_away: "remove cut off without straps camisole strapless",
  leg_of_mutton_sleeve: "leg mutton gigot sleeve puff",
  leggings: "tights stretch knit",
  lining: "lined inside pleat",
  panel_notches: "waist panel notch match princess",
  patch_pocket: "applied flap breast cargo hip",
  pleats: "knife box inverted fold fullness tuck tucks kilt",
  pocket_bag: "pocket inseam side pouch",
  princess_seam: "princess panel dart seam bust",
  puff_sleeve: "puff gathers gathered sleeve elastic band",
  raglan_sleeve: "raglan sleeve shoulder neck",
  reshape_double_dart: "fisheye waist narrower wider",
  reshape_edge: "curve fair shape hollow redraw",
  set_allowance: "seam allowance margin",
  set_hem: "hem depth turn up",
  shorten_dart: "lengthen point apex back",
  slant_pocket: "trouser jeans scoop front hip western frontier",
  slash_and_spread: "flare a-line bell fullness puff spread slash",
  sleeve: "arm cap set-in",
  sleeve_placket: "placket slit cuff tower continuous strip opening shirt",
  strap: "straps shoulder spaghetti bias slip camisole",
  stretch_band: "band rib neck neckband leg cuff elastic binding",
  stretch_torso: "t-shirt tee shirt top knit jersey",
  taper: "peg flare a-line swing narrow",
  tie: "ties ribbon bow string sash",
  tiers: "ruffle frill flounce gathered layered",
  torso: "hip long shirt",
  transfer_dart: "move rotate pivot close swing bust shoulder waist split combine",
  trousers: "pants shorts culottes slacks leg",
  true_dart: "fold cap legs blend",
  true_junction: "blend smooth walk",
  true_notch: "walk match",
  true_seam: "walk match longer shorter trim",
  turn_sleeve: "pitch turn rotate arm forward",
  two_piece_sleeve: "tailored two piece sleeve jacket top under elbow",
  unfold: "asymmetric left right whole mirror one side",
  vent: "slit kick pleat",
  waistband: "band straight",
  welt_pocket: "jetted piped bound slit besom flap back breast",
  zip_opening: "zip zipper fastening placket lapped centered invisible concealed",
};

/** The steps whose title, summary or trade words begin with every typed word; those that have it in their title
 * come first, then those that have the words as they are typed. */
export function matching(offers: readonly StepOffer[], text: string): StepOffer[] {
  const wanted = text.toLowerCase().split(/[\s-]+/).filter(Boolean);
  const found = offers.filter((offer) => !offer.superseded_by && wanted.every((word) => wordsOf(offer).some((one) => one.startsWith(word))));
  const near = (offer: StepOffer): number =>
    wanted.reduce((sum, word) => sum + titled(offer, word) + Number(wordsOf(offer).includes(word)), 0);
  return found.sort((one, other) => near(other) - near(one));
}

/** 3 where the title begins with the word, 2 where it has it; "gathers" is in "Gather an edge" too. */
function titled(offer: StepOffer, word: string): number {
  const title = offer.title.toLowerCase().split(/[\s-]+/);
  const at = title.findIndex((one) => one.startsWith(word) || (one.length > 3 && word.startsWith(one)));
  return at < 0 ? 0 : at === 0 ? 3 : 2;
}

function wordsOf(offer: StepOffer): readonly string[] {
  return `${offer.title} ${ALSO[offer.operation] ?? ""}`.toLowerCase().split(/[\s-]+/);
}

/** The values with the first edge or dart field filled with what is picked on the sheet. */
export function withPicked(values: Values, form: Form, picked: string | null, choices: NameChoices | null): Values {
  return picked ? (filled(form, form, values, picked, choices)[0] as Values) : values;
}

/** The value with its first empty edge filled, and whether there was one. */
function filled(
  form: Form,
  root: Form,
  value: unknown,
  picked: string,
  choices: NameChoices | null,
): [unknown, boolean] {
  const { form: plain, optional } = plainForm(form, root);
  if (optional) return [value, false];
  const kind = choices?.intakes.some((one) => one.name === picked) ? "intake" : "edge";
  if (kindOf(plain) === kind) return value === "" ? [picked, true] : [value, false];
  if (plain.type === "array" && plain.items) {
    const begun = (value as unknown[])[0] ?? emptyValue(plain.items, root);
    const [first, done] = filled(plain.items, root, begun, picked, choices);
    return done ? [[first, ...(value as unknown[]).slice(1)], true] : [value, false];
  }
  for (const [name, part] of Object.entries(plain.properties ?? {})) {
    const [inner, done] = filled(part, root, (value as Values)[name], picked, choices);
    if (done) return [withEnds({ ...(value as Values), [name]: inner }, plain, root, name, choices), true];
  }
  return [value, false];
}
