import { describe, expect, test } from 'vitest';
import { lineOf } from '../../../src/files/problem.ts';
import { readJob } from '../../../src/files/read.ts';
import { sampleJob, sampleWith } from './sample.ts';

const sample = JSON.stringify(sampleJob());

/** The lines that a file is refused with. */
function refusal(text: string, options?: { repair: boolean }): string[] {
  const result = readJob(text, options);
  if (result.ok) throw new Error('the file was not refused');
  return result.problems.map(lineOf);
}

/** The lines that tell what was repaired, and the job. */
function repaired(text: string) {
  const result = readJob(text);
  if (!result.ok) throw new Error(result.problems.map(lineOf).join('\n'));
  return { job: result.job, lines: result.repairs.map(lineOf) };
}

test('a sound file loads as it is, with nothing repaired', () => {
  expect(readJob(sample, { repair: false })).toEqual({ ok: true, job: sampleJob(), repairs: [] });
});

test('what a file leaves out is filled in with the defaults of the format', () => {
  const raw = { ...sampleJob(), air: {}, blocks: undefined, prices: undefined };
  const { job, lines } = repaired(JSON.stringify(raw));
  expect(job.air).toEqual({ elevation: 0, temperature: 20, humidity: 0.5, outdoorTemperature: 0 });
  expect([job.blocks, job.prices, lines]).toEqual([[], {}, []]);
});

describe('a file is refused with the place of what is wrong', () => {
  const cases: [string, string, string][] = [
    [
      'text that is not JSON',
      '{"format": }',
      'this is not a job file: line 1, column 12: expected a value, found "}"',
    ],
    ['JSON that is no object', '[1]', 'this is not a Gentlebend job: the file holds no object'],
    ['another format', '{"format": "other"}', 'format: this is not a Gentlebend job (expected "gentlebend")'],
    ['no version', sampleWith(['version'], undefined), 'version: must be a whole number from 1'],
    [
      'a number given as text',
      sampleWith(['hoods', 0, 'width'], '36 in'),
      'hoods[0].width: must be a number, not text',
    ],
    ['a missing list', sampleWith(['schemes'], undefined), 'schemes: is missing'],
    [
      'an unknown unit system',
      sampleWith(['units'], 'both'),
      'units: must be one of "imperial", "metric", not "both"',
    ],
    [
      'a diameter of nothing',
      sampleWith(['schemes', 0, 'defaults', 'duct', 'diameter'], 0),
      'schemes[0].defaults.duct.diameter: must be more than 0, not 0',
    ],
    [
      'a duct of an unknown shape',
      sampleWith(['schemes', 0, 'segments', 1, 'duct'], { shape: 'triangle' }),
      'schemes[0].segments[1].duct.shape: must be of a known kind, not "triangle"',
    ],
    [
      'a point with two coordinates',
      sampleWith(['schemes', 0, 'nodes', 1, 'at'], [1, 2]),
      'schemes[0].nodes[1].at: must be at least 3 entries long',
    ],
    [
      'a hood node without a hood',
      sampleWith(['schemes', 0, 'nodes', 0, 'hood'], undefined),
      'schemes[0].nodes[0].hood: is missing',
    ],
    [
      'a hood that is not there',
      sampleWith(['schemes', 0, 'nodes', 0, 'hood'], 'h7'),
      'schemes[0].nodes[0].hood: no hood "h7"',
    ],
    [
      'a fan curve that goes back',
      sampleWith(['hoods', 0, 'speeds', 1, 'curve', 2], [0.12, 0]),
      'hoods[0].speeds[1].curve[2]: the flow must be more than at the point before',
    ],
    [
      'a speed scaled from one that is not there',
      sampleWith(['hoods', 0, 'speeds', 0, 'scaledFrom', 'speed'], 'turbo'),
      'hoods[0].speeds[0].scaledFrom.speed: no speed "turbo" of this hood that leads to a curve',
    ],
    [
      'a speed scaled from itself',
      sampleWith(['hoods', 0, 'speeds', 0, 'scaledFrom', 'speed'], 'low'),
      'hoods[0].speeds[0].scaledFrom.speed: no speed "low" of this hood that leads to a curve',
    ],
    [
      'a speed given in no way',
      sampleWith(['hoods', 0, 'speeds', 1, 'curve'], undefined),
      'hoods[0].speeds[1]: needs exactly one of curve, certified, freeAir, single, scaledFrom; none is given',
    ],
    [
      'a speed given in two ways',
      sampleWith(['hoods', 0, 'speeds', 1, 'single'], { flow: 0.2 }),
      'hoods[0].speeds[1]: needs exactly one of curve, certified, freeAir, single, scaledFrom; curve and single are given',
    ],
    [
      'two speeds of one name',
      sampleWith(['hoods', 0, 'speeds', 0, 'name'], 'high'),
      'hoods[0].speeds[1].name: two speeds are called "high"',
    ],
    [
      'a part of the user without its loss',
      sampleWith(['schemes', 0, 'segments', 0, 'fittings', 0, 'kind'], 'user'),
      'schemes[0].segments[0].fittings[0].user: is missing',
    ],
  ];
  test.each(cases)('%s', (_, text, line) => {
    expect(refusal(text)).toContain(line);
  });
});

