// Bytes of the module's code by crate, from the names that the compiler leaves in it: before wasm-opt,
// which takes the names away. node tests/bench/crates.mjs MODULE.wasm prints Markdown rows.

import { readFileSync } from "node:fs";

const bytes = readFileSync(process.argv[2]);
let at = 8; // after the magic number and the version
const number = () => {
  let [value, shift, byte] = [0, 1, 0];
  do {
    byte = bytes[at++];
    value += (byte & 127) * shift;
    shift *= 128;
  } while (byte & 128);
  return value;
};
const text = () => {
  const length = number();
  at += length;
  return bytes.toString("utf8", at - length, at);
};

// Sections of the format: 2 imports, 10 code, 0 custom ones with a name; in "name", part 1 is of functions.
let imported = 0;
const sizes = [];
const names = new Map();
let data = 0;
while (at < bytes.length) {
  const kind = bytes[at++];
  const end = number() + at;
  if (kind === 2) {
    for (let left = number(); left > 0; left -= 1) {
      text();
      text();
      if (bytes[at++] !== 0) throw new Error("something else than functions is imported");
      number();
      imported += 1;
    }
  } else if (kind === 10) {
    for (let left = number(); left > 0; left -= 1) {
      const size = number();
      sizes.push(size);
      at += size;
    }
  } else if (kind === 11) data = end - at;
  else if (kind === 0 && text() === "name") {
    while (at < end) {
      const part = bytes[at++];
      const stop = number() + at;
      if (part === 1) for (let left = number(); left > 0; left -= 1) names.set(number(), text());
      at = stop;
    }
  }
  at = end;
}

// Names are mangled in the old way (_ZN, length and part by turns, `$LT$` for <) or the new one (_R, a
// crate as C, base-62 mark and name). Of an implementation the type's crate counts.
const owner = (name) => {
  const old = name.match(/^_ZN\d+(?:_?(?:\$[A-Za-z0-9]+\$|_)*)?(?:mut\$u20\$)?([a-z][a-z0-9_]*?)(?=\.\.|\d|\$|E)/)?.[1];
  return old ?? name.match(/Cs[0-9A-Za-z]+_(\d+)(\w+)/)?.slice(1).reduce((length, rest) => rest.replace(/^_/, "").slice(0, length));
};
const crates = new Map();
sizes.forEach((size, index) => {
  const crate = owner(names.get(index + imported) ?? "") ?? "exports and runtime";
  crates.set(crate, (crates.get(crate) ?? 0) + size);
});
const whole = sizes.reduce((sum, size) => sum + size, 0);
const rows = [...crates].sort(([, a], [, b]) => b - a);
const most = rows.slice(0, 10);
const rest = rows.slice(10).reduce((sum, [, size]) => sum + size, 0);
for (const [crate, size] of [...most, [`${rows.length - most.length} others`, rest], ["all code", whole], ["data", data]]) {
  console.log(`| ${crate} | ${size} | ${((100 * size) / (whole + data)).toFixed(1)} |`);
}
