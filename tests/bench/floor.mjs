// The floor: the same arithmetic of a book, straight in JavaScript, as somebody would write it who has
// a parsed job and wants nothing but the figures. What it works out, of every band all three values:
//
//   thickness  closed;
//   push-out   of every sheet: push-out, length of the leaf, shift of the image, drift;
//   trim       wrap, face cut, flat sheet, chips of the outermost and the innermost leaf, travel height;
//   margins    what is left of the distance of art, the worst sheet, bleed at the face, gap and overlap;
//   cover      open size, with bleed, open between the creases, offset of the creases, room for words;
//   mass       of the book, of the book by its nominal page, of what is cut off.
//
// Not worked out: findings, press sheets, stitches, limits, run, packing, cost. `differences` compares
// it with what the module gives for the same jobs; see tests/bench/floor.rs for how a job is written.

const HALF_PI = Math.PI / 2;
const GRAMS = 1e6; // mm² · g/m² in a gram
const CLEAR = 3.2; // mm kept free either side of words on a spine

const saved = ([corner, crush], depth, stack) => {
  const radius = stack * corner;
  return (Math.min(depth, radius) * HALF_PI + Math.max(depth - radius, 0) * 2) * crush;
};
const wrapOf = (shape, stack) => Math.max(saved(shape, stack, stack) - stack, 0);

// Parts that err independently: [low, nominal, high].
const sum = (parts) => {
  let [nominal, below, above] = [0, 0, 0];
  for (const [low, mid, high] of parts) {
    nominal += mid;
    below += (mid - low) ** 2;
    above += (high - mid) ** 2;
  }
  return [nominal - Math.sqrt(below), nominal, nominal + Math.sqrt(above)];
};
const times = ([low, mid, high], factor) => [low * factor, mid * factor, high * factor];

/** All the figures of one job. */
export function book(job) {
  const { sections, fold, width, height, tolerance } = job;
  // Sections of one lot err together.
  const byLot = (count) =>
    sum(sections.map(({ caliper }, lot) => {
      let sheets = 0;
      sections.forEach((section, index) => {
        if (section.lot === lot) sheets += count(section, index);
      });
      return times(caliper, sheets);
    }));
  const flat = byLot(({ sheets }) => sheets);
  const wrap = fold.map((shape, side) => wrapOf(shape, flat[side]));
  const first = times(sections[0].caliper, 0.5);
  const outermost = sections.findIndex(({ sheets }) => sheets > 0);
  const leaves = [];
  sections.forEach((section, at) => {
    const outside = ({ sheets }, index) =>
      index > at ? 0 : (index < at ? sheets : 0) - (index === outermost ? 0.5 : 0);
    const others = byLot((other, index) => (other.lot === section.lot ? 0 : outside(other, index)));
    let same = 0;
    sections.forEach((other, index) => {
      if (other.lot === section.lot) same += outside(other, index);
    });
    for (let nth = 1; nth <= section.sheets; nth += 1) {
      const step = sum([others, times(section.caliper, same + nth - 0.5)]);
      const out = fold.map((shape, side) =>
        saved(shape, first[side] + step[side], flat[side]) - saved(shape, first[side], flat[side]));
      const shift = wrap[1] - out[1];
      const drift = Math.max(
        Math.abs(wrap[0] - out[0] - shift),
        Math.abs(wrap[2] - out[2] - shift),
      );
      leaves.push({ section, out, length: width + wrap[1] - out[1], shift, drift });
    }
  });

  const innermost = leaves.at(-1).out;
  const faceCut = job.faceCut ?? Math.max(job.bleed, job.leastCut + tolerance);
  const copies = height * job.up + job.gutter * (job.up - 1);
  const printed = copies + job.headTrim + job.footTrim;
  const trim = {
    wrap,
    faceCut,
    flat: [(width + wrap[1] + faceCut) * 2, printed],
    outermost: [faceCut - tolerance, faceCut, faceCut + tolerance],
    innermost: [faceCut + innermost[0] - tolerance, faceCut + innermost[1], faceCut + innermost[2] + tolerance],
    travel: job.cutBefore ? copies : printed,
  };

  const margins = { left: Infinity, worst: 0, bleed: 0, gap: 0, overlap: 0 };
  leaves.forEach(({ shift, drift }, index) => {
    const cut = job.moved ? 0 : shift;
    const doubt = drift + tolerance;
    const left = job.art + cut - doubt;
    if (left < margins.left) [margins.left, margins.worst] = [left, index + 1];
    margins.bleed = Math.max(margins.bleed, cut + doubt, doubt);
    if (job.moved) {
      margins.gap = Math.max(margins.gap, shift * 2);
      margins.overlap = Math.max(margins.overlap, shift * -2);
    }
  });

  const half = sections[0].caliper[1] / 2;
  const open = (width + wrap[1]) * 2;
  const cover = {
    open: [open, height],
    withBleed: [open + job.bleed * 2, height + job.bleed * 2],
    middle: open - saved(fold[1], half, flat[1]) * 2,
    crease: job.square ? Math.max(flat[1] - half, 0) : 0,
    words: Math.max(flat[0] * 2 - CLEAR * 2, 0),
  };

  let mass = null;
  if (sections.every(({ grammage }) => grammage)) {
    let [nominal, page, chips] = [0, 0, 0];
    const tall = printed / job.up;
    const lengths = sections.map(() => 0);
    for (const { section, out, length } of leaves) {
      const each = (section.grammage[1] * 2) / GRAMS;
      nominal += each * length * height;
      page += each * width * height;
      chips += each * (faceCut + out[1]) * tall + each * length * (tall - height);
      lengths[section.lot] += length;
    }
    let squares = 0;
    sections.forEach(({ grammage }, lot) => {
      squares += (((grammage[2] - grammage[1]) * 2 * lengths[lot] * height) / GRAMS) ** 2;
    });
    const doubt = Math.sqrt(squares);
    mass = { book: [nominal - doubt, nominal, nominal + doubt], page, chips };
  }
  return { closed: times(flat, 2), leaves, trim, margins, cover, mass };
}

/** Every figure in one row, as tests/bench/floor.rs writes what the planner finds. */
export const row = ({ closed, leaves, trim, margins, cover, mass }) => [
  ...closed,
  ...leaves.flatMap(({ out, length, shift, drift }) => [...out, length, shift, drift]),
  ...trim.wrap, trim.faceCut, ...trim.flat, ...trim.outermost, ...trim.innermost, trim.travel,
  margins.left, margins.worst, margins.bleed, margins.gap, margins.overlap,
  ...cover.open, ...cover.withBleed, cover.middle, cover.crease, cover.words,
  ...(mass ? [...mass.book, mass.page, mass.chips] : []),
];

/** Compares with the planner's rows: how many figures, and the largest relative difference. */
export function differences(cases) {
  let [figures, most] = [0, 0];
  for (const { job, row: planned } of cases) {
    const own = row(book(job));
    if (own.length !== planned.length) throw new Error(`${own.length} figures, not ${planned.length}`);
    own.forEach((value, index) => {
      const apart = Math.abs(value - planned[index]);
      const scale = Math.max(Math.abs(value), Math.abs(planned[index]), 1);
      if (!(apart / scale <= 1e-9)) throw new Error(`figure ${index}: ${value}, not ${planned[index]}: ${JSON.stringify(job)}`);
      most = Math.max(most, apart / scale);
      figures += 1;
    });
  }
  return { figures, most };
}
