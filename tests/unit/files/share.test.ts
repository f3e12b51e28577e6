import { deflateSync } from 'fflate';
import { describe, expect, it, test } from 'vitest';
import { checksum, holdsJob, longLink, readShared, shareFragment } from '../../../src/files/share.ts';
import { sampleJob } from './sample.ts';

const all = { underlays: true };
const fragment = shareFragment(sampleJob(), all);
const letters = fragment.slice('#job=1.'.length);

/** A link to any bytes at all, with a right checksum: what somebody who means harm would send. */
function linkTo(packed: Uint8Array, mark = '1'): string {
  const bytes = new Uint8Array(4 + packed.length);
  new DataView(bytes.buffer).setUint32(0, checksum(packed));
  bytes.set(packed, 4);
  return `#job=${mark}.${Buffer.from(bytes).toString('base64url')}`;
}

const linkToText = (text: string) => linkTo(deflateSync(new TextEncoder().encode(text)));

function reasonOf(address: string): string {
  const read = readShared(address);
  if (read.ok) throw new Error('the link was taken');
  expect(read.problems).toHaveLength(1);
  return read.problems[0]?.message ?? '';
}

test('the checksum of the nine digits is the published one of CRC-32', () => {
  // CRC-32/ISO-HDLC, check value for "123456789": 0xCBF43926 (catalogue of parametrised CRC algorithms; from memory).
  expect(checksum(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
});

describe('a link', () => {
  it('holds the whole job', () => {
    expect(readShared(fragment)).toEqual({ ok: true, job: sampleJob(), repairs: [] });
  });

  it('leaves the underlays out where that is asked for, and nothing else', () => {
    const read = readShared(shareFragment(sampleJob(), { underlays: false }));
    expect(read).toEqual({ ok: true, job: { ...sampleJob(), underlays: [] }, repairs: [] });
  });

  it('has only letters that no program has to change in an address', () => {
    expect(fragment).toMatch(/^#job=1\.[\w-]+$/);
  });

  it('to a usual job is short enough for usual programs', () => {
    expect(fragment.length).toBeLessThan(longLink / 2);
  });

  it('is read from a whole address too, with what a mail program did to it', () => {
    const wrapped = letters.replace(/(.{60})/g, '$1\r\n ');
    for (const address of [
      `http://127.0.0.1:4180/${fragment}`,
      `#job=1.${wrapped}`,
      `${fragment.slice(0, 40)}%20${fragment.slice(40)}`,
      `${fragment}>.`,
      `${fragment}&source=mail`,
    ])
      expect(readShared(address)).toMatchObject({ ok: true, repairs: [] });
  });

  it('is told from an address without a job', () => {
    expect([holdsJob(fragment), holdsJob('#'), holdsJob('?example')]).toEqual([true, false, false]);
  });
});

describe('a link that is wrong says so in a sentence', () => {
  it.each([
    ['without anything in it', '#job=', /no job in the link/],
    ['without a job', 'http://127.0.0.1:4180/', /no job in the link/],
    ['without its number', `#job=${letters}`, /missing or was changed/],
    ['of a newer program', `#job=2.${letters}`, /newer Gentlebend/],
    ['of a number that never was', `#job=0.${letters}`, /missing or was changed/],
    ['with nothing after its number', '#job=1.', /missing or was changed/],
    ['with a letter too few for its bytes', '#job=1.AAAAA', /missing or was changed/],
    ['with other letters', '#job=1.%%%%', /missing or was changed/],
    ['to bytes that are not packed', linkTo(new Uint8Array([7, 7, 7, 7, 7])), /missing or was changed/],
    ['to bytes that are no text', linkTo(deflateSync(new Uint8Array([0xff, 0xfe, 0x80]))), /missing or was/],
    ['to text that is no job', linkToText('hello'), /not a job file: line 1, column 1/],
    ['to JSON that is no job', linkToText('[1]'), /not a Gentlebend job/],
    ['to a job of a newer format', linkToText('{"format":"gentlebend","version":99}'), /newer Gentlebend/],
  ])('%s', (_, address, reason) => {
    expect(reasonOf(address)).toMatch(reason);
  });

  it('wherever it was cut off', () => {
    for (let length = fragment.length - 1; length > '#job=1.'.length; length -= 7)
      expect(reasonOf(fragment.slice(0, length))).toMatch(/missing or was changed/);
  });

  it('whichever letter was changed', () => {
    for (let at = 0; at < letters.length - 1; at += 3) {
      const other = letters[at] === 'A' ? 'B' : 'A';
      const changed = `#job=1.${letters.slice(0, at)}${other}${letters.slice(at + 1)}`;
      expect(reasonOf(changed)).toMatch(/missing or was changed/);
    }
  });

  it('with something cut out of the packed job, though its checksum fits', () => {
    const whole = deflateSync(new TextEncoder().encode(JSON.stringify(sampleJob())));
    expect(reasonOf(linkTo(whole.subarray(0, whole.length - 20)))).toMatch(/missing or was changed/);
  });

  it('with the places in the job that are wrong', () => {
    const read = readShared(linkToText(JSON.stringify({ ...sampleJob(), title: 7 })));
    expect(read).toMatchObject({ ok: false, problems: [{ path: 'title' }] });
  });

  it('where it would unfold to more than any job, and unfolds no further', () => {
    const bomb = deflateSync(new Uint8Array(200 * 1024 * 1024), { level: 9 });
    expect(bomb.length).toBeLessThan(300_000);
    expect(reasonOf(linkTo(bomb))).toMatch(/larger than 24 MB/);
  });
});

test('what can be mended in a shared job is mended and told', () => {
  const read = readShared(linkToText(JSON.stringify({ ...sampleJob(), colour: 'red' })));
  expect(read).toMatchObject({ ok: true, repairs: [{ path: 'colour' }] });
});
