// What is asked, as it stands in the address behind `#`. The browser sends that part to nobody.

/** A question in which nothing is said yet. */
export const blank = () => ({
  where: "known", climate: "", latitude: "", elevation: "", units: "c", tmin: "", tmax: "", rain: "",
  plant: "", date: "", traits: {}, age: "", planting: "", wishes: [], signs: [], none: false, looked: false,
  told: [], passed: [],
});

const TEXTS = ["climate", "latitude", "elevation", "tmin", "tmax", "rain", "plant", "date", "age", "planting"];
const LISTS = ["wishes", "signs", "passed"];
const TRUTHS = ["none", "looked"];

/** The part behind `#`. */
export function written(asked, language) {
  const out = new URLSearchParams({ lang: language });
  if (asked.where === "own") {
    out.set("where", "own");
    if (asked.units === "f") out.set("units", "f");
  }
  const unused = asked.where === "own" ? ["climate"] : ["latitude", "elevation", "tmin", "tmax", "rain"];
  for (const name of TEXTS) if (asked[name] && !unused.includes(name)) out.set(name, asked[name]);
  for (const [name, value] of Object.entries(asked.traits)) if (value) out.set(`trait.${name}`, value);
  for (const name of LISTS) if (asked[name].length) out.set(name, asked[name].join(","));
  for (const name of TRUTHS) if (asked[name]) out.set(name, "yes");
  for (const { pointer, value } of asked.told) out.append("told", JSON.stringify([pointer, value]));
  return out.toString();
}

/** What stands behind `#`; what is not ours is passed over. `asks` says whether it is enough to ask with. */
export function read(fragment) {
  const given = new URLSearchParams(fragment.replace(/^#/, ""));
  const asked = blank();
  if (given.get("where") === "own") asked.where = "own";
  if (given.get("units") === "f") asked.units = "f";
  for (const name of TEXTS) asked[name] = given.get(name) ?? "";
  for (const name of LISTS) asked[name] = (given.get(name) ?? "").split(",").filter(Boolean);
  for (const name of TRUTHS) asked[name] = given.get(name) === "yes";
  for (const [name, value] of given) if (name.startsWith("trait.")) asked.traits[name.slice(6)] = value;
  asked.told = given.getAll("told").flatMap(toldEntry);
  return { asked, language: given.get("lang"), asks: asked.plant !== "" && (asked.climate !== "" || asked.where === "own") };
}

function toldEntry(text) {
  try {
    const [pointer, value] = JSON.parse(text);
    return typeof pointer === "string" && pointer.startsWith("/") && value !== undefined ? [{ pointer, value }] : [];
  } catch {
    return [];
  }
}
