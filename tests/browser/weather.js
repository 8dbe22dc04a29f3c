// Weather of a climate that no other test asks about.

const day = (date, tmax_c) => ({ date, tmin_c: 20, tmax_c, rain_mm: 0 });

/** Observed to the 14th, forecast to the 17th, issued early on 15 September 2026. */
export const COAST = {
  climate: "mediterranean-coast",
  issued: "2026-09-15T04:00:00Z",
  observed: [day("2026-09-13", 30), day("2026-09-14", 33)],
  forecast: [day("2026-09-15", 39), day("2026-09-16", 41), day("2026-09-17", 36)],
};
