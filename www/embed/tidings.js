// Tells a session what stands in an element's attributes, and of each only what is new.

/** Gives back what takes `{ job, shop, reading, units }`: contents of files, and names. */
export function tidings(tell) {
  const told = {};
  const fresh = (name, value) => value && told[name] !== value && (told[name] = value);

  return ({ job, shop, reading, units }) => {
    // First of all who reads; and a job is read in its shop.
    if (fresh("reading", reading)) tell("act", "reading", reading);
    if (fresh("shop", shop && JSON.stringify(shop))) tell("file", "", told.shop);
    if (fresh("job", job && JSON.stringify(job))) tell("file", "", told.job);
    if (fresh("units", units)) tell("change", "units", units);
  };
}