test.each([
  ['material', ['schemes', 0, 'segments', 1, 'material'], 'schemes[0].segments[1].material'],
  ['material', ['schemes', 0, 'defaults', 'material'], 'schemes[0].defaults.material'],
  ['bend', ['schemes', 0, 'nodes', 1, 'bend', 'kind'], 'schemes[0].nodes[1].bend.kind'],
  ['bend', ['schemes', 0, 'defaults', 'bend', 'kind'], 'schemes[0].defaults.bend.kind'],
  ['bend', ['schemes', 0, 'defaults', 'bend'], 'schemes[0].defaults.bend'],
  ['cap', ['schemes', 0, 'nodes', 2, 'cap'], 'schemes[0].nodes[2].cap'],
  ['part', ['schemes', 0, 'segments', 0, 'fittings', 0, 'kind'], 'schemes[0].segments[0].fittings[0].kind'],
])('an unknown %s is refused, not guessed: the air depends on it', (what, keys, path) => {
  const [line] = refusal(sampleWith(keys, 'unheard-of'));
  expect(line).toMatch(
    new RegExp(`^${path.replace(/[[\].]/g, '\\$&')}: no ${what} "unheard-of" in the catalogue`),
  );
});

test('everything that is wrong is told at once', () => {
  const raw = JSON.parse(sampleWith(['units'], 'both')) as { title: unknown };
  raw.title = 7;
  expect(refusal(JSON.stringify(raw))).toEqual([
    'title: must be text, not a number',
    'units: must be one of "imperial", "metric", not "both"',
  ]);
});

test('a file of a newer version is refused with a sentence that says what to do', () => {
  expect(refusal(sampleWith(['version'], 2))).toEqual([
    'version: the file is of version 2 and this program reads up to version 1; open it with a newer Gentlebend',
  ]);
});

