/** Round constants of FIPS 180-4, 4.2.2: fractions of the cube roots of the first 64 primes. */
const roundConstants: readonly number[] = firstPrimes(64).map((prime) =>
  fractionBits(Math.cbrt(prime)),
);

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let number = 2; primes.length < count; number++) {
    if (primes.every((prime) => number % prime !== 0)) primes.push(number);
  }
  return primes;
}

/** The first 32 bits behind the point; doubles are exact enough for numbers below 7. */
function fractionBits(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32) | 0;
}

/** SHA-256 of a text in UTF-8, as 32 bytes (FIPS 180-4, 6.2). */
export function sha256(text: string): Uint8Array {
  const message = new TextEncoder().encode(text);
  const padded = new Uint8Array(Math.ceil((message.length + 9) / 64) * 64);
  padded.set(message);
  padded[message.length] = 0x80;
  const words = new DataView(padded.buffer);
  words.setUint32(padded.length - 8, Math.floor((message.length * 8) / 2 ** 32));
  words.setUint32(padded.length - 4, (message.length * 8) >>> 0);
  const state = firstPrimes(8).map((prime) => fractionBits(Math.sqrt(prime)));
  for (let at = 0; at < padded.length; at += 64) mix(state, words, at);
  const digest = new DataView(new ArrayBuffer(32));
  state.forEach((word, index) => {
    digest.setInt32(index * 4, word);
  });
  return new Uint8Array(digest.buffer);
}

function mix(state: number[], words: DataView, at: number): void {
  const schedule = new Int32Array(64);
  for (let t = 0; t < 64; t++) {
    schedule[t] = t < 16 ? words.getInt32(at + t * 4) : scheduled(schedule, t);
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let t = 0; t < 64; t++) {
    const choice = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const sum1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const sum0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const first = (h + sum1 + choice + (roundConstants[t] ?? 0) + (schedule[t] ?? 0)) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + sum0 + majority) | 0];
  }
  for (const [index, value] of [a, b, c, d, e, f, g, h].entries()) {
    state[index] = ((state[index] ?? 0) + value) | 0;
  }
}

function scheduled(schedule: Int32Array, t: number): number {
  const near = schedule[t - 2] ?? 0;
  const far = schedule[t - 15] ?? 0;
  const sigma1 = turned(near, 17) ^ turned(near, 19) ^ (near >>> 10);
  const sigma0 = turned(far, 7) ^ turned(far, 18) ^ (far >>> 3);
  return (sigma1 + (schedule[t - 7] ?? 0) + sigma0 + (schedule[t - 16] ?? 0)) | 0;
}

function turned(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}
