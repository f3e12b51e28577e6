/**
 * SHA-256 of some bytes, at once: Web Crypto answers later only, which a page that is being printed cannot wait for,
 * and not at all where a page is served neither from this machine nor over https. Source: FIPS 180-4, sections 4.1.2,
 * 5.1.1, 5.3.3 and 6.2.2 (from memory); the tests hold it against Node's own.
 */
export function sha256(bytes: Uint8Array): Uint8Array {
  const blocks = (bytes.length + 9 + 63) >> 6;
  const padded = new Uint8Array(blocks * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length * 8) % 2 ** 32);

  const hash = Uint32Array.from(primes.slice(0, 8), (prime) => fraction(Math.sqrt(prime)));
  const w = new Uint32Array(64);
  for (let block = 0; block < blocks; block += 1) mix(hash, w, view, block * 64);
  const digest = new DataView(new ArrayBuffer(32));
  hash.forEach((word, i) => {
    digest.setUint32(4 * i, word);
  });
  return new Uint8Array(digest.buffer);
}

/** The first 64. */
const primes = Array.from({ length: 311 }, (_, i) => i + 2).filter((n) => {
  for (let by = 2; by * by <= n; by += 1) if (n % by === 0) return false;
  return true;
});

/** The first 32 bits of the fraction. */
function fraction(value: number): number {
  return ((value - Math.floor(value)) * 2 ** 32) >>> 0;
}

const rounds = Uint32Array.from(primes, (prime) => fraction(Math.cbrt(prime)));

function turned(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

/** Works one block of 64 bytes into the hash; `w` is room to work in. */
function mix(hash: Uint32Array, w: Uint32Array, view: DataView, offset: number): void {
  const at = (words: Uint32Array, i: number) => words[i] as number;
  for (let i = 0; i < 16; i += 1) w[i] = view.getUint32(offset + 4 * i);
  for (let i = 16; i < 64; i += 1) {
    const [x, y] = [at(w, i - 15), at(w, i - 2)];
    const early = turned(x, 7) ^ turned(x, 18) ^ (x >>> 3);
    const late = turned(y, 17) ^ turned(y, 19) ^ (y >>> 10);
    w[i] = at(w, i - 16) + early + at(w, i - 7) + late;
  }
  let [a, b, c, d, e, f, g, h] = [...hash] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  for (let i = 0; i < 64; i += 1) {
    const choice = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const first =
      (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + choice + at(rounds, i) + at(w, i)) | 0;
    const second = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + majority;
    h = g;
    g = f;
    f = e;
    e = (d + first) | 0;
    d = c;
    c = b;
    b = a;
    a = (first + second) | 0;
  }
  for (const [i, word] of [a, b, c, d, e, f, g, h].entries()) hash[i] = at(hash, i) + word;
}