describe('what can be mended without guessing a number is mended and told', () => {
  test('a segment to a node that is not there is dropped', () => {
    const { job, lines } = repaired(sampleWith(['schemes', 0, 'segments', 1, 'to'], 'n9'));
    expect(lines).toEqual(['schemes[0].segments[1].to: the segment "d2" was dropped: no node "n9"']);
    expect(job.schemes[0]?.segments.map((segment) => segment.id)).toEqual(['d1']);
  });

  test('a segment that ends where it begins is dropped', () => {
    const { job, lines } = repaired(sampleWith(['schemes', 0, 'segments', 1, 'to'], 'n2'));
    expect(lines).toHaveLength(1);
    expect(job.schemes[0]?.segments).toHaveLength(1);
  });

  test('a dimension to a node that is not there is dropped', () => {
    const { job, lines } = repaired(sampleWith(['schemes', 0, 'dimensions', 0, 'from', 'node'], 'n9'));
    expect(lines).toEqual([
      expect.stringMatching(/^schemes\[0\]\.dimensions\[0\]\.from\.node: .*no node "n9"/),
    ]);
    expect(job.schemes[0]?.dimensions ?? []).toEqual([]);
  });

  test('a dimension to a block that is not there is dropped', () => {
    const end = { box: 'b9', part: [0, 0.5, 1] };
    const { job, lines } = repaired(sampleWith(['schemes', 0, 'dimensions', 0, 'to'], end));
    expect(lines).toEqual([
      expect.stringMatching(/^schemes\[0\]\.dimensions\[0\]\.to\.box: .*no block or exit "b9"/),
    ]);
    expect(job.schemes[0]?.dimensions ?? []).toEqual([]);
  });

  test('the second of two equal ids gets a new one, and segments keep to the first', () => {
    const twin = { ...sampleJob().schemes[0]?.nodes[1], at: [9, 9, 9] };
    const { job, lines } = repaired(sampleWith(['schemes', 0, 'nodes', 3], twin));
    expect(lines).toEqual(['schemes[0].nodes[3].id: the id "n2" was used twice; this one is now "n2-2"']);
    expect(job.schemes[0]?.nodes.map((node) => node.id)).toEqual(['n1', 'n2', 'n3', 'n2-2']);
    expect(job.schemes[0]?.segments).toEqual(sampleJob().schemes[0]?.segments);
  });

  test('a new id never meets one that is taken', () => {
    const hood = sampleJob().hoods[0];
    const { job } = repaired(sampleWith(['hoods'], [hood, hood, { ...hood, id: 'h1-2' }, hood]));
    expect(job.hoods.map((row) => row.id)).toEqual(['h1', 'h1-3', 'h1-2', 'h1-4']);
  });

  test('a box turned inside out is turned back', () => {
    const { job, lines } = repaired(sampleWith(['blocks', 0, 'min'], [5, 0, 2.2]));
    expect(lines).toEqual(['blocks[0].min: the corners were the wrong way round and are exchanged']);
    expect(job.blocks[0]).toMatchObject({ min: [0.04, 0, 2.2], max: [5, 4, 2.44] });
  });

  test('an opacity beyond its range is brought back', () => {
    const { job, lines } = repaired(sampleWith(['underlays', 0, 'opacity'], 50));
    expect(lines).toEqual(['underlays[0].opacity: 50 is outside 0 to 1 and is now 1']);
    expect(job.underlays[0]?.opacity).toBe(1);
  });

  test('an underlay that cannot be read is dropped, the others stay', () => {
    const good = sampleJob().underlays[0];
    const { job, lines } = repaired(sampleWith(['underlays'], [{ id: 'u0', at: 'here' }, good]));
    expect(lines).toEqual(['underlays[0]: the underlay was dropped: it cannot be read']);
    expect(job.underlays).toEqual([good]);
  });

  test('an underlay that would be fetched from elsewhere is dropped', () => {
    const { job, lines } = repaired(sampleWith(['underlays', 0, 'image'], 'https://example.com/plan.png'));
    expect(lines).toEqual([
      'underlays[0].image: the underlay was dropped: it does not hold its picture, and nothing is fetched from elsewhere',
    ]);
    expect(job.underlays).toEqual([]);
  });

  test('a title that is too long is cut', () => {
    const { job, lines } = repaired(sampleWith(['title'], 'x'.repeat(301)));
    expect(lines).toEqual(['title: the text was cut to 300 characters']);
    expect(job.title).toHaveLength(300);
  });

  test('none of it is mended where repairs are not wanted', () => {
    const broken = [
      sampleWith(['schemes', 0, 'segments', 1, 'to'], 'n9'),
      sampleWith(['schemes', 0, 'nodes', 1, 'id'], 'n1'),
      sampleWith(['blocks', 0, 'min'], [5, 0, 2.2]),
      sampleWith(['underlays', 0, 'opacity'], 50),
      sampleWith(['title'], 'x'.repeat(301)),
    ];
    expect(broken.map((text) => refusal(text, { repair: false })[0])).toEqual([
      'schemes[0].segments[1].to: no node "n9"',
      'schemes[0].nodes[1].id: the id "n1" is used twice',
      'blocks[0].min: must be below "max" in every direction',
      'underlays[0].opacity: must be at most 1, not 50',
      'title: must be at most 300 characters long',
    ]);
  });

  test('one fault beyond repair refuses the file, whatever else could be mended', () => {
    const raw = JSON.parse(sampleWith(['underlays', 0, 'opacity'], 50)) as { units: unknown };
    raw.units = 'both';
    expect(refusal(JSON.stringify(raw))[0]).toMatch(/^units: /);
  });
});

test('a key that the format does not know is left out and told, with repairs or without', () => {
  const text = sampleWith(['schemes', 0, 'segments', 0, 'materail'], 'stainless');
  for (const repair of [true, false]) {
    expect(readJob(text, { repair })).toEqual({
      ok: true,
      job: sampleJob(),
      repairs: [
        { path: 'schemes[0].segments[0].materail', message: 'is not part of the format and was left out' },
      ],
    });
  }
});
