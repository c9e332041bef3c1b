// Puts the page's parts into one file, weighs it, and refuses what the page must not hold.
//
//   node pkg-scripts/assemble.mjs BUILD_FOLDER OUTPUT.html [quick]
//
// A quick build may be as heavy as it likes.

import { createHash } from "node:crypto";
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { homedir } from "node:os";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { deflateSync, gzipSync } from "node:zlib";

// What it is now, with card, codes, PDF, lists of titles, drawings as files and designs; the goal is 500 and 220 kB.
const LIMIT = { raw: 733_000, gzip: 493_000 }; // bytes, without the reader
const READER = 180_000; // bytes of the reader's block, packed

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const [build, output, quick] = process.argv.slice(2);
const source = (...path) => readFileSync(join(root, ...path), "utf8");
const built = (name) => readFileSync(join(build, name), "utf8");

const wasm = readFileSync(join(build, "planner.wasm"));
const pdf = readFileSync(join(build, "reader.wasm"));
const script = built("script.js").trim();
const style = built("style.css").trim();
const frame = built("frame.html").trim();

const languages = readdirSync(join(root, "src/input/words"))
  .filter((name) => name.endsWith(".txt"))
  .sort()
  .map((name) => [basename(name, ".txt"), source("src/input/words", name)]);
const texts = JSON.stringify(Object.fromEntries(languages));

// Blocks that www/packed.js unpacks. Not gzip, whose header names the system it was made on. Zopfli
// writes the same format 6 % shorter and takes seconds for it, so a quick build does without.
const require = createRequire(join(root, "target/tools/node/"));
const deflate = async (content) =>
  quick ? deflateSync(content, { level: 9 }) : require("@gfx/zopfli").zlibAsync(content, {});
const packed = async (id, content) => {
  const bytes = Buffer.from(await deflate(Buffer.from(content)));
  return `<script type="text/plain" id="${id}">${bytes.toString("base64")}</script>`;
};
const planner = await packed("planner", wasm);
const words = await packed("words", texts);
const reader = await packed("reader", pdf);

// 'wasm-unsafe-eval' lets the inlined module compile; nothing may be connected to, ever.
const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
const policy = [
  "default-src 'none'",
  `script-src ${hash(script)} 'wasm-unsafe-eval'`,
  `style-src ${hash(style)}`,
  "img-src data: blob:",
  "worker-src blob:",
  "connect-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

const parts = {
  policy: `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
  "made-with": `<meta name="generator" content="${process.env.QUIREFIT_MADE_WITH ?? ""}">`,
  built: `<meta name="built-from" content="${process.env.QUIREFIT_BUILT ?? ""}">`,
  styles: `<style>${style}</style>`,
  frame,
  blocks: `${planner}\n${words}\n${reader}`,
  script: `<script>${script}</script>`,
};
const template = source("www/index.html");
const page = template.replace(/<!-- ([a-z-]+) -->/g, (mark, name) => {
  if (!(name in parts)) throw new Error(`www/index.html asks for an unknown part: ${mark}`);
  return parts[name];
});

// What must not be in the file.
const faults = [];
const refuse = (what, found) => {
  if (found) faults.push(`${what}: ${JSON.stringify(String(found).slice(0, 120))}`);
};
const first = (text, pattern) => text.match(pattern)?.[0];

for (const name of Object.keys(parts)) {
  if (!template.includes(`<!-- ${name} -->`)) refuse("a part without a place in www/index.html", name);
}
refuse("the script would end its block early", first(script, /<\/script|<!--/i));
refuse("the style would end its block early", first(style, /<\/style/i));
refuse("carriage return, which would change the hashes", first(page, /.{0,40}\r/));

// Whatever the module prints counts as well: its strings are searched as they lie in its data.
const printed = wasm.toString("latin1") + pdf.toString("latin1");
for (const [where, text] of Object.entries({ frame: template + frame, module: printed })) {
  refuse(`inline style in the ${where}, which the policy blocks`, first(text, /\sstyle="[^"]{0,80}/i));
  refuse(`inline handler in the ${where}, which the policy blocks`, first(text, /\son[a-z]+="[^"]{0,80}/i));
  refuse(`address of another place in the ${where}`, first(text, /(?:href|src|action)="(?:https?:)?\/\/[^"]{0,80}/i));
}
refuse("the style loads something", first(style, /@import|url\((?!["']?data:)[^)]{0,80}/i));
const everything = page + printed + texts;
const home = homedir();
const machine = [root.replace(/\/$/, ""), process.env.CARGO_HOME, process.env.RUSTUP_HOME, home === "/" ? "" : `${home}/`];
for (const path of machine.filter(Boolean)) refuse("a path of this machine", everything.includes(path) && path);
refuse("a path of a machine", first(everything, /(?:\/home\/|\/Users\/|\.cargo\/registry)[^\s"]{0,80}/));

// The weight.
const weigh = (text) => ({ raw: Buffer.byteLength(text), gzip: gzipSync(text, { level: 9 }).length });
const row = (name, { raw, gzip }) =>
  console.log(`| ${name.padEnd(17)} | ${String(raw).padStart(9)} | ${String(gzip).padStart(9)} |`);
const total = weigh(page.replace(reader, ""));
row("bytes", { raw: "raw", gzip: "gzip" });
console.log("|---|--:|--:|");
row("planner (wasm)", weigh(wasm));
row("planner, packed", weigh(planner));
row("script", weigh(script));
row("style", weigh(style));
row("frame", weigh(frame));
row("words", weigh(texts));
row("words, packed", weigh(words));
row("all but reader", total);
row("at most", LIMIT);
row("reader (wasm)", weigh(pdf));
row("reader, packed", weigh(reader));
row("at most", { raw: READER, gzip: READER });
row("the whole file", weigh(page));
for (const kind of ["raw", "gzip"]) {
  if (!quick && total[kind] > LIMIT[kind]) refuse(`the page is too heavy (${kind})`, total[kind]);
}

if (!quick) refuse("the reader is too heavy", weigh(reader).raw > READER && weigh(reader).raw);

if (faults.length) {
  console.error(`\nThe page was not written:\n${faults.map((fault) => `- ${fault}`).join("\n")}`);
  process.exit(1);
}
writeFileSync(output, page);
const sum = createHash("sha256").update(page).digest("hex");
writeFileSync(`${output}.sha256`, `${sum}  ${basename(output)}\n`);
console.log(`\n${output}, SHA-256 ${sum}`);
