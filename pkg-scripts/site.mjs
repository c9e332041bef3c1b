// Makes dist/site of the built page: the same page for a server, kept by browsers for when there is no
// network. Nothing but the page, its manifest, its icons and what keeps them.
//
//   node pkg-scripts/site.mjs dist/quirefit.html dist/site

import { createHash } from "node:crypto";
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const [built, folder] = process.argv.slice(2);
const parts = join(dirname(fileURLToPath(import.meta.url)), "../www/site");
const part = (name) => readFileSync(join(parts, name), "utf8").trim();
const sum = (text, as) => createHash("sha256").update(text).digest(as);

// One change each, and each exactly once: whatever does not find its place is a fault.
const change = (text, from, to) => {
  if (text.split(from).length !== 2) throw new Error(`the page has not exactly one ${from}`);
  return text.replace(from, () => to);
};
const register = part("register.js");
let page = readFileSync(built, "utf8");
page = change(page, "script-src ", `script-src 'sha256-${sum(register, "base64")}' `);
page = change(page, "worker-src blob:", "worker-src blob: 'self'; manifest-src 'self'");
page = change(page, "img-src data: blob:", "img-src data: blob: 'self'");
page = change(
  page,
  '<link rel="icon" href="data:,">',
  '<link rel="icon" href="./icon.svg">\n<link rel="manifest" href="./quirefit.webmanifest">',
);
page = change(page, "\n</body>", `\n<script>${register}</script>\n</body>`);

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, "index.html"), page);
for (const name of ["quirefit.webmanifest", "icon.svg"]) copyFileSync(join(parts, name), join(folder, name));
// As dots, for systems that take no drawing.
const require = createRequire(join(parts, "../../target/tools/node/"));
const { initWasm, Resvg } = require("@resvg/resvg-wasm");
await initWasm(readFileSync(require.resolve("@resvg/resvg-wasm/index_bg.wasm")));
for (const size of [192, 512]) {
  const drawn = new Resvg(part("icon.svg"), { fitTo: { mode: "width", value: size } }).render();
  writeFileSync(join(folder, `icon-${size}.png`), drawn.asPng());
}
const build = `quirefit-${sum(page, "hex").slice(0, 16)}`;
writeFileSync(join(folder, "service.js"), change(part("service.js"), "<!-- build -->", build));
