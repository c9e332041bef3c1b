// Times the module and the page in Chromium and prints the report; `pkg-scripts/bench` builds what
// is timed and calls: node tests/bench/page.mjs NATIVE_TIMES BUILD_FOLDER
//
// Every figure is a median. Aims are those of the project, printed beside what was measured.

import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createServer } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { differences } from "./floor.mjs";

const native = JSON.parse(process.argv[2]);
const table = (name) => readFileSync(`${process.argv[3]}/${name}`, "utf8").trim();
const cases = JSON.parse(table("floor.json"));
const alike = differences(cases);
const OPENINGS = 21;
const KEYS = 41;

const median = (list) => list.toSorted((a, b) => a - b)[list.length >> 1];
const at = (path) => pathToFileURL(path).href;

// WebDriver, as little of it as this needs.
const port = await new Promise((done) => {
  const probe = createServer().listen(0, "127.0.0.1", () => {
    const { port } = probe.address();
    probe.close(() => done(port));
  });
});
const driver = spawn("chromedriver", [`--port=${port}`], { stdio: "ignore" });
process.on("exit", () => driver.kill());

const call = async (method, path, body) => {
  const answer = await fetch(`http://127.0.0.1:${port}/${path}`, { method, body: body && JSON.stringify(body) });
  const { value } = await answer.json();
  if (value?.error) throw new Error(value.message);
  return value;
};
const ready = async () => {
  for (let tries = 0; tries < 100; tries += 1) {
    try {
      return await call("GET", "status");
    } catch {
      await sleep(50);
    }
  }
  throw new Error("chromedriver does not answer");
};
await ready();
const { "goog:chromeOptions": options } = JSON.parse(readFileSync("tests/browser/webdriver.json", "utf8"));
const opened = await call("POST", "session", {
  capabilities: { alwaysMatch: { "goog:chromeOptions": options, timeouts: { script: 120_000 } } },
});
const session = `session/${opened.sessionId}`;
const open = (path) => call("POST", `${session}/url`, { url: at(path) });
const run = (script, ...args) => call("POST", `${session}/execute/async`, {
  script: `const done = arguments[arguments.length - 1]; (${script})(...arguments).then(done, (error) => done({ error: String(error) }))`,
  args,
}).then((value) => {
  if (value?.error) throw new Error(value.error);
  return value;
});
const slow = (rate) =>
  call("POST", `${session}/goog/cdp/execute`, { cmd: "Emulation.setCPUThrottlingRate", params: { rate } });

// One plan in the module, nanoseconds.
const plans = async () => {
  const runs = 2000;
  const times = [];
  for (let sample = 0; sample < 31; sample += 1) {
    const began = performance.now();
    window.plans(runs);
    times.push(((performance.now() - began) / runs) * 1e6);
  }
  return times;
};

// The geometry of one book in the module and in JavaScript, by turns, nanoseconds each.
const floors = async (job) => {
  const runs = 2000;
  const times = [];
  let sink = 0;
  for (let sample = 0; sample < 31; sample += 1) {
    const began = performance.now();
    window.books(runs);
    const between = performance.now();
    for (let turn = 0; turn < runs; turn += 1) sink += window.floor(job).closed[turn % 3];
    times.push([((between - began) / runs) * 1e6, ((performance.now() - between) / runs) * 1e6]);
  }
  if (!(sink > 0)) throw new Error("nothing was worked out");
  return times;
};

// A search in which hardly anything saves the book, so that every candidate is planned: how many, and
// each time in milliseconds.
const searches = async (job) => {
  const found = JSON.parse(window.search(job, ""));
  const times = [];
  for (let sample = 0; sample < 31; sample += 1) {
    const began = performance.now();
    window.search(job, "");
    times.push(performance.now() - began);
  }
  return [found.tried, times];
};
const HARD = JSON.stringify({
  format: "quirefit-job",
  version: 1,
  pages: "100 + 4",
  size: "A4",
  paper: "300 gsm uncoated 0.4 mm",
  cover: "350 gsm silk cover 0.4 mm",
  head_trim: "50 mm",
  foot_trim: "50 mm",
  head_foot: "after",
});

// An event that means nothing to the session: there and back with an empty answer, nanoseconds.
const crossings = async () => {
  const runs = 5000;
  const times = [];
  for (let sample = 0; sample < 31; sample += 1) {
    const began = performance.now();
    for (let turn = 0; turn < runs; turn += 1) window.session.handle({ kind: "nothing", id: "a", value: "b" });
    times.push(((performance.now() - began) / runs) * 1e6);
  }
  return times;
};

// From the start of the navigation until the module has started and answered, and the first paint.
const openings = async () => {
  const when = (name) => performance.getEntriesByName(name)[0]?.startTime;
  const both = () => [when("started"), when("first-contentful-paint")];
  while (both().includes(undefined)) await new Promise((next) => setTimeout(next, 20));
  return both();
};

