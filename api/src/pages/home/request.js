// From what is asked to the body of `POST /v1/advice`. What can't be read is named at its field.

import { celsius, millimetres, numbers } from "./normals.js";
import { say } from "./words.js";

/** `{ body, faults }`; each fault has a `field` (its id in the page) and a `detail`. */
export function request(asked, language) {
  const faults = [];
  const wrong = (field, detail) => void faults.push({ field, detail });
  const body = { climate: climate(asked, wrong), plant: plant(asked, wrong), language };
  if (asked.date) body.date = asked.date;
  else wrong("date", say("need_day"));
  if (asked.planting) put(body, "/site/planting", asked.planting);
  if (asked.wishes.length) body.wishes = asked.wishes;
  if (asked.signs.length || asked.none) put(body, "/condition/signs", asked.signs.map((sign) => ({ sign })));
  if (asked.looked) put(body, "/condition/looked_closely", true);
  for (const { pointer, value } of asked.told) put(body, pointer, value);
  return { body, faults };
}

function climate(asked, wrong) {
  if (asked.where === "known") {
    if (!asked.climate) wrong("climate", say("need_choice"));
    return { id: asked.climate };
  }
  const inF = asked.units === "f";
  const out = { latitude: one(asked.latitude, "latitude", wrong) };
  if (asked.latitude.trim() === "") wrong("latitude", say("need_some_number"));
  const elevation = one(asked.elevation, "elevation", wrong);
  if (elevation !== undefined) out.elevation_m = elevation;
  const same = (value) => value;
  out.normals = {
    tmin_c: twelve(asked.tmin, "tmin", wrong, inF ? celsius : same),
    tmax_c: twelve(asked.tmax, "tmax", wrong, inF ? celsius : same),
  };
  if (asked.rain.trim()) out.normals.rain_mm = twelve(asked.rain, "rain", wrong, inF ? millimetres : same);
  return out;
}

function plant(asked, wrong) {
  if (!asked.plant) wrong("plant", say("need_choice"));
  const out = { type: asked.plant };
  const traits = Object.entries(asked.traits).filter(([, value]) => value);
  if (traits.length) out.traits = Object.fromEntries(traits);
  const age = one(asked.age, "age", wrong);
  if (age !== undefined) out.age_years = age;
  return out;
}

function twelve(text, field, wrong, change) {
  const { numbers: values, odd } = numbers(text);
  if (odd !== undefined) return wrong(field, say("need_number", odd));
  if (values.length !== 12) return wrong(field, say("need_twelve", values.length));
  return values.map(change);
}

function one(text, field, wrong) {
  const bare = text.trim().replace("\u2212", "-").replace(",", ".");
  if (bare === "") return undefined;
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare) ? Number(bare) : wrong(field, say("need_number", text.trim()));
}

/** Puts a value where a JSON pointer (RFC 6901) points; `-` at its end adds to a list. */
export function put(body, pointer, value) {
  const names = pointer.split("/").slice(1).map((name) => name.replaceAll("~1", "/").replaceAll("~0", "~"));
  const last = names.pop();
  let at = body;
  names.forEach((name, depth) => {
    if (!Object.hasOwn(at, name)) at[name] = (names[depth + 1] ?? last) === "-" ? [] : {};
    at = at[name];
  });
  if (Array.isArray(at)) {
    if (last === "-") at.push(value);
    else at[Number(last)] = value;
  } else {
    Object.defineProperty(at, last, { value, enumerable: true, configurable: true, writable: true });
  }
}
