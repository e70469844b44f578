/**
 * Makes src/generated/measured-factors.ts: what the statistics of few measured units need of the distributions,
 * so that no program that checks a sheet carries a library of them. The distributions are those of `jstat`.
 */
import jstat from 'jstat';

/** As many readings of one setting as are told apart; of more the factors of so many are on the safe side. */
const MOST = 200;

/** Half of the tails that a two-sided figure at 95 % leaves, and the share of units that limits ought to hold. */
const TAIL = 0.025;
const CONFIDENCE = 0.95;
const SHARE = 0.9;

export function factorsModule() {
  const rows = [];
  for (let n = 2; n <= MOST; n++) {
    const row = [student(1 - TAIL, n - 1), n < 3 ? null : grubbs(n), tolerance(n)];
    rows.push(
      `  [${row.map((each) => (each === null ? 'null' : each.toPrecision(10))).join(', ')}],`,
    );
  }
  return [
    '// Made by src/build/factors.mjs: change that.',
    '/**',
    ' * By the number of readings, from 2: Student’s t (two-sided 95 %, n - 1 degrees of freedom; JCGM 100:2008, G.3.2),',
    ' * the critical value of Grubbs’ test (two-sided 5 %; ASTM E178, ISO 5725-2; null at 2), and k of the two-sided',
    ' * interval that holds 90 % of units at 95 % confidence (ISO 16269-6). Right to eight figures.',
    ' */',
    'export const measuredFactors: readonly (readonly [number, number | null, number])[] = [',
    ...rows,
    '];',
    '',
  ].join('\n');
}

/** A quantile of Student's distribution: the library's, bettered by one step of Newton's. */
function student(p, degrees) {
  const rough = jstat.studentt.inv(p, degrees);
  return rough - (jstat.studentt.cdf(rough, degrees) - p) / jstat.studentt.pdf(rough, degrees);
}

/** (n - 1)/root n × root(t² / (n - 2 + t²)), t at 0.05/(2n) and n - 2 degrees of freedom. */
function grubbs(n) {
  const t = student(1 - TAIL / n, n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/**
 * k of the exact two-sided interval mean ± k s: the mean lies normally about the true one, and for each place that
 * it may lie at the spread must be so great that the interval holds the share (Odeh and Owen, as ISO 16269-6 has it).
 */
function tolerance(n) {
  const nodes = places(n);
  const kept = (k) =>
    nodes.reduce(
      (sum, { weight, reach }) =>
        sum + weight * (1 - jstat.chisquare.cdf(((n - 1) * reach * reach) / (k * k), n - 1)),
      0,
    );
  return rootOf((k) => kept(k) - CONFIDENCE, 1.7, 2 + 60 / n ** 2);
}

/** Where the mean may lie, in true standard deviations (it is even: one side, doubled), by Simpson's rule. */
function places(n) {
  const [count, width] = [96, 8 / Math.sqrt(n)];
  const nodes = [];
  for (let index = 0; index <= count; index++) {
    const x = (width * index) / count;
    const simpson = index === 0 || index === count ? 1 : index % 2 === 1 ? 4 : 2;
    const density = Math.sqrt(n / (2 * Math.PI)) * Math.exp((-n * x * x) / 2);
    nodes.push({ weight: (2 * simpson * density * width) / count / 3, reach: reachAt(x) });
  }
  return nodes;
}

/** How far about x a standard normal distribution holds the share. */
function reachAt(x) {
  return rootOf((reach) => 1 - above(reach + x) - above(reach - x) - SHARE, x + 1.3, x + 1.7);
}

function above(z) {
  const tail = (1 - jstat.chisquare.cdf(z * z, 1)) / 2;
  return z >= 0 ? tail : 1 - tail;
}

/** Where a function that rises or falls throughout is zero: the secant through two places, again and again. */
function rootOf(of, first, second) {
  let [a, b] = [first, second];
  let [atA, atB] = [of(a), of(b)];
  for (let step = 0; step < 60 && Math.abs(b - a) > 1e-12 * Math.abs(b) && atA !== atB; step++) {
    const next = Math.max(b - (atB * (b - a)) / (atB - atA), b / 4);
    [a, atA] = [b, atB];
    b = Math.min(next, 4 * b);
    atB = of(b);
  }
  return b;
}
