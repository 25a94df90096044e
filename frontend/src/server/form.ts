/** Reading the form of a step (the JSON schema of its parameters) for its fields. */

export interface Form {
  readonly $ref?: string;
  readonly $defs?: Record<string, Form>;
  readonly anyOf?: readonly Form[];
  readonly type?: string;
  readonly kind?: string;
  /** The part of a long form that the field stands in; none: it always shows. */
  readonly group?: string;
  /** What the field is called where its name alone says nothing; its description is then shown below it. */
  readonly label?: string;
  /** What the field is called where its name is no word of the trade. */
  readonly called?: string;
  /** What its choices mean, where their own words do not say it. */
  readonly said?: Readonly<Record<string, string>>;
  /** What it means that the field stays empty. */
  readonly empty?: string;
  /** With how many empty entries a list begins. */
  readonly begins?: number;
  /** What one entry of a list is called. */
  readonly one?: string;
  /** The field that this one stands instead of: what is said in one empties the other. */
  readonly instead?: string;
  /** What stands below the field for everybody to read. */
  readonly note?: string;
  readonly title?: string;
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly default?: unknown;
  readonly items?: Form;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly properties?: Record<string, Form>;
  readonly required?: readonly string[];
}

export type Values = Record<string, unknown>;

/** The form itself, references and "or nothing" looked through. */
export function plainForm(form: Form, root: Form): { form: Form; optional: boolean } {
  if (form.$ref) return plainForm(root.$defs?.[form.$ref.split("/").at(-1) ?? ""] ?? {}, root);
  if (form.anyOf) {
    const some = form.anyOf.find((option) => option.type !== "null") ?? {};
    return { form: plainForm(some, root).form, optional: true };
  }
  return { form, optional: false };
}

/** What a field is: its kind in the trade (amount, edge, ...), a choice, a list, a group, or its plain type. */
export function kindOf(form: Form): string {
  if (form.kind) return form.kind;
  if (form.enum || form.type === "boolean") return "choice";
  return form.type ?? "string";
}

/** An empty value to begin with. */
export function emptyValue(form: Form, root: Form): unknown {
  const { form: plain, optional } = plainForm(form, root);
  if (form.begins) return Array.from({ length: form.begins }, () => emptyValue(plain.items ?? {}, root));
  if (form.default !== undefined) return form.default;
  if (optional) return null;
  if (plain.type === "array") return plain.minItems ? [emptyValue(plain.items ?? {}, root)] : [];
  if (plain.type === "object") return emptyValues(plain, root);
  return "";
}

/** Empty values for every field of a group. */
export function emptyValues(form: Form, root: Form): Values {
  return Object.fromEntries(Object.entries(form.properties ?? {}).map(([name, part]) => [name, emptyValue(part, root)]));
}

/** Whether everything that must be said is said. */
export function isFilled(form: Form, root: Form, value: unknown): boolean {
  const { form: plain, optional } = plainForm(form, root);
  if (value === null || value === undefined || value === "") return optional || form.default !== undefined;
  if (plain.type === "array") {
    const list = value as unknown[];
    return list.length >= (plain.minItems ?? 0) && list.every((one) => isFilled(plain.items ?? {}, root, one));
  }
  if (plain.type === "object") {
    if (lacksPlace(plain, value as Values)) return false;
    return Object.entries(plain.properties ?? {}).every(([name, part]) => isFilled(part, root, (value as Values)[name]));
  }
  return true;
}

/** Whether a place along an edge says neither a distance nor a share. */
function lacksPlace(form: Form, value: Values): boolean {
  const either = ["distance", "fraction"];
  return either.every((name) => name in (form.properties ?? {}) && (value[name] ?? "") === "");
}

/** Choices and fields that are not said as they are written. */
const SPELLED: Readonly<Record<string, string>> = {
  auto: "as usual", false: "no", french: "French", own_hem: "hem girth", own_knee: "knee girth", t_shirt: "T-shirt", three_quarter: "three-quarter", true: "yes", u: "U", v: "V",
};

/** The name of a field or of a choice in words. */
export function words(name: string): string {
  return SPELLED[name] ?? name.replaceAll("_", " ");
}

/** What a field of a form is called. */
export function calledOf(name: string, form: Form): string {
  return form.label ?? form.called ?? words(name);
}

/** A part of a form: its name ("" stands open at the top), its fields, and whether any was set. */
export interface Part {
  readonly name: string;
  readonly fields: readonly (readonly [string, Form])[];
  readonly touched: boolean;
}

/** The parts that forms have in common, in the order in which they come; others follow. */
const ORDER = ["", "cloth", "ease", "darts", "shape"];

/** What a choice holds that was left to the draft, which then writes down what it chose. */
const LEFT_OPEN = "auto";

/** The parts of a form, the open one first. `usual` is what each field holds before anything is said,
 * `typed` the fields that are being changed now. */
export function partsOf(form: Form, values: Values, usual: Values, typed: Values): readonly Part[] {
  const fields = Object.entries(form.properties ?? {});
  const names = [...new Set([...ORDER, ...fields.map(([, field]) => field.group ?? "")])];
  const isSet = (name: string): boolean =>
    name in typed || (usual[name] !== LEFT_OPEN && JSON.stringify(values[name] ?? null) !== JSON.stringify(usual[name] ?? null));
  const parts = names.map((name) => {
    const own = fields.filter(([, field]) => (field.group ?? "") === name);
    return { name, fields: own, touched: own.some(([field]) => isSet(field)) };
  });
  return parts.filter((part) => part.fields.length > 0);
}

/** The values after a field was said: the field that it stands instead of is emptied. */
export function withInstead(values: Values, form: Form, changed: string): Values {
  const other = form.properties?.[changed]?.instead;
  const value = values[changed];
  const isSaid = Array.isArray(value) ? value.length > 0 : value !== null && value !== "";
  return other && isSaid ? { ...values, [other]: Array.isArray(values[other]) ? [] : null } : values;
}

/** Only what differs from before. */
export function changesIn(before: Values, after: Values): Values {
  return Object.fromEntries(
    Object.entries(after).filter(([name, value]) => JSON.stringify(value) !== JSON.stringify(before[name])),
  );
}
