import { describe, expect, it } from 'vitest';
import { hintOf, planOf } from '../../../../src/app/jobs/drop.ts';

const file = (name: string, type = '') => ({ name, type });
const job = file('kitchen.gentlebend.json');

describe('what is dropped', () => {
  it('is opened where all of it is jobs', () => {
    expect(planOf([job, file('b.json', 'application/json')], false)).toMatchObject({ do: 'open' });
  });

  it('is imported where it is an export', () => {
    expect(planOf([file('all.zip', 'application/zip')], true)).toMatchObject({ do: 'import' });
  });

  it('is laid under the sheet that it is dropped on where it is a picture, a PDF or a DXF', () => {
    for (const name of ['plan.png', 'plan.pdf', 'plan.dxf'])
      expect(planOf([file(name)], true)).toMatchObject({ do: 'lay' });
  });

  it('is refused where a picture falls beside the sheets', () => {
    expect(planOf([file('plan.png')], false)).toMatchObject({ do: 'refuse', why: 'beside' });
  });

  it('is refused as a whole where one of several files is something else', () => {
    expect(planOf([job, file('song.mp3', 'audio/mpeg')], true)).toMatchObject({
      do: 'refuse',
      why: 'unknown',
      file: { name: 'song.mp3' },
    });
    expect(planOf([job, file('plan.png')], true)).toMatchObject({ do: 'refuse', why: 'several' });
  });

  it('is nothing where nothing was dropped', () => {
    expect(planOf([], true)).toBeNull();
  });
});

describe('what the window says before', () => {
  it('names the job, the export or the sheet where the browser tells the type, and all of them where not', () => {
    expect(hintOf(['application/json'], true)).toBe('job');
    expect(hintOf(['application/json', 'application/json'], true)).toBe('jobs');
    expect(hintOf(['application/zip'], true)).toBe('archive');
    expect(hintOf(['image/png'], true)).toBe('lay');
    expect(hintOf(['image/png'], false)).toBe('to a sheet');
    expect(hintOf([''], true)).toBe('any');
  });
});