// A key in a book of 25 sheets, every disclosure closed. First figure: the input event, its handler,
// forced layout. Second: until a message posted from the next frame arrives, which is after its paint.
const keys = async (count) => {
  const field = document.querySelector("[name=pages]");
  const rest = () => new Promise((next) => setTimeout(next, 60));
  for (const details of document.querySelectorAll("details[open]")) details.open = false;
  const type = (text) => {
    field.value = text;
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  };
  type("96 + 4");
  await rest();
  const times = [];
  for (let key = 0; key < count; key += 1) {
    const before = document.getElementById("answer").innerHTML;
    const began = performance.now();
    type(key % 2 ? "96 + 4" : "92 + 4");
    document.body.offsetHeight;
    const laid = performance.now() - began;
    if (document.getElementById("answer").innerHTML === before) throw new Error("the key changed nothing");
    const painted = await new Promise((next) => requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => next(performance.now() - began);
      port2.postMessage(0);
    }));
    times.push([laid, painted]);
    await rest();
  }
  return times;
};

const both = (list) => [median(list.map(([first]) => first)), median(list.map(([, second]) => second))];

try {
  await open("target/bench/module.html");
  // A browser compiles a module quickly first, and well while it runs: both are told.
  const early = median(await run(plans));
  const module = median(await run(plans));
  const crossing = median(await run(crossings));
  const [inModule, inScript] = both(await run(floors, cases[0].job));
  const [tried, searchTimes] = await run(searches, HARD);

  const pages = { "dist/quirefit.html": [], "target/bench/empty.html": [] };
  for (let turn = 0; turn < OPENINGS; turn += 1) {
    for (const [path, list] of Object.entries(pages)) {
      await open(path);
      list.push(await run(openings));
    }
  }
  const [page, empty] = Object.values(pages).map(both);

  await open("dist/quirefit.html");
  const [laid, painted] = both(await run(keys, KEYS));
  await slow(4);
  const [laidSlow, paintedSlow] = both(await run(keys, KEYS));

  const ms = (value) => value.toFixed(1);
  console.log(`# Speed and size

Medians, Chromium ${opened.capabilities.browserVersion}, headless.

## One plan, 25 sheets

| where | time | aim |
|---|--:|--:|
| natively, release | ${native.plan} ns | 15,000 ns |
| in the module, compiled well | ${module.toFixed(0)} ns | |
| module / native | ${(module / native.plan).toFixed(2)} | 1.30 |
| in the module, in its first quarter of a second | ${early.toFixed(0)} ns | |
| that / native | ${(early / native.plan).toFixed(2)} | |
| plans in one frame of 16 ms, module | ${(16e6 / module).toFixed(0)} | 20 |
| an event into the module and back | ${crossing.toFixed(0)} ns | |

## Its geometry alone, against the floor

Thickness, push-outs, trim, margins, cover and mass, without findings, press sheets, stitches, run and
cost: tests/bench/floor.mjs in the same Chromium, by turns with the module. Over ${cases.length} jobs its
${alike.figures} figures differ from the planner's by ${alike.most.toExponential(1)} at most, relative to
the figure or to 1 where it is smaller.

| where | time | to the script |
|---|--:|--:|
| natively, release | ${native.books} ns | ${(native.books / inScript).toFixed(2)} |
| in the module | ${inModule.toFixed(0)} ns | ${(inModule / inScript).toFixed(2)} |
| in JavaScript | ${inScript.toFixed(0)} ns | 1.00 |

## How times grow, natively

${table("growth.md")}

## Search for what would make a book fit

| candidates | in the module, ms | aim, ms | candidates a second |
|--:|--:|--:|--:|
| ${tried} | ${ms(median(searchTimes))} | 40 | ${((tried / median(searchTimes)) * 1e3).toFixed(0)} |

## Size, bytes

${table("weights.md")}

The module by crate, before wasm-opt takes the names away:

| crate | bytes | per cent |
|---|--:|--:|
${table("crates.md")}

## From disk to the first answer, ${OPENINGS} openings each

| page | answer, ms | first paint, ms |
|---|--:|--:|
| the planner | ${page.map(ms).join(" | ")} |
| an empty page with an empty module | ${empty.map(ms).join(" | ")} |

## From a key to the answer, 25 sheets, disclosures closed, ${KEYS} keys each

| machine | laid out, ms | painted, ms | aim, ms |
|---|--:|--:|--:|
| 1 × | ${ms(laid)} | ${ms(painted)} | 16 |
| 4 × slower | ${ms(laidSlow)} | ${ms(paintedSlow)} | 50 |`);
} finally {
  await call("DELETE", session).catch(() => {});
  driver.kill();
}
